import type { CivilDate } from '../../calendar/civil-date.js';
import { dayFromNumber, dayNumber, daysAfter } from '../../calendar/day-number.js';
import type { CheckEvent, Trigger } from '../../facts/check.js';
import type { Trip } from '../../facts/use.js';
import type { TrailerOn } from '../../history/trailer-on.js';
import type { Kilometres } from '../../units/distance.js';
import { wentOutUnmeasured } from './distance.js';
import { type CheckSoFar, cannotSay, type Falls, fallsOn, NOT_DUE } from './falls.js';

type EventTrigger = Extract<Trigger, { kind: 'event' }>;

/** After an event: at once, or at each distance after it. */
export function fallsByEvent(trigger: EventTrigger, check: CheckSoFar): Falls {
  if (trigger.event === 'idle') return fallsByIdleness(check);
  if (trigger.atKm.length > 0) return fallsAtDistances(trigger.atKm, lastEvent(trigger.event, check), check);
  const open = firstOpenEvent(trigger.event, check);
  return open === null ? NOT_DUE : fallsOn(open);
}

/**
 * A record this far short of a distance still counts for it: 9.5 of 10 miles is a check at ten (scenario 11 of the
 * job's acceptance list). Our choice.
 */
const EARLY_SHARE = 0.9;

/**
 * The first distance after the event that no record covers. A record covers every distance reached by then, so that one
 * look after 53 miles settles 10, 25 and 50. Only trips made and jobs booked count: at a few miles, usual use would call
 * a trailer late that never left the yard. Work for the road is done where the distance falls, so that a booked job on
 * the way does not bring it forward; work for the shop is wanted before the job that would cross it.
 */
function fallsAtDistances(atKm: readonly Kilometres[], event: CivilDate | null, check: CheckSoFar): Falls {
  if (event === null) return NOT_DUE;
  const { trailer, use } = check;
  const since = dayNumber(event);
  let covered = 0;
  for (const pass of check.passes()) {
    if (pass.doneOn >= event) covered = use.travelled.between(since, dayNumber(pass.doneOn)) / EARLY_SHARE;
  }
  const next = atKm.toSorted((a, b) => a - b).find((distance) => distance > covered);
  if (next === undefined) return NOT_DUE;
  if (wentOutUnmeasured(check, since)) return cannotSay('no-distance-known');

  const usedKm = use.travelled.between(since, dayNumber(trailer.asOf));
  const used = { kind: 'distance', usedKm, limitKm: next, harshKm: 0 as Kilometres } as const;
  const reached = use.travelled.dayReaching(since, next);
  if (reached !== null) return fallsOn(dayFromNumber(reached), used);
  const left = (next - use.travelled.between(since, use.toCome.from)) as Kilometres;
  const ahead = use.toCome.dayReachingByJobs(left, since);
  // Estimated use may warn, but a look after ten miles is overdue only when ten miles are known to be driven.
  const onlyEstimated = ahead !== null && ahead.job === null && ahead.day < dayNumber(trailer.asOf);
  if (ahead === null || onlyEstimated) return { ...NOT_DUE, used };
  const isCrossed = ahead.job !== null && check.kind.work.place !== 'road';
  return fallsOn(isCrossed ? daysAfter(ahead.job.startsOn, -1) : dayFromNumber(ahead.day), used);
}

/** Days of standing after which a trailer is looked at before it is used again. Common practice, no source. */
export const IDLE_DAYS = 90;

/** Wanted before the next use once it has stood that long; a day only where the next use is booked. */
function fallsByIdleness({ trailer, lastPass }: CheckSoFar): Falls {
  const moved = lastMovedOn(trailer);
  if (moved === null) return NOT_DUE;
  const since = lastPass !== null && lastPass.doneOn > moved ? lastPass.doneOn : moved;
  const idleFrom = daysAfter(since, IDLE_DAYS);
  const next = trailer.jobs[0];
  if (next !== undefined && next.startsOn >= idleFrom) return fallsOn(daysAfter(next.startsOn, -1));
  return trailer.asOf >= idleFrom ? { ...NOT_DUE, wanted: true } : NOT_DUE;
}

function lastMovedOn(trailer: TrailerOn): CivilDate | null {
  return trailer.tripsByEnd.at(-1)?.endedOn ?? null;
}

/** Without any record of the check, older events than this are past mending by a look. Our choice. */
const EVENT_DAYS = 90;

/** The first event on the road since the check was last passed. A pass on the day of the event is after it. */
function firstOpenEvent(event: CheckEvent, { trailer, lastPass }: CheckSoFar): CivilDate | null {
  if (event === 'wheel-off' || event === 'brakes-new') {
    const last = lastWorkshopEvent(event, trailer);
    return last !== null && (lastPass === null || lastPass.doneOn < last) ? last : null;
  }
  const after = lastPass?.doneOn ?? daysAfter(trailer.asOf, -EVENT_DAYS - 1);
  let first: CivilDate | null = null;
  for (let i = trailer.tripsByEnd.length - 1; i >= 0; i--) {
    const trip = trailer.tripsByEnd[i] as Trip;
    if (trip.endedOn <= after) break;
    if (happenedOn(event, trip, trailer)) first = trip.endedOn;
  }
  return first;
}

function lastEvent(event: CheckEvent, { trailer }: CheckSoFar): CivilDate | null {
  if (event === 'wheel-off' || event === 'brakes-new') return lastWorkshopEvent(event, trailer);
  return trailer.tripsByEnd.findLast((trip) => happenedOn(event, trip, trailer))?.endedOn ?? null;
}

function happenedOn(event: CheckEvent, trip: Trip, trailer: TrailerOn): boolean {
  switch (event) {
    case 'submerged':
      return trip.roads?.includes('water') ?? false;
    case 'salted':
      return trip.roads?.includes('salt') ?? false;
    case 'overloaded':
      return trailer.judge(trip)?.comparisons.some((comparison) => comparison.standing === 'over') ?? false;
    default:
      return false;
  }
}

/** Work behind a hub takes the wheel off. */
const HUB_BUNDLE = 'hub';

/** Last day a wheel came off (tires, hub bearings or brakes changed, or work behind the hub), or brakes were fitted. */
function lastWorkshopEvent(event: 'wheel-off' | 'brakes-new', trailer: TrailerOn): CivilDate | null {
  let last: CivilDate | null = null;
  const see = (on: CivilDate | null) => {
    if (on !== null && on <= trailer.asOf && (last === null || on > last)) last = on;
  };
  for (const part of trailer.facts.parts) {
    if (part.kind === 'brake-set') see(part.fittedOn);
    if (event === 'brakes-new' || part.position === 'spare') continue;
    if (part.kind !== 'tire' && part.kind !== 'hub-bearings' && part.kind !== 'brake-set') continue;
    see(part.fittedOn);
    see(part.removedOn);
  }
  if (event === 'wheel-off') {
    const hubKinds = trailer.facts.checkKinds.filter((kind) => kind.work.bundle === HUB_BUNDLE);
    const ids = new Set(hubKinds.map((kind) => kind.id));
    for (const record of trailer.records) if (ids.has(record.checkKindId)) see(record.doneOn);
  }
  return last;
}
