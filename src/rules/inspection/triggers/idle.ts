import type { CivilDate } from '../../calendar/civil-date.js';
import { daysAfter } from '../../calendar/day-number.js';
import type { TrailerOn } from '../../history/trailer-on.js';
import { type CheckSoFar, type Falls, fallsOn, NOT_DUE } from './falls.js';

/** Days of standing after which a trailer is looked at before it is used again. Common practice, no source. */
export const IDLE_DAYS = 90;

/** The same for what only long standing harms, such as grease in bearings: six months (owner manuals, makers withheld). */
export const HALF_YEAR_DAYS = 182;

/** Wanted before the next use once it has stood that long; a day only where the next use is booked. */
export function fallsByIdleness(days: number, { trailer, lastPass }: CheckSoFar): Falls {
  const moved = lastMovedOn(trailer);
  if (moved === null) return NOT_DUE;
  const since = lastPass !== null && lastPass.doneOn > moved ? lastPass.doneOn : moved;
  const idleFrom = daysAfter(since, days);
  const next = trailer.jobs[0];
  if (next !== undefined && next.startsOn >= idleFrom) return fallsOn(daysAfter(next.startsOn, -1));
  return trailer.asOf >= idleFrom ? { ...NOT_DUE, wanted: true } : NOT_DUE;
}

function lastMovedOn(trailer: TrailerOn): CivilDate | null {
  return trailer.tripsByEnd.at(-1)?.endedOn ?? null;
}
