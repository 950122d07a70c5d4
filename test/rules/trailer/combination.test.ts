import { describe, expect, test } from 'vitest';
import { combination } from '../../../src/rules/trailer/combination.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import reference from '../reference/weights-and-ratings.json' with { type: 'json' };

const mass = (pounds: number | null | undefined) => (pounds === null || pounds === undefined ? null : lb(pounds));

function together(
  truck: number | null,
  trailer: number | null,
  more: { gross?: number; gcwr?: number; truckActual?: number } = {},
) {
  return combination({
    towVehicle: { gvwrKg: mass(truck), massKg: mass(more.truckActual), gcwrKg: mass(more.gcwr) },
    trailerGvwrKg: mass(trailer),
    trailerGrossKg: mass(more.gross),
  });
}

describe('ratings or actual weights, whichever is greater, against the federal thresholds', () => {
  const published = reference.cases.filter((one) => one.id.startsWith('wt-'));

  test.each(published.map((one) => [one.id, one] as const))('%s', (_id, { input, expected }) => {
    const found = combination({
      towVehicle: { gvwrKg: mass(input.truckGvwr), massKg: mass(input.truckActual), gcwrKg: null },
      trailerGvwrKg: mass(input.trailerGvwr),
      trailerGrossKg: mass(input.trailerActual),
    });
    expect([found.commercial, found.cdl === 'A']).toEqual([expected.cmv, expected.cdlGroupA]);
  });

  test('every published case was read', () => {
    expect(published).toHaveLength(8);
  });
});

test('commercial rules begin at 10,001 lb, not above it', () => {
  expect([together(6_501, 3_500).commercial, together(6_500, 3_500).commercial]).toEqual([true, false]);
});

describe('the licence line', () => {
  test('a truck rated 11,200 with a 14,000 lb trailer is 25,200: commercial, but no licence by weight', () => {
    const found = together(11_200, 14_000);
    expect([Math.round(toLb(found.combinationKg ?? lb(0))), found.commercial, found.cdl]).toEqual([
      25_200,
      true,
      'none',
    ]);
  });

  test('with a 15,400 lb trailer it is 26,600: group A, even empty', () => {
    const found = together(11_200, 15_400, { gross: 3_900 });
    expect([Math.round(toLb(found.combinationKg ?? lb(0))), found.cdl]).toEqual([26_600, 'A']);
  });

  test('a load above the rating counts as it weighs', () => {
    expect(together(11_200, 14_000, { gross: 14_801 }).cdl).toBe('A');
    expect(together(11_200, 14_000, { gross: 14_800 }).cdl).toBe('none');
  });

  test('the maker’s rating of the combination counts where it is the greater', () => {
    expect(together(11_200, 14_000, { gcwr: 30_000 }).cdl).toBe('A');
    expect(together(11_200, 14_000, { gcwr: 20_000 }).cdl).toBe('none');
    expect(together(11_200, 9_990, { gcwr: 30_000 }).cdl).toBe('none');
  });

  test('a truck of 26,001 lb alone is group B with a small trailer and A with a large one', () => {
    expect([together(26_001, 10_000).cdl, together(26_001, 10_001).cdl, together(26_000, 10_000).cdl]).toEqual([
      'B',
      'A',
      'none',
    ]);
  });
});

describe('while a weight is unknown', () => {
  test('an answer stays open unless the known part settles it', () => {
    expect(together(null, 9_000)).toMatchObject({ combinationKg: null, commercial: null, cdl: null });
    expect(together(null, 14_000)).toMatchObject({ combinationKg: null, commercial: true, cdl: null });
    expect(together(11_200, null)).toMatchObject({ commercial: true, cdl: null });
    expect(together(null, 26_001)).toMatchObject({ cdl: 'A' });
  });

  test('no tow vehicle, no combination', () => {
    const alone = combination({ towVehicle: null, trailerGvwrKg: lb(9_000), trailerGrossKg: null });
    expect(alone).toMatchObject({ combinationKg: null, commercial: null, cdl: null });
  });
});
