import { describe, expect, test } from 'vitest';
import { DEFAULT_POLICY } from '../../../src/rules/facts/yard-policy.js';
import { checkLoad } from '../../../src/rules/load/load-check.js';
import { loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { toLbf } from '../../../src/rules/units/force.js';
import { inch } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { psi } from '../../../src/rules/units/pressure.js';
import { axle, build, item, load, ticket, tire } from '../sample-facts.js';

const deckOver = (places: readonly number[], rating = 15_000) =>
  build({
    plate: { gvwrKg: lb(60_000), coldPressureKpa: null },
    hitch: { ...build().hitch, kind: 'gooseneck', couplerRatingKg: lb(60_000) },
    axles: places.map((at, place) => axle(place + 1, rating, { fromCouplerM: inch(at) })),
  });

function legal(places: readonly number[], axles: readonly number[], tongue: number, rating = 15_000) {
  const gross = axles.reduce((sum, one) => sum + one, tongue);
  const limits = loadLimits({ build: deckOver(places, rating), tires: [], coldPressures: new Map(), towVehicle: null });
  const weighed = load({ cargo: [item('dozer', gross - 3_900)], scale: ticket({ gross, tongue, axles }) });
  return checkLoad(limits, weighed, DEFAULT_POLICY)
    .comparisons.filter((one) => one.limit.kind === 'legal-axles')
    .map((one) => [one.limit.subject, Math.round(toLbf(one.loadN)), Math.round(toLbf(one.marginN)), one.standing]);
}

describe('axle weights against the law', () => {
  test('23,000 lb on two axles 38 in apart are 3,000 over: they count as one single axle', () => {
    expect(legal([300, 338], [11_500, 11_500], 5_000)).toEqual([['1-2', 23_000, -3_000, 'over']]);
  });

  test('49 in apart their own ratings are the lesser, so the law is not asked', () => {
    expect(legal([300, 349], [11_500, 11_500], 5_000)).toEqual([]);
  });

  test('three heavy axles: each pair of close ones is a single axle, all three a tandem', () => {
    expect(legal([300, 336, 372], [9_000, 12_000, 11_000], 6_000)).toEqual([
      ['1-2', 21_000, -1_000, 'over'],
      ['1-3', 32_000, 2_000, 'inside'],
      ['2-3', 23_000, -3_000, 'over'],
    ]);
  });

  test('while places are unknown each axle has its own 20,000 lb', () => {
    const axles = [axle(1, 22_500), axle(2, 22_500)];
    const limits = loadLimits({ build: build({ axles }), tires: [], coldPressures: new Map(), towVehicle: null });
    expect(limits.legal.map(({ limit }) => [limit.subject, Math.round(toLbf(limit.limitN))])).toEqual([
      ['1', 20_000],
      ['2', 20_000],
    ]);
  });
});

test('a dual pair is held to its softer tire', () => {
  const marks = { size: 'ST235/80R16', maxLoadDualKg: lb(3_000), maxColdPressureKpa: psi(80) };
  const wheels = ['1LO', '1LI', '1RI', '1RO'].map((position) => tire(position, marks));
  const limitsAt = (pressures: readonly (readonly [string, number])[]) =>
    loadLimits({
      build: build({ axles: [axle(1, 10_000, { wheelsPerSide: 2 })] }),
      tires: wheels,
      coldPressures: new Map(pressures.map(([position, pounds]) => [position, psi(pounds)])),
      towVehicle: null,
    });
  const full = limitsAt([
    ['1LO', 80],
    ['1LI', 80],
    ['1RI', 80],
    ['1RO', 80],
  ]);
  expect(full.axles[0]?.tires.map((limit) => [limit.subject, Math.round(toLbf(limit.limitN))])).toEqual([
    ['1LO', 3_000],
    ['1LI', 3_000],
    ['1RI', 3_000],
    ['1RO', 3_000],
  ]);
  // No row is published for duals, so a soft tire's capacity is unknown, and so is its mate's.
  const soft = limitsAt([
    ['1LO', 80],
    ['1LI', 50],
    ['1RI', 80],
    ['1RO', 80],
  ]);
  expect(soft.axles[0]?.tires.map((limit) => limit.subject)).toEqual(['1RI', '1RO']);
  expect(soft.ratingLacks).toContainEqual({ lacks: 'tire-table-row', stops: 'tire-check', subject: '1LO,1LI' });
});
