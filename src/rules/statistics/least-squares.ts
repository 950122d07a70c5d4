import type { Line, Point } from './line.js';

export interface LeastSquares extends Line {
  readonly intercept: number;
  readonly interceptError: number;
  readonly slopeError: number;
  /** Share of the scatter of `y` that the line takes up. */
  readonly rSquared: number;
}

/**
 * The straight line with the least sum of squares. Null with fewer than three points, or all at one place: no scatter
 * can be told then. Source: NIST/SEMATECH e-Handbook 4.4.3.1; checked against NIST StRD (Norris).
 */
export function leastSquares(points: readonly Point[]): LeastSquares | null {
  if (points.length < 3) return null;
  const sums = sumsOf(points);
  if (sums.xx === 0) return null;
  const { count, centre, level, xx, xy, yy } = sums;
  const slope = xy / xx;
  const freedom = count - 2;
  // Summed from the residuals: as a difference of yy and slope · xy the last figures of a good fit are lost.
  const squares = points.reduce((sum, { x, y }) => sum + (y - level - slope * (x - centre)) ** 2, 0);
  const variance = squares / freedom;
  return {
    centre,
    level,
    slope,
    levelVariance: variance / count,
    slopeVariance: variance / xx,
    scatter: Math.sqrt(variance),
    freedom,
    intercept: level - slope * centre,
    interceptError: Math.sqrt(variance / count + (variance / xx) * centre ** 2),
    slopeError: Math.sqrt(variance / xx),
    rSquared: yy === 0 ? 1 : 1 - squares / yy,
  };
}

interface Sums {
  readonly count: number;
  /** Means of x and of y. */
  readonly centre: number;
  readonly level: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** Sums about the means, in two passes, so that far-off origins lose no figures. At least one point. */
export function sumsOf(points: readonly Point[]): Sums {
  let centre = 0;
  let level = 0;
  for (const { x, y } of points) {
    centre += x / points.length;
    level += y / points.length;
  }
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const { x, y } of points) {
    xx += (x - centre) ** 2;
    xy += (x - centre) * (y - level);
    yy += (y - level) ** 2;
  }
  return { count: points.length, centre, level, xx, xy, yy };
}
