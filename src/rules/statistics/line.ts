import { studentQuantile } from './distributions.js';

/** A measured value `y` at a place `x` along the road or in time. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * A straight line through scattered points, and how far to trust it. Kept at the middle of its points, where level and
 * slope do not depend on each other.
 */
export interface Line {
  readonly centre: number;
  /** The line at `centre`. */
  readonly level: number;
  readonly slope: number;
  readonly levelVariance: number;
  readonly slopeVariance: number;
  /** Standard deviation of single points around the line. */
  readonly scatter: number;
  /** Degrees of freedom behind the scatter. */
  readonly freedom: number;
}

export interface Range {
  readonly low: number;
  readonly high: number;
}

export function lineAt(line: Line, x: number): number {
  return line.level + line.slope * (x - line.centre);
}

/** Where the line itself lies at `x`, with `confidence` (0 to 1). Source: NIST/SEMATECH e-Handbook 4.5.1.1 and 4.5.1.2. */
export function lineRange(line: Line, x: number, confidence: number): Range {
  return rangeAround(line, x, confidence, 0);
}

/** Where one further reading at `x` will lie, with `confidence`: the line's own doubt and the scatter of readings. */
export function readingRange(line: Line, x: number, confidence: number): Range {
  return rangeAround(line, x, confidence, line.scatter ** 2);
}

function rangeAround(line: Line, x: number, confidence: number, more: number): Range {
  const variance = line.levelVariance + line.slopeVariance * (x - line.centre) ** 2 + more;
  const reach = studentQuantile((1 + confidence) / 2, line.freedom) * Math.sqrt(variance);
  const at = lineAt(line, x);
  return { low: at - reach, high: at + reach };
}

/** Where the line comes to a value, or why no such place can be named. */
type Crossing =
  | { readonly kind: 'at'; readonly at: number; readonly low: number; readonly high: number; readonly doubt: number }
  /** The slope may as well be none: the places at which the line could cross have no end. */
  | { readonly kind: 'no-slope'; readonly doubt: number };

/**
 * Inverse prediction: where the line reaches `value`, with the interval that covers the place with `confidence`. `of`
 * says whether the true line crosses, or a single reading would. Refused when doubt (g = t² · slope variance / slope²)
 * is 1 or more: the slope cannot be told from none, and any place printed would be invented.
 * Source: E. C. Fieller, J. R. Stat. Soc. B 16 (1954); N. R. Draper, H. Smith, Applied Regression Analysis, section 3.2.
 */
export function crossing(line: Line, value: number, confidence: number, of: 'line' | 'reading' = 'line'): Crossing {
  const t = studentQuantile((1 + confidence) / 2, line.freedom);
  return crossingAt(line, value, t, of);
}

/** The same with the quantile of Student's t worked out before, for those who ask many lines. */
export function crossingAt(line: Line, value: number, t: number, of: 'line' | 'reading' = 'line'): Crossing {
  const { slope, slopeVariance } = line;
  const doubt = (t ** 2 * slopeVariance) / slope ** 2;
  if (!(doubt < 1)) return { kind: 'no-slope', doubt };
  const away = value - line.level;
  const variance = line.levelVariance + (of === 'reading' ? line.scatter ** 2 : 0);
  const leading = slope ** 2 - t ** 2 * slopeVariance;
  const reach = t * Math.sqrt(variance * leading + slopeVariance * away ** 2);
  return {
    kind: 'at',
    at: line.centre + away / slope,
    low: line.centre + (slope * away - reach) / leading,
    high: line.centre + (slope * away + reach) / leading,
    doubt,
  };
}
