import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  axleEquivalents,
  fourthPowerEquivalents,
  USUAL_PAVEMENT,
} from '../../../src/rules/fatigue/axle-equivalents.js';
import { minerSum, repeatsToFailure } from '../../../src/rules/fatigue/miner.js';
import { DAMAGE_EXPONENT, loadFactor, ratedKm } from '../../../src/rules/fatigue/trip-damage.js';
import { basquinCycles, constantAmplitudeLimit, cutOffLimit, weldCycles } from '../../../src/rules/fatigue/weld.js';
import { km } from '../../../src/rules/units/distance.js';
import { lbf, newtons } from '../../../src/rules/units/force.js';
import { CASES } from '../reference/fatigue-cases.js';

const { F1, F2, F3, F4, R1, R2, limits } = CASES;
const CATEGORY = 71;

describe('welds', () => {
  it.each(F1)('F1: category 71 under $range MPa', ({ range, cycles }) => {
    const found = weldCycles(range, CATEGORY);
    // Printed to the cycle; infinite below the cut-off.
    if (Number.isFinite(cycles)) expect(Math.abs(found - cycles)).toBeLessThan(1);
    else expect(found).toBe(cycles);
  });

  it('F2: a spectrum, of which the smallest ranges count for nothing', () => {
    const damage = minerSum(F2.blocks.map(({ cycles, range }) => ({ cycles, toFailure: weldCycles(range, CATEGORY) })));
    expect(damage).toBeCloseTo(F2.damage, 5);
  });

  it('the limits are 0.737 and 0.404 of the category', () => {
    expect(constantAmplitudeLimit(1)).toBeCloseTo(limits.constantAmplitude, 3);
    // Printed as 0.549 of 0.737, that is 0.4046, cut to three figures.
    expect(Math.abs(cutOffLimit(1) - limits.cutOff)).toBeLessThan(0.001);
  });

  it('a greater range never lasts longer, across the bend and the cut-off', () => {
    const range = fc.double({ min: 1, max: 500, noNaN: true });
    fc.assert(
      fc.property(range, range, (a, b) => {
        const [small, great] = a < b ? [a, b] : [b, a];
        expect(weldCycles(great, CATEGORY)).toBeLessThanOrEqual(weldCycles(small, CATEGORY));
      }),
      { numRuns: 300, seed: 1993 },
    );
  });

  it('refuses what is no range', () => {
    expect(() => weldCycles(0, CATEGORY)).toThrow(RangeError);
    expect(() => weldCycles(10, 0)).toThrow(RangeError);
    expect(() => basquinCycles(0, 1, -0.1)).toThrow(RangeError);
  });
});

describe('damage sums', () => {
  it('F3: a block can be repeated 7,143 times', () => {
    expect(Math.round(repeatsToFailure(F3.blocks))).toBe(F3.repeats);
  });

  it('F4: a power law of amplitude', () => {
    const blocks = F4.blocks.map(({ amplitude, cycles }) => ({
      cycles,
      toFailure: basquinCycles(amplitude, F4.strength, F4.exponent),
    }));
    // Printed to the cycle; 200 MPa comes to 4,882,812.5.
    for (const [i, { toFailure }] of F4.blocks.entries()) {
      expect(Math.abs((blocks[i]?.toFailure ?? 0) - toFailure)).toBeLessThan(0.6);
    }
    expect(minerSum(blocks)).toBeCloseTo(F4.damage, 6);
  });

  it('nothing done is no damage, and less than nothing is refused', () => {
    expect(minerSum([])).toBe(0);
    expect(repeatsToFailure([])).toBe(Number.POSITIVE_INFINITY);
    expect(() => minerSum([{ cycles: -1, toFailure: 5 }])).toThrow(RangeError);
    expect(() => minerSum([{ cycles: 1, toFailure: 0 }])).toThrow(RangeError);
  });
});

describe('damage of a trip', () => {
  it('at the rating a mile is a mile for every part', () => {
    for (const part of ['bearing', 'weld', 'spring', 'road'] as const) {
      expect(ratedKm(km(80), 7_000, 7_000, part)).toBeCloseTo(80, 9);
    }
  });

  it('a tenth over costs a bearing 1.374 of its miles, which is the 0.7278 of its life', () => {
    expect(loadFactor(1.1, 1, 'bearing')).toBeCloseTo(1 / 0.7278, 3);
  });

  it('the steeper part suffers more from an overload and less from a light load', () => {
    const parts = Object.keys(DAMAGE_EXPONENT) as (keyof typeof DAMAGE_EXPONENT)[];
    const steepness = parts.toSorted((a, b) => DAMAGE_EXPONENT[a] - DAMAGE_EXPONENT[b]);
    const over = steepness.map((part) => loadFactor(1.2, 1, part));
    const under = steepness.map((part) => loadFactor(0.8, 1, part));
    expect(over).toEqual(over.toSorted((a, b) => a - b));
    expect(under).toEqual(under.toSorted((a, b) => b - a));
  });

  it('refuses a rating of nothing', () => {
    expect(() => loadFactor(1, 0, 'weld')).toThrow(RangeError);
    expect(() => loadFactor(-1, 1, 'weld')).toThrow(RangeError);
  });
});

describe('road equivalents', () => {
  it('R-1: one axle of 30 kip, as published', () => {
    expect(axleEquivalents(lbf(R1.kip * 1_000), 1)).toBeCloseTo(R1.factor, 3);
    expect(axleEquivalents(lbf(R1.kip * 1_000), 1)).toBeCloseTo(R1.published, 1);
    expect(fourthPowerEquivalents(lbf(R1.kip * 1_000))).toBeCloseTo(R1.fourthPower, 3);
  });

  it('R-2: one axle of 12 kip', () => {
    expect(axleEquivalents(lbf(R2.kip * 1_000), 1)).toBeCloseTo(R2.factor, 4);
    expect(fourthPowerEquivalents(lbf(R2.kip * 1_000))).toBeCloseTo(R2.fourthPower, 4);
  });

  it('the standard axle is one, whatever the pavement', () => {
    for (const structuralNumber of [1, 3, 6]) {
      expect(axleEquivalents(lbf(18_000), 1, { ...USUAL_PAVEMENT, structuralNumber })).toBeCloseTo(1, 12);
    }
  });

  it('a tandem group does less harm than the same on one axle', () => {
    expect(axleEquivalents(lbf(30_000), 2)).toBeLessThan(axleEquivalents(lbf(30_000), 1) / 5);
    expect(() => axleEquivalents(newtons(0), 1)).toThrow(RangeError);
  });
});
