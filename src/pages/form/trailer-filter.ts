import type { TrailerClass } from '../../rules/trailer/ratings.js';
import type { TrailersScreen } from '../../use-cases/show/show-trailers.js';
import { CLASS_WORDS } from '../words/build-words.js';
import { queryChoice, queryText } from './query.js';

export type TrailerFilter = TrailersScreen['filter'];

export const READINESS = ['ready', 'due', 'down', 'gone'] as const;

/** Which trailers an address asks for. */
export function readTrailerFilter(query: unknown): TrailerFilter {
  return {
    text: queryText(query, 'text', 40),
    trailerClass: queryChoice(query, 'class', Object.keys(CLASS_WORDS) as TrailerClass[]),
    readiness: queryChoice(query, 'readiness', READINESS),
  };
}

/** The same as it stands in an address; empty when all are asked for. */
export function filterQuery({ text, trailerClass, readiness }: TrailerFilter): Readonly<Record<string, string>> {
  return {
    ...(text && { text }),
    ...(trailerClass && { class: trailerClass }),
    ...(readiness && { readiness }),
  };
}

export function addressWith(path: string, query: Readonly<Record<string, string>>): string {
  const text = new URLSearchParams(query).toString();
  return text === '' ? path : `${path}?${text}`;
}
