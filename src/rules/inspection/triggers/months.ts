import { type CivilDate, lastDayOfMonth } from '../../calendar/civil-date.js';
import { monthsAfter } from '../../calendar/day-number.js';
import type { CheckRecord, Trigger } from '../../facts/check.js';
import { type CheckSoFar, cannotSay, type Falls, fallsOn } from './falls.js';

type Months = Extract<Trigger, { kind: 'months' }>;

/** Every N months. */
export function fallsByMonths(trigger: Months, { lastPass }: CheckSoFar): Falls {
  return lastPass === null ? cannotSay('no-last-done') : fallsOn(lastGoodDay(trigger, lastPass));
}

/**
 * The same day N months on is the last good one ("passed within the preceding 12 months", 49 CFR 396.17(c); that the
 * anniversary itself is still good is our reading). A pass by a State, Canadian or Mexican program counts from the last
 * day of its month (396.17(f)), where the check allows that.
 */
export function lastGoodDay(trigger: Months, pass: Pick<CheckRecord, 'doneOn' | 'inspectedBy'>): CivilDate {
  const byProgram = trigger.toMonthEnd && pass.inspectedBy === 'state';
  return byProgram
    ? lastDayOfMonth(monthsAfter(lastDayOfMonth(pass.doneOn), trigger.every))
    : monthsAfter(pass.doneOn, trigger.every);
}
