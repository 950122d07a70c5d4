import type { CivilDate } from '../calendar/civil-date.js';
import { dayNumber } from '../calendar/day-number.js';

/** How often something comes in a stretch of days. */
export interface Times {
  readonly mean: number;
  readonly variance: number;
}

/**
 * Weights of the 10, 50 and 90 % points whose mean and spread stand for the whole: Swanson's rule (A. Hurst, G. C. Brown,
 * R. I. Swanson, AAPG Bulletin 84 (2000) 1883).
 */
const SWANSON = [0.3, 0.4, 0.3] as const;

/** How often by the 10, 50 and 90 % point. */
export type Counts = readonly [number, number, number];

export const CHANCES = [0.1, 0.5, 0.9] as const;

export function timesOf(counts: Counts): Times {
  const mean = counts.reduce((sum, count, place) => sum + (SWANSON[place] as number) * count, 0);
  const variance = counts.reduce((sum, count, place) => sum + (SWANSON[place] as number) * (count - mean) ** 2, 0);
  return { mean, variance };
}

/**
 * First on a day known by its 10, 50 and 90 % dates (null: not to be foreseen), then each `every` days; null where it does
 * not come round. From `from` up to and with `to`; a first day gone by counts as `from`.
 */
export function countsIn(
  first: { readonly p10: CivilDate | null; readonly p50: CivilDate | null; readonly p90: CivilDate | null },
  every: number | null,
  from: CivilDate,
  to: CivilDate,
): Counts {
  const count = (day: CivilDate | null) => {
    if (day === null) return 0;
    const left = dayNumber(to) - Math.max(dayNumber(day), dayNumber(from));
    if (left < 0) return 0;
    return every === null ? 1 : 1 + Math.floor(left / every);
  };
  return [count(first.p10), count(first.p50), count(first.p90)];
}
