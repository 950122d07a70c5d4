/**
 * Simple exponential smoothing: each value pulls the level towards itself by the share `alpha` (above 0, at most 1).
 * Source: R. J. Hyndman, G. Athanasopoulos, Forecasting: Principles and Practice, 2nd ed., section 7.1.
 */
export function smoothed(values: readonly number[], alpha: number, start: number): number {
  return values.reduce((level, value) => level + alpha * (value - level), start);
}

/**
 * The same for values at uneven times: after a long gap a value pulls harder, since what was held is old. `alpha` is the
 * share for one usual gap. Times rise; the first value is the start. Null with no value.
 * Source: D. J. Wright, Management Science 32 (1986) 499–510.
 */
export function smoothedUnevenly(
  values: readonly { readonly time: number; readonly value: number }[],
  alpha: number,
  usualGap: number,
): number | null {
  const [first] = values;
  if (first === undefined) return null;
  let level = first.value;
  let time = first.time;
  let pull = alpha;
  for (const next of values.slice(1)) {
    const kept = (1 - alpha) ** ((next.time - time) / usualGap);
    pull = pull / (pull + kept);
    level += pull * (next.value - level);
    time = next.time;
  }
  return level;
}

/** Rare demand, such as the hauls of a trailer that mostly stands. */
interface RareDemand {
  readonly size: number;
  readonly gap: number;
  /** Expected per period: size over gap. */
  readonly perPeriod: number;
  /** The same less its usual bias upward, (1 − alpha / 2) of it. */
  readonly corrected: number;
}

/**
 * Croston's method: sizes of demands and gaps between them are smoothed apart, from the first of each on. Null with no
 * demand. Source: J. D. Croston, Oper. Res. Q. 23 (1972) 289–303, as in Forecasting: Principles and Practice, 2nd ed.,
 * section 12.2. Correction: A. A. Syntetos, J. E. Boylan, Int. J. Forecast. 21 (2005) 303–314.
 */
export function rareDemand(sizes: readonly number[], gaps: readonly number[], alpha: number): RareDemand | null {
  const [firstSize, ...laterSizes] = sizes;
  const [firstGap, ...laterGaps] = gaps;
  if (firstSize === undefined || firstGap === undefined) return null;
  const size = smoothed(laterSizes, alpha, firstSize);
  const gap = smoothed(laterGaps, alpha, firstGap);
  return { size, gap, perPeriod: size / gap, corrected: (1 - alpha / 2) * (size / gap) };
}
