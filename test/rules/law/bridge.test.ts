import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  axleRunLimit,
  axleRuns,
  bridgeFormula,
  bridgeLimit,
  INTERSTATE_GROSS_KG,
  twoTandemsLimit,
} from '../../../src/rules/law/bridge.js';
import { feet, inch } from '../../../src/rules/units/length.js';
import { kg, toLb } from '../../../src/rules/units/mass.js';
import { lawCases } from './law-cases.js';

const pounds = (mass: Parameters<typeof toLb>[0]) => Math.round(toLb(mass));

describe('the bridge formula of 23 CFR 658.17(e)', () => {
  test.each(lawCases('bridge-L'))('%s', (_id, { input, expected }) => {
    // Printed to a tenth of a pound.
    expect(toLb(bridgeFormula(feet(input.L_ft), input.N))).toBeCloseTo(expected.raw, 1);
    expect(pounds(bridgeLimit(feet(input.L_ft), input.N))).toBe(expected.W);
  });

  test.each(lawCases('bridge-tie'))('%s: an exact half goes down', (_id, { input, expected }) => {
    expect(pounds(bridgeFormula(feet(input.L_ft), input.N))).toBe(expected.raw);
    expect(pounds(bridgeLimit(feet(input.L_ft), input.N))).toBe(expected.W);
  });

  // FHWA, "Bridge Formula Weights", figure 2: at 97 in two axles may carry 38,000 lb and three 42,000.
  test('97 in apart, two axles may carry 38,000 lb and three 42,000', () => {
    expect([2, 3].map((axles) => axleRunLimit(inch(97), axles))).toEqual([
      { rule: 'formula', limitKg: expect.closeTo(38_000 * 0.45359237, 6) },
      { rule: 'formula', limitKg: expect.closeTo(42_000 * 0.45359237, 6) },
    ]);
  });

  test('an axle more, or a foot more, never allows less', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 60, noNaN: true }), fc.integer({ min: 2, max: 8 }), (length, axles) => {
        const here = bridgeLimit(feet(length), axles);
        expect(bridgeLimit(feet(length + 1), axles)).toBeGreaterThanOrEqual(here);
        // Within 658.17's own range of runs: a further axle in the same length.
        if (length <= 24) expect(bridgeLimit(feet(length), axles + 1)).toBeGreaterThanOrEqual(here);
      }),
      { seed: 658, numRuns: 300 },
    );
  });

  test('one axle, or a length below nothing, is no question for it', () => {
    expect(() => bridgeFormula(feet(4), 1)).toThrow(RangeError);
    expect(() => bridgeFormula(feet(-1), 2)).toThrow(RangeError);
    expect(() => bridgeFormula(feet(Number.NaN), 2)).toThrow(RangeError);
  });
});

describe('axles that stand close', () => {
  test.each(lawCases('axle-'))('%s', (_id, { input, expected }) => {
    const { rule, limitKg } = axleRunLimit(inch(input.spacingIn), input.axles ?? 2);
    expect([rule, pounds(limitKg)]).toEqual([expected.group, expected.limitLb]);
  });

  test('40 in is still a single axle, a hair more a tandem; so are 96 in', () => {
    expect([40, 40.1, 96, 96.1].map((spacing) => axleRunLimit(inch(spacing), 2).rule)).toEqual([
      'single',
      'tandem',
      'tandem',
      'formula',
    ]);
  });

  test('no run may carry more than the whole', () => {
    expect(axleRunLimit(feet(70), 6).limitKg).toBe(INTERSTATE_GROSS_KG);
  });
});

describe('two tandems', () => {
  test.each(lawCases('bridge-36'))('%s', (_id, { input, expected }) => {
    const allowed = twoTandemsLimit(feet(input.firstToLastAxleFt)) ?? kg(0);
    expect(pounds(allowed)).toBe(expected.allowed);
    const carried = input.axleLb.reduce((sum: number, axle: number) => sum + axle, 0);
    expect(carried <= pounds(allowed)).toBe(expected.ok);
    // Without the exception the formula alone would give 66,000.
    expect(pounds(bridgeLimit(feet(36), 4))).toBe(66_000);
  });

  test('an inch short of 36 ft only the formula holds', () => {
    expect(twoTandemsLimit(inch(36 * 12 - 1))).toBeNull();
  });
});

describe('the runs of one trailer', () => {
  test('two axles 34 in apart: each a single axle, and both together one', () => {
    expect(axleRuns([inch(180), inch(214)])?.map(({ first, last, rule }) => [first, last, rule])).toEqual([
      [0, 0, 'single'],
      [0, 1, 'single'],
      [1, 1, 'single'],
    ]);
  });

  test('three axles 68 in from first to last: a tandem, with two single pairs inside', () => {
    const runs = axleRuns([inch(200), inch(234), inch(268)]);
    expect(runs?.find((run) => run.first === 0 && run.last === 2)).toMatchObject({ rule: 'tandem' });
    expect(runs?.filter((run) => run.rule === 'single')).toHaveLength(5);
  });

  test('one axle needs no place; two need both, in order', () => {
    expect(axleRuns([null])).toMatchObject([{ first: 0, last: 0, rule: 'single' }]);
    expect([axleRuns([inch(180), null]), axleRuns([inch(214), inch(180)])]).toEqual([null, null]);
    expect(axleRuns([])).toEqual([]);
  });
});
