import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exceeds } from '../../../src/rules/units/compare.js';
import { km, miles, toMiles } from '../../../src/rules/units/distance.js';
import { lbf, massHeldUpBy, newtons, toLbf, weightOf } from '../../../src/rules/units/force.js';
import { feet, inch, metres, toFeet, toInch } from '../../../src/rules/units/length.js';
import { kg, lb, toLb } from '../../../src/rules/units/mass.js';
import { kPa, psi, toPsi } from '../../../src/rules/units/pressure.js';

describe('the factors are those of the standard', () => {
  // NIST Special Publication 811 (2008), appendix B.8: the exact ones, and psi to its seven printed digits.
  test.each([
    ['1 lb', lb(1), 0.45359237],
    ['1 in', inch(1), 0.0254],
    ['1 ft', feet(1), 0.3048],
    ['1 mi', miles(1), 1.609344],
    ['1 lbf', lbf(1), 4.4482216152605],
  ])('%s', (_name, value, expected) => {
    expect(value).toBeCloseTo(expected, 13);
  });

  test('1 psi is 6.894757 kPa', () => {
    expect(psi(1)).toBeCloseTo(6.894757, 6);
  });
});

/** Anything on a trailer, from a milligram to a thousand tonnes. */
const number = fc.double({ min: 1e-6, max: 1e6, noNaN: true });

/** Each trip is two roundings of a double. */
function sameWithin(found: number, expected: number): void {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(Math.abs(expected) * 1e-14);
}

test('there and back gives the same number in every unit', () => {
  fc.assert(
    fc.property(number, (value) => {
      sameWithin(toLb(lb(value)), value);
      sameWithin(toInch(inch(value)), value);
      sameWithin(toFeet(feet(value)), value);
      sameWithin(toMiles(miles(value)), value);
      sameWithin(toPsi(psi(value)), value);
      sameWithin(toLbf(lbf(value)), value);
      sameWithin(massHeldUpBy(weightOf(kg(value))), value);
    }),
  );
});

test('a value already in SI is only given its type', () => {
  expect([kg(2), metres(2), km(2), kPa(2), newtons(2)]).toEqual([2, 2, 2, 2, 2]);
});

describe('past a limit', () => {
  test('a sum of pounds that comes to the rating is not over it', () => {
    const parts = [9_920.1, 310.2, 1_050.3, 160.4, 2_559].map(lb);
    expect(
      exceeds(
        parts.reduce((sum, part) => sum + part, 0),
        lb(14_000),
      ),
    ).toBe(false);
  });

  test('an ounce over is over', () => {
    expect(exceeds(lb(14_000 + 1 / 16), lb(14_000))).toBe(true);
    expect(exceeds(lb(14_000 - 1 / 16), lb(14_000))).toBe(false);
  });
});
