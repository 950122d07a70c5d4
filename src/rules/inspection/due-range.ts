import type { CivilDate } from '../calendar/civil-date.js';
import { dayFromNumber, daysAfter } from '../calendar/day-number.js';
import type { Job } from '../facts/use.js';

/**
 * How sure a last good day is: with a chance of 10, 50 and 90 % it has come by these days. Null when that lies more than
 * ten years ahead, or never comes as things stand. Worked out from the last day known, not from today, so that it holds
 * until something new is known; a tenth date that has passed says that it may already have come.
 */
export interface DueRange {
  readonly p10: CivilDate | null;
  readonly p50: CivilDate | null;
  readonly p90: CivilDate | null;
}

/** No doubt left: it has come. */
export function certain(day: CivilDate): DueRange {
  return { p10: day, p50: day, p90: day };
}

/** From whatever says by which day an amount is used with a chance. `beforeJob`: the work cannot be done on the road. */
export function rangeBy(
  reaching: (chance: number) => { readonly day: number; readonly job: Job | null } | null,
  beforeJob: boolean,
): DueRange {
  const at = (chance: number): CivilDate | null => {
    const reached = reaching(chance);
    if (reached === null) return null;
    return reached.job !== null && beforeJob ? daysAfter(reached.job.startsOn, -1) : dayFromNumber(reached.day);
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

/**
 * Whichever comes first. What two triggers count (miles, trips) grows together, so the earlier of their days at each
 * chance is taken; were they independent, the first would come somewhat sooner.
 */
export function firstOf(a: DueRange, b: DueRange): DueRange {
  return { p10: sooner(a.p10, b.p10), p50: sooner(a.p50, b.p50), p90: sooner(a.p90, b.p90) };
}

function sooner(a: CivilDate | null, b: CivilDate | null): CivilDate | null {
  if (a === null || b === null) return a ?? b;
  return a < b ? a : b;
}
