import gammaCdf from '@stdlib/stats-base-dists-gamma-cdf';
import gammaInverse from '@stdlib/stats-base-dists-gamma-quantile';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalInverse from '@stdlib/stats-base-dists-normal-quantile';
import studentCdf from '@stdlib/stats-base-dists-t-cdf';
import studentInverse from '@stdlib/stats-base-dists-t-quantile';

/**
 * The four distributions that the rules need, in one place: a numerical library works them out, and nothing outside
 * this folder knows which. Probabilities are 0 to 1. Outside its range an argument gives NaN, as in the library.
 */

/** Probability that a standard normal value is at most `x`. */
export function normalBelow(x: number): number {
  return normalCdf(x, 0, 1);
}

export function normalQuantile(probability: number): number {
  return normalInverse(probability, 0, 1);
}

/** Student's t; `freedom` is the degrees of freedom, above 0 and not necessarily whole. */
export function studentBelow(x: number, freedom: number): number {
  return studentCdf(x, freedom);
}

export function studentQuantile(probability: number, freedom: number): number {
  return studentInverse(probability, freedom);
}

/** Gamma with shape and rate (one over scale), both above 0: mean shape / rate. */
export function gammaBelow(x: number, shape: number, rate: number): number {
  return gammaCdf(x, shape, rate);
}

export function gammaQuantile(probability: number, shape: number, rate: number): number {
  return gammaInverse(probability, shape, rate);
}

/** Chi-square is the gamma distribution of shape freedom / 2 and rate 1/2. */
export function chiSquareBelow(x: number, freedom: number): number {
  return gammaCdf(x, freedom / 2, 0.5);
}

export function chiSquareQuantile(probability: number, freedom: number): number {
  return gammaInverse(probability, freedom / 2, 0.5);
}
