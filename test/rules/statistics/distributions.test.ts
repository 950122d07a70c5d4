import { describe, expect, it } from 'vitest';
import {
  chiSquareBelow,
  chiSquareQuantile,
  gammaBelow,
  gammaQuantile,
  normalBelow,
  normalQuantile,
  studentBelow,
  studentQuantile,
} from '../../../src/rules/statistics/distributions.js';
import { expectedRate, rateQuantile, updatedRate } from '../../../src/rules/statistics/failure-rate.js';
import made from '../reference/r/survival.json' with { type: 'json' };

const { distributions } = made;

/** Two libraries of doubles that each promise about 14 figures, and lose a few in the tails. */
const SAME = 1e-10;
const close = (value: number, expected: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(SAME * Math.max(Math.abs(expected), 1e-3));

describe('the distributions, as R has them', () => {
  it('normal', () => {
    for (const { x, below } of distributions.normal) close(normalBelow(x), below);
    for (const { p, x } of distributions.normalQuantiles) close(normalQuantile(p), x);
  });

  it("Student's t", () => {
    for (const { x, freedom, below } of distributions.student) close(studentBelow(x, freedom), below);
    for (const { p, freedom, x } of distributions.studentQuantiles) close(studentQuantile(p, freedom), x);
  });

  it('gamma, by shape and rate', () => {
    for (const { x, shape, rate, below } of distributions.gamma) close(gammaBelow(x, shape, rate), below);
    for (const { p, shape, rate, x } of distributions.gammaQuantiles) close(gammaQuantile(p, shape, rate), x);
  });

  it('chi-square', () => {
    for (const { p, freedom, x } of distributions.chiSquareQuantiles) {
      close(chiSquareQuantile(p, freedom), x);
      close(chiSquareBelow(x, freedom), p);
    }
  });
});

describe('a rate of failures', () => {
  // V9: Gamma(2, 40 trailer-years) and 3 failures in 12 trailer-years; printed to six figures.
  it('three failures in twelve trailer-years move a belief of 0.05 a year to 0.096, not to 0.25', () => {
    const belief = updatedRate({ failures: 2, exposure: 40 }, { failures: 3, exposure: 12 });
    expect(expectedRate(belief)).toBeCloseTo(0.0961538, 7);
    expect(rateQuantile(belief, 0.05)).toBeCloseTo(0.037887, 6);
    expect(rateQuantile(belief, 0.95)).toBeCloseTo(0.176029, 6);
  });
});
