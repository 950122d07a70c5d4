/** One month of a place's climate. */
export interface ClimateMonth {
  /** Mean temperature, °C. */
  readonly meanC: number;
  /** Mean number of days with 0.25 mm (0.01 in) of rain or more. Days, never the amount. */
  readonly wetDays: number;
}

/** Below these nothing rots: too cold, or too dry between the rains. */
const COLD_C = 2;
const DRY_DAYS = 3;
const DIVISOR_C = 16.7;

/** The original, in °F. 2 °C is 35.6 °F, so it reads about 2 % higher. */
const COLD_F = 35;
const DIVISOR_F = 30;

/**
 * Decay hazard of a place for untreated wood above ground: Σ max(0, T − 2) · max(0, D − 3) / 16.7 over twelve months.
 * Each factor is clamped, or a cold dry month would count as a hot wet one. It ranks places; it is no number of years.
 * Source: T. C. Scheffer, Forest Products Journal 21(10), 1971; metric form C. G. Carll, FPL-GTR-179, 2009 (constants from
 * memory, unverified; inputs confirmed). Throws RangeError unless there are twelve months.
 */
export function decayIndex(months: readonly ClimateMonth[]): number {
  return sumOf(
    months,
    ({ meanC, wetDays }) => (Math.max(0, meanC - COLD_C) * Math.max(0, wetDays - DRY_DAYS)) / DIVISOR_C,
  );
}

/** The same by the original constants in °F, for comparing with old reports. */
export function decayIndexFahrenheit(months: readonly { readonly meanF: number; readonly wetDays: number }[]): number {
  return sumOf(
    months,
    ({ meanF, wetDays }) => (Math.max(0, meanF - COLD_F) * Math.max(0, wetDays - DRY_DAYS)) / DIVISOR_F,
  );
}

export type DecayHazard = 'low' | 'moderate' | 'high';

/** Below 35 low, to 65 moderate, above high. Source: Whole Building Design Guide. */
export function decayHazard(index: number): DecayHazard {
  if (index < 35) return 'low';
  return index <= 65 ? 'moderate' : 'high';
}

function sumOf<Month>(months: readonly Month[], part: (month: Month) => number): number {
  if (months.length !== 12) throw new RangeError(`a year has 12 months, not ${months.length}`);
  return months.reduce((sum, month) => sum + part(month), 0);
}
