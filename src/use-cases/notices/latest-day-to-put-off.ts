import { addDays, type CivilDate } from '../../rules/calendar/civil-date.js';
import type { CheckKind } from '../../rules/facts/check.js';
import type { Job } from '../../rules/facts/use.js';

export interface PutOffLimit {
  /** Today or before when it cannot be put off at all. */
  readonly latest: CivilDate;
  /** The job that sets it. */
  readonly job: Job;
}

/**
 * The last day to which a check may be put off: where someone can be hurt, the day before the trailer's next job.
 * Null when nothing sets one.
 */
export function latestDayToPutOff(
  kind: Pick<CheckKind, 'safety'>,
  jobs: readonly Job[],
  today: CivilDate,
): PutOffLimit | null {
  if (!kind.safety) return null;
  const next = jobs
    .filter((job) => job.state === 'booked' && job.endsOn >= today)
    .sort((one, other) => (one.startsOn < other.startsOn ? -1 : one.startsOn > other.startsOn ? 1 : 0))[0];
  return next === undefined ? null : { latest: addDays(next.startsOn, -1), job: next };
}
