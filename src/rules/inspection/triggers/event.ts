import type { CivilDate } from '../../calendar/civil-date.js';
import { dayFromNumber, dayNumber, daysAfter } from '../../calendar/day-number.js';
import type { Trigger } from '../../facts/check.js';
import type { Kilometres } from '../../units/distance.js';
import { eventStops } from '../event-stops.js';
import { wentOutUnmeasured } from './distance.js';
import { firstOpenEvent, lastEvent } from './events-seen.js';
import { type CheckSoFar, cannotSay, type Falls, fallsOn, NOT_DUE } from './falls.js';
import { fallsByHalfTime } from './half-time.js';
import { fallsByIdleness, HALF_YEAR_DAYS, IDLE_DAYS } from './idle.js';

type EventTrigger = Extract<Trigger, { kind: 'event' }>;

/** After an event: at once, or at each distance after it. */
export function fallsByEvent(trigger: EventTrigger, check: CheckSoFar): Falls {
  if (trigger.event === 'idle') return fallsByIdleness(IDLE_DAYS, check);
  if (trigger.event === 'idle-half-year') return fallsByIdleness(HALF_YEAR_DAYS, check);
  if (trigger.event === 'salt-half-time') return fallsByHalfTime(check);
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
  const open = atKm.filter((distance) => distance > covered).sort((a, b) => a - b);
  const next = open[0];
  if (next === undefined) return NOT_DUE;
  if (wentOutUnmeasured(check, since)) return cannotSay('no-distance-known');

  const usedKm = use.travelled.between(since, dayNumber(trailer.asOf));
  const used = { kind: 'distance', usedKm, limitKm: next, harshKm: 0 as Kilometres, loadKm: 0 as Kilometres } as const;
  const reached = use.travelled.dayReaching(since, next);
  const stops = eventStops(open, usedKm);
  if (reached !== null) return { ...fallsOn(dayFromNumber(reached), used), stops };
  const left = (next - use.travelled.between(since, use.toCome.from)) as Kilometres;
  const ahead = use.toCome.dayReachingByJobs(left, since);
  // Estimated use may warn, but a look after ten miles is overdue only when ten miles are known to be driven.
  const onlyEstimated = ahead !== null && ahead.job === null && ahead.day < dayNumber(trailer.asOf);
  if (ahead === null || onlyEstimated) return { ...NOT_DUE, used, stops };
  const isCrossed = ahead.job !== null && check.kind.work.place !== 'road';
  return { ...fallsOn(isCrossed ? daysAfter(ahead.job.startsOn, -1) : dayFromNumber(ahead.day), used), stops };
}
