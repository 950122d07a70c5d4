import { normalQuantile } from './distributions.js';
import type { Point, Range } from './line.js';

interface TheilSen {
  readonly slope: number;
  readonly intercept: number;
  /** Of every pair of points at different places, rising. */
  readonly pairSlopes: Float64Array;
  readonly points: number;
}

/**
 * The line that a few wrong readings cannot move: the median of the slopes of all pairs, and the median of what is left
 * (not the slope through the median point, which is off by as much as the readings are lopsided). Up to 29 % of the
 * readings may be wrong. Null where no two points lie at different places.
 * Source: P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379–1389.
 */
export function theilSen(points: readonly Point[]): TheilSen | null {
  const slopes: number[] = [];
  for (let i = 1; i < points.length; i++) {
    const to = points[i] as Point;
    for (let j = 0; j < i; j++) {
      const from = points[j] as Point;
      if (to.x !== from.x) slopes.push((to.y - from.y) / (to.x - from.x));
    }
  }
  if (slopes.length === 0) return null;
  const pairSlopes = Float64Array.from(slopes).sort();
  const slope = medianOfSorted(pairSlopes);
  return { slope, intercept: median(points.map(({ x, y }) => y - slope * x)), pairSlopes, points: points.length };
}

/**
 * Interval for the slope with at least this confidence, from Kendall's statistic: exact up to 40 points, by the normal
 * approximation beyond or where points share a place. Null where so few pairs cannot reach the confidence (for 95 %,
 * under five points). Source: Sen (1968); M. Hollander, D. A. Wolfe, Nonparametric Statistical Methods, section 9.3.
 */
export function theilSenRange({ pairSlopes, points }: TheilSen, confidence: number): Range | null {
  const pairs = pairSlopes.length;
  const complete = (points * (points - 1)) / 2;
  const allowed = (1 - confidence) / 2;
  const critical =
    points <= MOST_EXACT && pairs === complete
      ? exactCritical(points, allowed)
      : normalCritical(points, pairs, allowed);
  if (critical === null) return null;
  // Counted from 1, the (pairs − critical) / 2-th slope and its mirror image; outward where that is no whole number.
  const low = Math.floor((pairs - critical) / 2) - 1;
  return low < 0 ? null : { low: pairSlopes[low] as number, high: pairSlopes[pairs - 1 - low] as number };
}

const MOST_EXACT = 40;

/**
 * Two less than the least k with P(K ≥ k) ≤ allowed, K the concordant less the discordant pairs of n points in chance
 * order. Orders of n with i discordant pairs are counted by the usual recurrence (Knuth, TAOCP 3, 5.1.1).
 */
function exactCritical(points: number, allowed: number): number | null {
  let counts = new Float64Array([1]);
  for (let n = 2; n <= points; n++) {
    const next = new Float64Array(counts.length + n - 1);
    for (let i = 0; i < counts.length; i++) {
      for (let added = 0; added < n; added++) next[i + added] = (next[i + added] as number) + (counts[i] as number) / n;
    }
    counts = next;
  }
  const pairs = counts.length - 1;
  let tail = 0;
  let discordant = 0;
  while (discordant <= pairs && tail + (counts[discordant] as number) <= allowed) {
    tail += counts[discordant] as number;
    discordant++;
  }
  return discordant === 0 ? null : pairs - 2 * discordant;
}

/** Variance of K without ties is n(n−1)(2n+5)/18; pairs at one place are taken off in proportion. */
function normalCritical(points: number, pairs: number, allowed: number): number {
  const share = pairs / ((points * (points - 1)) / 2);
  const variance = (points * (points - 1) * (2 * points + 5) * share) / 18;
  return -normalQuantile(allowed) * Math.sqrt(variance);
}

/** The middle value; of an even number, the mean of the two in the middle. NaN of none. */
export function median(values: readonly number[]): number {
  return medianOfSorted(Float64Array.from(values).sort());
}

function medianOfSorted(sorted: Float64Array): number {
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? Number.NaN) + upper) / 2;
}
