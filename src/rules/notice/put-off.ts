import type { CivilDate } from '../calendar/civil-date.js';
import { daysAfter } from '../calendar/day-number.js';
import type { CheckKind } from '../facts/check.js';
import type { Job } from '../facts/use.js';

export type PutOff =
  | { readonly kind: 'allowed' }
  /** `latest` is the day before the job: the last day it can be done in time. */
  | { readonly kind: 'refused'; readonly latest: CivilDate; readonly job: Pick<Job, 'id' | 'startsOn'> };

/**
 * Whether a check may be put off until a day. Where someone can be hurt, not past the day before the trailer's next
 * job: a reminder that sleeps while the trailer is on the road protects nobody.
 */
export function canPutOff(
  item: Pick<CheckKind, 'safety'>,
  until: CivilDate,
  nextJob: Pick<Job, 'id' | 'startsOn'> | null,
): PutOff {
  if (!item.safety || nextJob === null) return { kind: 'allowed' };
  const latest = daysAfter(nextJob.startsOn, -1);
  return until <= latest ? { kind: 'allowed' } : { kind: 'refused', latest, job: nextJob };
}
