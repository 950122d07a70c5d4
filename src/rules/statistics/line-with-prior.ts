import { sumsOf } from './least-squares.js';
import type { Line, Point } from './line.js';

/** What is held before any reading. */
interface LinePrior {
  /** The usual slope and how far it strays, as a standard deviation; null where nothing is known. */
  readonly slope: { readonly mean: number; readonly spread: number } | null;
  /** How far single readings stray around their line, and how many readings that knowledge is worth. */
  readonly scatter: { readonly deviation: number; readonly worth: number };
}

export interface LineWithPrior extends Line {
  /** Share of what is known of the slope that comes from the prior: 1 with one reading, 0 where no slope was held. */
  readonly priorShare: number;
}

/**
 * A straight line from few readings and a stated prior (normal–inverse-gamma, conjugate; flat on the level). With a prior
 * worth nothing it is least squares. Null where slope or scatter stay unknown: no reading, or one place only and no
 * slope held.
 * Source: A. Gelman et al., Bayesian Data Analysis, 3rd ed., section 14.8, with one coefficient flat.
 */
export function lineWithPrior(points: readonly Point[], prior: LinePrior): LineWithPrior | null {
  if (points.length === 0) return null;
  const { deviation, worth } = prior.scatter;
  const { count, centre, level, xx, xy } = sumsOf(points);
  // The slope's prior counts as this much spread of readings along x.
  const held = prior.slope === null ? 0 : (deviation / prior.slope.spread) ** 2;
  const mean = prior.slope?.mean ?? 0;
  const freedom = worth + count - (prior.slope === null ? 2 : 1);
  if (xx + held === 0 || freedom <= 0) return null;
  const slope = (xy + held * mean) / (xx + held);
  let squares = worth * deviation ** 2 + held * (slope - mean) ** 2;
  for (const { x, y } of points) squares += (y - level - slope * (x - centre)) ** 2;
  const variance = squares / freedom;
  return {
    centre,
    level,
    slope,
    levelVariance: variance / count,
    slopeVariance: variance / (xx + held),
    scatter: Math.sqrt(variance),
    freedom,
    priorShare: held / (xx + held),
  };
}
