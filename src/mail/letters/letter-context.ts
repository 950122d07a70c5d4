import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { CheckKind } from '../../rules/facts/check.js';
import type { Trailer } from '../../rules/facts/trailer.js';
import type { Job } from '../../rules/facts/use.js';
import type { TrailerToday } from '../../rules/notice/plan-letters.js';

/** What a letter's items name by id, and the day it is written for. */
export interface LetterContext {
  readonly yardName: string;
  readonly readerName: string;
  readonly baseUrl: string;
  readonly asOf: CivilDate;
  readonly trailers: ReadonlyMap<string, TrailerToday>;
  readonly machineNames: ReadonlyMap<string, string>;
}

/** In the owner's words and with its number: `T-07, the long black one`. */
export function trailerName({ yardNumber, name }: Pick<Trailer, 'yardNumber' | 'name'>): string {
  return name === null ? yardNumber : `${yardNumber}, ${name}`;
}

/** The trailer an item is about. Throws when the letter was not given it: then it would tell of nothing. */
export function trailerOf(context: LetterContext, trailerId: string): TrailerToday {
  const found = context.trailers.get(trailerId);
  if (found === undefined) throw new Error(`a letter tells of trailer ${trailerId}, which it was not given`);
  return found;
}

export function checkKindsOf({ checkKinds }: TrailerToday): ReadonlyMap<string, CheckKind> {
  return new Map(checkKinds.map((kind) => [kind.id, kind]));
}

export function jobOf(today: TrailerToday, jobId: string): Job | null {
  return today.jobs.find(({ job }) => job.id === jobId)?.job ?? null;
}
