import { createHash } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import type { Given } from './given.js';

/** What tells two sendings of one form from two facts that look alike. */
export interface Sending {
  /** A UUID made by whoever sends it, one a form. The same again, with the same content, is recorded once. */
  readonly sendId?: string | null;
}

/**
 * The id that the fact of a sending gets, null when none was given. Made from yard and sending together, so that
 * nobody can ask by it whether another yard has a fact of some id.
 */
export function readSendId(given: Given, yardId: string): string | null {
  const sendId = given.id('sendId', 'the id of this sending');
  if (sendId === null) return null;
  const hash = createHash('sha256').update(`${yardId} ${sendId.toLowerCase()}`).digest('hex');
  // Version 8 of RFC 9562: a UUID whose content is ours.
  return `${hash.slice(0, 8)}-${hash.slice(8, 12)}-8${hash.slice(13, 16)}-8${hash.slice(17, 20)}-${hash.slice(20, 32)}`;
}

/**
 * Whether a fact kept under this id says the same as what came in: a button pressed twice, or a phone that sent again.
 * A form taken back and filled in anew says something else, and is a fact of its own.
 */
export function isSentAgain<Fact extends { readonly id: string }>(kept: Fact, sent: Omit<Fact, 'id'>): boolean {
  const { id: _, ...said } = kept;
  return isDeepStrictEqual(said, sent);
}
