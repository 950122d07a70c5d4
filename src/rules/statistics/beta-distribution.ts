import { logGamma } from './log-gamma.js';

/**
 * Chance that a beta variable with shapes `a` and `b` (both above 0) is at most `x`: the regularized incomplete beta
 * function I_x(a, b). Continued fraction by the modified Lentz method (NIST DLMF 8.17.22). About 12 significant figures
 * for shapes from 0.01 to 10,000. Throws RangeError for a shape that is not above 0.
 */
export function betaCdf(x: number, a: number, b: number): number {
  if (!(a > 0) || !(b > 0)) throw new RangeError(`a beta distribution has shapes above 0, not ${a} and ${b}`);
  return below(x, a, b, logBeta(a, b));
}

/** The same with ln B(a, b) worked out before. */
function below(x: number, a: number, b: number, scale: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - scale);
  return x < (a + 1) / (a + b + 2) ? (front * fraction(x, a, b)) / a : 1 - (front * fraction(1 - x, b, a)) / b;
}

/** ln B(a, b). */
function logBeta(a: number, b: number): number {
  return logGamma(a) + logGamma(b) - logGamma(a + b);
}

/** The continued fraction of DLMF 8.17.22; converges fast where x is below the mean. */
function fraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m <= MOST_TERMS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < 1e-14) break;
  }
  return h;
}

/** Far more terms than shapes of 10,000 need. */
const MOST_TERMS = 500;

/** Keeps a denominator off zero, as the method asks. */
function away(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}

/**
 * The value that a beta variable with shapes `a` and `b` stays under with chance `p`, 0 < p < 1: the inverse of
 * `betaCdf`, to about 10 significant figures. Newton's steps on ln(x/(1 − x)), kept inside a bracket that closes.
 */
export function betaQuantile(p: number, a: number, b: number): number {
  if (!(a > 0) || !(b > 0)) throw new RangeError(`a beta distribution has shapes above 0, not ${a} and ${b}`);
  if (!(p > 0 && p < 1)) throw new RangeError(`a quantile is asked for between 0 and 1, not at ${p}`);
  const scale = logBeta(a, b);
  let low = -700;
  let high = 700;
  let logit = Math.log(a / b) + roughNormal(p) * Math.sqrt(1 / a + 1 / b);
  for (let i = 0; i < MOST_STEPS; i++) {
    const x = 1 / (1 + Math.exp(-logit));
    const y = 1 / (1 + Math.exp(logit));
    const off = below(x, a, b, scale) - p;
    if (off > 0) high = logit;
    else low = logit;
    // Density on the logit scale: x^a (1 − x)^b / B(a, b).
    const step = off / Math.exp(a * Math.log(x) + b * Math.log(y) - scale);
    const next = logit - step;
    const moved = next > low && next < high ? next : (low + high) / 2;
    // A step of Newton's leaves about the square of itself to go.
    if (Math.abs(moved - logit) < (moved === next ? 1e-6 : 1e-12)) return 1 / (1 + Math.exp(-moved));
    logit = moved;
  }
  return 1 / (1 + Math.exp(-logit));
}

const MOST_STEPS = 100;

/** Normal quantile to about a hundredth, by Tukey's lambda distribution: where to begin looking, no more. */
function roughNormal(p: number): number {
  return 4.91 * (p ** 0.14 - (1 - p) ** 0.14);
}
