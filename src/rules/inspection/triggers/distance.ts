import { dayFromNumber, dayNumber } from '../../calendar/day-number.js';
import type { CheckKind, Trigger } from '../../facts/check.js';
import type { DistanceToCome } from '../../forecast/distance-to-come.js';
import type { DistanceTravelled } from '../../forecast/distance-travelled.js';
import { type Kilometres, km } from '../../units/distance.js';
import { isOfBearings } from '../bearing-load.js';
import { certain, rangeBy } from '../due-range.js';
import type { UseSoFar } from '../use-so-far.js';
import { type CheckSoFar, cannotSay, type Falls, fallsWithin } from './falls.js';

/**
 * Every so many miles: the day the distance is reached, harsh service counted as `HARSH_FACTOR` says and, for hub
 * bearings, loads over an axle's rating as `bearingWeight` says; ahead, the day by which it is as likely reached as not.
 * Where a booked job would cross it on the way, the day before that job: the work cannot be done on the road.
 */
export function fallsByDistance(trigger: Extract<Trigger, { kind: 'distance' }>, check: CheckSoFar): Falls {
  const { kind, trailer, use, lastPass } = check;
  if (lastPass === null) return cannotSay('no-last-done');
  const done = dayNumber(lastPass.doneOn);
  if (!use.travelled.known || wentOutUnmeasured(check, done)) return cannotSay('no-distance-known');

  const asOf = dayNumber(trailer.asOf);
  const { counted, toCome } = countedFor(kind, use);
  const usedKm = counted.between(done, asOf);
  const roughKm = use.counted.between(done, asOf);
  const harshKm = km(Math.max(0, roughKm - use.travelled.between(done, asOf)));
  const loadKm = km(Math.max(0, usedKm - roughKm));
  const used = { kind: 'distance', usedKm, limitKm: trigger.everyKm, harshKm, loadKm } as const;

  const reached = counted.dayReaching(done, trigger.everyKm);
  if (reached !== null) return fallsWithin(certain(dayFromNumber(reached)), used);
  const left = (trigger.everyKm - counted.between(done, toCome.from)) as Kilometres;
  return fallsWithin(
    rangeBy((chance) => toCome.dayReaching(left, done, chance), true),
    used,
  );
}

/** The distance a check counts, behind and ahead. */
export function countedFor(
  kind: Pick<CheckKind, 'appliesTo'>,
  use: UseSoFar,
): { readonly counted: DistanceTravelled; readonly toCome: DistanceToCome } {
  return isOfBearings(kind)
    ? { counted: use.bearings, toCome: use.bearingsToCome }
    : { counted: use.counted, toCome: use.countedToCome };
}

/** Whether it went out since a day and nobody said how far, on a trip or a meter. */
export function wentOutUnmeasured({ trailer }: CheckSoFar, since: number): boolean {
  const lastReading = trailer.readings.at(-1);
  if (lastReading !== undefined && dayNumber(lastReading.takenOn) > since) return false;
  let wentOut = false;
  for (let i = trailer.trips.length - 1; i >= 0; i--) {
    const trip = trailer.trips[i];
    if (trip === undefined || dayNumber(trip.startedOn) <= since) break;
    if (trip.distanceKm !== null) return false;
    wentOut = true;
  }
  return wentOut;
}
