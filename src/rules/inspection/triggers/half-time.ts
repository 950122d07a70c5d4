import { earliest, latest } from '../../calendar/civil-date.js';
import { dayFromNumber, dayNumber, daysAfter } from '../../calendar/day-number.js';
import { HARSH_FACTOR } from '../harsh-service.js';
import { firstOpenEvent } from './events-seen.js';
import { type CheckSoFar, type Falls, fallsOn, NOT_DUE } from './falls.js';
import { lastGoodDay } from './months.js';

/**
 * Once it has been over salt, the soonest of the check's days and months at half its length, rounded down; but no sooner
 * than that trip. Brakes, plugs and U-bolts at half interval in the salt season: common practice, no source.
 */
export function fallsByHalfTime(check: CheckSoFar): Falls {
  const { kind, lastPass } = check;
  if (lastPass === null) return NOT_DUE;
  const salted = firstOpenEvent('salted', check);
  if (salted === null) return NOT_DUE;
  const whole = kind.triggers.flatMap((trigger) => {
    if (trigger.kind === 'days') return daysAfter(lastPass.doneOn, trigger.every);
    return trigger.kind === 'months' ? lastGoodDay(trigger, lastPass) : [];
  });
  const full = earliest(whole);
  if (full === null) return NOT_DUE;
  const done = dayNumber(lastPass.doneOn);
  const half = dayFromNumber(done + Math.floor((dayNumber(full) - done) / HARSH_FACTOR));
  return fallsOn(latest([half, salted]) ?? half);
}
