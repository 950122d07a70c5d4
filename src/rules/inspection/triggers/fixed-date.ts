import type { Trigger } from '../../facts/check.js';
import { type CheckSoFar, cannotSay, type Falls, fallsOn } from './falls.js';

/** A date on the trailer's papers: the last day they are good. */
export function fallsOnFixedDate(trigger: Extract<Trigger, { kind: 'fixed-date' }>, { trailer }: CheckSoFar): Falls {
  const { registrationExpiresOn, insuranceExpiresOn } = trailer.facts.trailer;
  const date = trigger.date === 'registration' ? registrationExpiresOn : insuranceExpiresOn;
  return date === null ? cannotSay('no-date-set') : fallsOn(date);
}
