import { describe, expect, test } from 'vitest';
import { equalizerTakesUp, liftOff, overRoad } from '../../../src/rules/load/road.js';
import { resultant } from '../../../src/rules/load/statics.js';
import { lbf, toLbf } from '../../../src/rules/units/force.js';
import { inch, metres, toInch } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { S8_LIFTS_AT, SPRINGS } from '../reference/statics-cases.js';
import { LIFTS, ROADS } from '../reference/torsion-cases.js';

function standing(triple: boolean) {
  const found = SPRINGS.find(({ id }) => id === (triple ? 'S9 level' : 'S4 level'));
  if (found === undefined) throw new Error('no such case');
  return {
    on: resultant(found.weights.map(({ pounds, at }) => ({ massKg: lb(pounds), fromCouplerM: inch(at) }))),
    springs: found.axles.map((at) => ({ fromCouplerM: inch(at), rateNPerM: lbf(found.rate) / inch(1) })),
  };
}

const LEVEL = metres(0);

describe('torsion axles over a bump or a dip', () => {
  test.each(ROADS.map((one) => [one.id, one] as const))('%s: the most that one carries', (_id, one) => {
    const { on, springs } = standing(one.triple);
    const found = overRoad(springs, on, LEVEL, inch(one.height));
    expect(toLbf(found.mostN)).toBeCloseTo(one.most, 1);
    expect(found).toMatchObject({ carriedBy: one.carriedBy, under: one.under, lifted: false });
  });

  test.each(LIFTS.map((one) => [one.id, one] as const))('%s: when one leaves the ground', (_id, one) => {
    const { on, springs } = standing(one.triple);
    const found = liftOff(springs, on, LEVEL, one.way);
    expect(found).toMatchObject({ under: one.under, lifts: one.lifts });
    // Printed to a hundredth of an inch, found there by halving to a twentieth of a pound.
    expect(Math.abs(toInch(found?.byM ?? LEVEL) - one.at)).toBeLessThan(0.0051);
  });

  test('S8: 5.373 in under the front lift the rear, and at 6 in one axle carries all', () => {
    const { on, springs } = standing(false);
    expect(toInch(liftOff(springs, on, LEVEL, 'bump')?.byM ?? LEVEL)).toBeCloseTo(S8_LIFTS_AT, 3);
    const over = overRoad(springs, on, LEVEL, inch(6));
    expect(toLbf(over.mostN)).toBeCloseTo(11_633, 1);
    expect(over).toMatchObject({ carriedBy: 1, under: 1, lifted: true });
  });

  test('nose high, less of a bump lifts the front when it is the rear that climbs', () => {
    const { on, springs } = standing(false);
    const level = liftOff(springs, on, LEVEL, 'bump')?.byM ?? LEVEL;
    expect(liftOff(springs, on, inch(3), 'bump')).toMatchObject({ under: 2, lifts: 1 });
    expect(liftOff(springs, on, inch(3), 'bump')?.byM).toBeLessThan(level);
  });

  test('a single axle lifts no other', () => {
    const { on, springs } = standing(false);
    expect(liftOff(springs.slice(0, 1), on, LEVEL, 'bump')).toBeNull();
  });
});

describe('what an equalizer has to take up', () => {
  const places = [163.5, 196.5].map(inch);

  test('a nose 3 in high over 180 in to the middle tilts 33 in of axle spread by 0.55 in', () => {
    // 3 × 33 / 180.
    expect(toInch(equalizerTakesUp(places, inch(3), [LEVEL, LEVEL]))).toBeCloseTo(0.55, 9);
  });

  test('a bump under one axle is all of it, less what the nose gives back', () => {
    expect(toInch(equalizerTakesUp(places, LEVEL, [inch(2), LEVEL]))).toBeCloseTo(2, 9);
    expect(toInch(equalizerTakesUp(places, inch(3), [inch(2), LEVEL]))).toBeCloseTo(1.45, 9);
  });

  test('of three axles the neighbours furthest apart count; one axle has none', () => {
    const three = [210, 244, 278].map(inch);
    expect(toInch(equalizerTakesUp(three, LEVEL, [LEVEL, inch(-3), inch(1)]))).toBeCloseTo(4, 9);
    expect(equalizerTakesUp([inch(180)], inch(3), [LEVEL])).toBe(0);
  });
});
