import { chiSquareQuantile } from './distributions.js';
import type { Lifetime } from './lifetime.js';
import { exposure, sortedOut } from './weibull-fit.js';

/**
 * The scale that lives of a known shape prove with a confidence (0 to 1): the true one is at least this. With no death
 * yet (Σ age^shape / −ln(1 − confidence))^(1/shape), so that a fleet in which nothing has failed still says something.
 * With deaths the chi-square form for the exponential law of age^shape. Null when nothing was watched for any time.
 * Source: R. B. Abernethy, The New Weibull Handbook, chapter 6 ("Weibayes"); for deaths above 0, Meeker, Escobar (1998),
 * section 7.7, exact where watching ended at a death and on the safe side otherwise (2 × deaths + 2 degrees of freedom).
 */
export function scaleLowerBound(lives: readonly Lifetime[], shape: number, confidence: number): number | null {
  const seen = sortedOut(lives);
  if (seen === null || seen.units === 0) return null;
  const { sum } = exposure(seen, shape);
  return seen.unit * ((2 * sum) / chiSquareQuantile(confidence, 2 * seen.deaths + 2)) ** (1 / shape);
}
