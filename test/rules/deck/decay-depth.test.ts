import { expect, test } from 'vitest';
import { CLIMATE_RATE, decayDepthMm, WOOD_RATE } from '../../../src/rules/deck/decay-depth.js';

// CSIRO / FWPA, Design for Durability, Manual 4 (2008), worked for 1 mm a year: lag 8.5, full speed from 13.5 years.
test.each([
  [10, 2.743],
  [13.5, 5],
  [20, 11.5],
])('after %s years at 1 mm a year: %s mm', (years, depth) => {
  // Case printed to 0.001 mm.
  expect(Math.abs(decayDepthMm(1, years) - depth)).toBeLessThanOrEqual(0.0005);
});

test('better wood and a drier zone decay more slowly, and the two branches meet', () => {
  const slow = WOOD_RATE['class-1'] * CLIMATE_RATE.A;
  const fast = WOOD_RATE.sapwood * CLIMATE_RATE.D;
  expect(decayDepthMm(slow, 10)).toBeLessThan(decayDepthMm(fast, 10));
  const meet = 8.5 * fast ** -0.85 + 5 / fast;
  expect(decayDepthMm(fast, meet + 1e-9)).toBeCloseTo(5, 6);
});
