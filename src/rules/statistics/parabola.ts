import { studentBelow } from './distributions.js';
import type { Point } from './line.js';

/** y = constant + linear · x + square · x², with the standard error of each. */
interface Parabola {
  readonly constant: number;
  readonly linear: number;
  readonly square: number;
  readonly errors: readonly [number, number, number];
  readonly scatter: number;
  readonly rSquared: number;
  /** Degrees of freedom behind the scatter. */
  readonly freedom: number;
}

/**
 * Least squares with a bend. A line through bent readings looks perfect (R² of 0.99999 for NIST's Pontius data, with ten
 * times the scatter), so a trend is asked whether it bends before it is drawn out. Worked out in polynomials that are
 * orthogonal over the points, since powers of large x lose all figures. Null with fewer than four points, or fewer than
 * three places. Source: G. E. Forsythe, J. SIAM 5 (1957) 74–88; checked against NIST StRD (Pontius).
 */
export function parabola(points: readonly Point[]): Parabola | null {
  const count = points.length;
  if (count < 4) return null;
  const mean = points.reduce((sum, { x }) => sum + x, 0) / count;
  const width = points.reduce((most, { x }) => Math.max(most, Math.abs(x - mean)), 0);
  if (width === 0) return null;
  const scaled = points.map(({ x, y }) => ({ x: (x - mean) / width, y }));
  const xx = scaled.reduce((sum, { x }) => sum + x * x, 0);
  const tilt = scaled.reduce((sum, { x }) => sum + x ** 3, 0) / xx;
  const lift = xx / count;
  const bendAt = (x: number) => x * x - tilt * x - lift;
  const bends = scaled.reduce((sum, { x }) => sum + bendAt(x) ** 2, 0);
  if (bends < 1e-24 * count) return null;
  const level = scaled.reduce((sum, { y }) => sum + y, 0) / count;
  const slope = scaled.reduce((sum, { x, y }) => sum + x * (y - level), 0) / xx;
  const bend = scaled.reduce((sum, { x, y }) => sum + bendAt(x) * (y - level - slope * x), 0) / bends;
  const squares = scaled.reduce((sum, { x, y }) => sum + (y - level - slope * x - bend * bendAt(x)) ** 2, 0);
  const total = scaled.reduce((sum, { y }) => sum + (y - level) ** 2, 0);
  const variance = squares / (count - 3);
  // Back to powers of x: x' = (x − mean) / width.
  const square = bend / width ** 2;
  const linearBend = -(tilt / width) - (2 * mean) / width ** 2;
  const constantBend = (mean / width) ** 2 + (tilt * mean) / width - lift;
  const errors = [
    Math.sqrt(variance * (1 / count + (mean / width) ** 2 / xx + constantBend ** 2 / bends)),
    Math.sqrt(variance * (1 / (width ** 2 * xx) + linearBend ** 2 / bends)),
    Math.sqrt(variance / bends) / width ** 2,
  ] as const;
  return {
    constant: level - (slope * mean) / width + bend * constantBend,
    linear: slope / width + bend * linearBend,
    square,
    errors,
    scatter: Math.sqrt(variance),
    rSquared: total === 0 ? 1 : 1 - squares / total,
    freedom: count - 3,
  };
}

/** Probability of a bend so strong by chance alone, if the truth were straight. Small: a line hides a bend. */
export function straightProbability({ square, errors, freedom }: Parabola): number {
  return errors[2] === 0 ? 1 : 2 * studentBelow(-Math.abs(square / errors[2]), freedom);
}
