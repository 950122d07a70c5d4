import { describe, expect, it } from 'vitest';
import { betaCdf, betaQuantile } from '../../../src/rules/statistics/beta-distribution.js';
import { logGamma } from '../../../src/rules/statistics/log-gamma.js';

// R 4, `lgamma(x)`, printed with 15 figures.
const LOG_GAMMA = [
  [0.001, 6.90717888538385],
  [0.1, 2.25271265173421],
  [1 / 3, 0.985420646927767],
  [0.5, 0.5723649429247],
  [1, 0],
  [1.5, -0.120782237635245],
  [2, 0],
  [3.7, 1.42807232666539],
  [10, 12.8018274800815],
  [100.5, 361.435540467778],
  [12_345.678, 103_959.919905546],
] as const;

// R 4, `pbeta(x, a, b)`.
const CHANCES = [
  [0.3, 2.5, 4, 0.352197585906767],
  [0.5, 0.5, 0.5, 0.5],
  [0.02, 400, 12_000, 1.83362801957037e-19],
  [0.04, 400, 10_000, 0.794251465512582],
  [1e-5, 0.34, 0.34, 0.0113417552378974],
  [0.5, 3_000, 2_900, 0.096456101098356],
] as const;

// R 4, `qbeta(p, a, b)`.
const QUANTILES = [
  [0.1, 2.5, 4, 0.157658055478187],
  [0.5, 1 / 3, 1 / 3, 0.5],
  [0.9, 400, 12_000, 0.0343069155569606],
  [0.1, 1 / 3, 20, 3.62223234322573e-5],
  [0.9, 0.4, 0.34, 0.995468961427252],
  [0.5, 3_000, 2_900, 0.508475533915333],
  [1e-6, 5, 2, 0.0444269519698183],
] as const;

describe('the beta distribution', () => {
  it.each(LOG_GAMMA)('ln Γ(%d)', (x, expected) => {
    expect(Math.abs(logGamma(x) - expected)).toBeLessThan(1e-14 * Math.max(1, Math.abs(expected)) * 10);
  });

  // Sums of logarithms of large shapes lose some of the 16 figures; 1e-10 of the value is a day in a million years.
  it.each(CHANCES)('is at most %d with shapes %d and %d', (x, a, b, expected) => {
    expect(betaCdf(x, a, b) / expected).toBeCloseTo(1, 9);
  });

  it.each(QUANTILES)('has its %d quantile with shapes %d and %d', (p, a, b, expected) => {
    expect(betaQuantile(p, a, b) / expected).toBeCloseTo(1, 9);
  });

  it('says which values make no sense', () => {
    expect(() => logGamma(0)).toThrow(RangeError);
    expect(() => betaCdf(0.5, -1, 2)).toThrow(RangeError);
    expect(() => betaQuantile(1, 1, 2)).toThrow(RangeError);
    expect([betaCdf(-1, 1, 2), betaCdf(2, 1, 2)]).toEqual([0, 1]);
  });
});
