import { dayNumber } from '../../calendar/day-number.js';
import type { Trigger } from '../../facts/check.js';
import { certain, rangeBy } from '../due-range.js';
import { type CheckSoFar, cannotSay, type Falls, fallsWithin } from './falls.js';

/**
 * Every N trips: good to the end of the Nth trip that started after the day it was done. Booked jobs count as trips to
 * come, and between them trips as often as usual.
 */
export function fallsByTrips(
  trigger: Extract<Trigger, { kind: 'trips' }>,
  { trailer, use, lastPass }: CheckSoFar,
): Falls {
  if (lastPass === null) return cannotSay('no-last-done');
  const since = trailer.trips.filter((trip) => trip.startedOn > lastPass.doneOn);
  const used = { kind: 'trips', used: since.length, limit: trigger.every } as const;
  const last = since[trigger.every - 1];
  if (last !== undefined) return fallsWithin(certain(last.endedOn), used);
  const toCome = use.tripsToCome(trailer.jobs.filter((job) => job.startsOn > lastPass.doneOn));
  const left = trigger.every - since.length;
  return fallsWithin(
    rangeBy((chance) => toCome.dayReaching(left, dayNumber(lastPass.doneOn), chance), false),
    used,
  );
}
