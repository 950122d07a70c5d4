import { studentQuantile } from '../statistics/distributions.js';
import { crossingAt, type Line } from '../statistics/line.js';
import { type LineWithPrior, lineWithPrior } from '../statistics/line-with-prior.js';
import { parabola } from '../statistics/parabola.js';
import { GAUGE_WORTH, type WearKind, type WearLimit } from './wear-quantity.js';
import type { WearReading } from './wear-series.js';

/** The line through the readings of one part, with the usual wear standing in while they are few. */
export interface WearLine extends Line {
  /** Share of what is known of the slope that is usual wear and not this part's: 1 with one reading, near 0 with many. */
  readonly priorShare: number;
  /** The readings bend towards faster wear, more than chance would (5 %): the line may promise too much. */
  readonly speedsUp: boolean;
}

/** Readings needed before a bend is looked for: fewer bend by themselves. Our choice. */
const LEAST_FOR_BEND = 6;
/** A bend that chance would make in one of twenty straight trends is taken for one, either way: the usual 95 %. */
const SURE = 0.95;

/** Null while nothing says how fast it wears: one reading, or all on one day, and no usual wear held. */
export function wearLine(readings: readonly WearReading[], kind: WearKind, by: 'distance' | 'days'): WearLine | null {
  const points = readings.map(({ x, value }) => ({ x, y: value }));
  const usual = by === 'distance' ? kind.usual : null;
  const line: LineWithPrior | null = lineWithPrior(points, {
    slope: usual === null ? null : { mean: kind.direction * usual.perKm, spread: usual.spread },
    scatter: { deviation: kind.gauge, worth: GAUGE_WORTH },
  });
  if (line === null) return null;
  const bend = points.length < LEAST_FOR_BEND ? null : parabola(points);
  const speedsUp = bend !== null && bend.square * kind.direction > bend.errors[2] * tailOf(bend.freedom, SURE);
  return { ...line, speedsUp };
}

/** Places at which the limit is reached with a chance of 10, 50 and 90 %, in the unit of the line's places. */
export interface LimitPlace {
  readonly early: number;
  readonly middle: number;
  readonly late: number;
}

/** Two-sided: one in ten comes before it, one in ten after it. */
const BETWEEN = 0.8;

/**
 * Where the true wear comes to its limit (not where a single reading would). Null where no place can be named: the slope
 * cannot be told from none, or runs the wrong way.
 */
export function placeOfLimit(line: WearLine, limit: WearLimit, direction: -1 | 1): LimitPlace | null {
  if (line.slope * direction <= 0) return null;
  const found = crossingAt(line, limit.value, tailOf(line.freedom, BETWEEN));
  return found.kind === 'no-slope' ? null : { early: found.low, middle: found.at, late: found.high };
}

/** Degrees of freedom here are small whole numbers, and their quantiles cost more than all the rest. */
const TAILS = new Map<number, number>();
const MOST_TAILS = 1000;

/** Quantile of Student's t that leaves this share between it and its mirror image. */
function tailOf(freedom: number, between: number): number {
  // Whole numbers and shares below 1: one key for both.
  const key = freedom + between;
  const known = TAILS.get(key);
  if (known !== undefined) return known;
  const tail = studentQuantile((1 + between) / 2, freedom);
  if (TAILS.size < MOST_TAILS) TAILS.set(key, tail);
  return tail;
}
