import { describe, expect, test } from 'vitest';
import { coldFromWarm, warmVerdict } from '../../../src/rules/tire/warm-reading.js';
import { lb } from '../../../src/rules/units/mass.js';
import { psi, toPsi } from '../../../src/rules/units/pressure.js';
import { mph } from '../../../src/rules/units/speed.js';
import { lawCases } from '../law/law-cases.js';

describe('what a warm tire has cold', () => {
  test.each(lawCases('hot-'))('%s (49 CFR 393.75(i)(2))', (_id, { input, expected }) => {
    const found = coldFromWarm(psi(input.measuredPsi), lb(input.tireMaxLb), mph(input.avgMphLastHour));
    expect(toPsi(found.coldAtMostKpa)).toBeCloseTo(expected.coldPsi, 9);
    expect(found.basis).toBe('table');
  });

  test('a tire rated over 4,000 lb loses 15 psi, one of 4,000 only 5', () => {
    const cold = (rated: number) => toPsi(coldFromWarm(psi(125), lb(rated), mph(50)).coldAtMostKpa);
    expect([cold(4_001), cold(4_000)].map(Math.round)).toEqual([110, 120]);
  });

  test('the row runs from 41 to 55 mph; below it nothing is taken off, above it at least as much', () => {
    const at = (speed: number | null) => {
      const found = coldFromWarm(psi(84), lb(3_420), speed === null ? null : mph(speed));
      return [Math.round(toPsi(found.takenOffKpa)), found.basis];
    };
    expect([40.9, 41, 55, 60, null].map(at)).toEqual([
      [0, 'none'],
      [5, 'table'],
      [5, 'table'],
      [5, 'beyond-table'],
      [0, 'none'],
    ]);
  });

  test('never below none', () => {
    expect(coldFromWarm(psi(3), lb(3_420), mph(50)).coldAtMostKpa).toBe(0);
  });
});

describe('what a warm reading says', () => {
  const read = coldFromWarm(psi(84), lb(3_420), mph(50));

  test('a tire that is short even so is soft for certain', () => {
    expect(warmVerdict(read, psi(80))).toBe('soft');
  });

  // T9: 87 psi warm is a correct 80, not too much.
  test('one that is not is read again cold, and never let down', () => {
    expect(warmVerdict(read, psi(79))).toBe('read-it-cold');
    expect(warmVerdict(coldFromWarm(psi(87), lb(3_420), mph(50)), psi(80))).toBe('read-it-cold');
    expect(warmVerdict(coldFromWarm(psi(120), lb(3_420), mph(50)), psi(80))).toBe('read-it-cold');
  });
});
