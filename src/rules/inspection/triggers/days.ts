import { daysAfter } from '../../calendar/day-number.js';
import type { Trigger } from '../../facts/check.js';
import { type CheckSoFar, cannotSay, type Falls, fallsOn } from './falls.js';

/** Every N days: the Nth day after it was last done is the last good one. */
export function fallsByDays(trigger: Extract<Trigger, { kind: 'days' }>, { lastPass }: CheckSoFar): Falls {
  return lastPass === null ? cannotSay('no-last-done') : fallsOn(daysAfter(lastPass.doneOn, trigger.every));
}
