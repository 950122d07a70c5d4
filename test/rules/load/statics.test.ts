import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  axleGroupCentre,
  axleGroupLoad,
  forwardMove,
  type PlacedWeight,
  placeForTongueShare,
  tongueChange,
  tongueWeight,
} from '../../../src/rules/load/statics.js';
import { lbf, newtons, toLbf, weightOf } from '../../../src/rules/units/force.js';
import { inch, metres, toInch } from '../../../src/rules/units/length.js';
import { kg, lb } from '../../../src/rules/units/mass.js';
import { S1, S2, S3, S11 } from '../reference/statics-cases.js';

function placed(weights: readonly { pounds: number; at: number }[]): PlacedWeight[] {
  return weights.map(({ pounds, at }) => ({ massKg: lb(pounds), fromCouplerM: inch(at) }));
}

const centre = inch(S1.axleCentre);

describe('a load ahead of the axles rests partly on the tongue', () => {
  test('S1: what the tongue and the axles carry', () => {
    const tongue = tongueWeight(placed(S1.weights), centre);
    // One decimal is all the case prints.
    expect(toLbf(tongue)).toBeCloseTo(S1.tongue, 1);
    expect(toLbf(axleGroupLoad(placed(S1.weights), centre))).toBeCloseTo(S1.onAxles, 1);
    expect(toLbf(tongue) / 11_800).toBeCloseTo(S1.share, 4);
  });

  test('S2: where the load must sit for 12 % on the tongue', () => {
    const [empty, load] = placed(S1.weights) as [PlacedWeight, PlacedWeight];
    const place = placeForTongueShare(S2.share, load.massKg, [empty], centre);
    // Printed to a hundredth of an inch.
    expect(toInch(place ?? metres(0))).toBeCloseTo(S2.at, 2);
  });

  test('S3: six inches forward put 300 lb more on it', () => {
    expect(toLbf(tongueChange(lb(9_000), inch(S3.forward), centre))).toBeCloseTo(S3.tongueGains, 6);
  });

  test('S11: a machine on the tail lifts the tow vehicle', () => {
    // Printed to a pound.
    expect(Math.round(toLbf(tongueWeight(placed(S11.weights), inch(S11.axleCentre))))).toBe(S11.tongue);
  });
});

describe('how far to move a load', () => {
  // 11,000 lb gross with 640 on the tongue, 7,400 of it the machine, axles 192 in behind the coupler.
  const move = (target: number) => toInch(forwardMove(lb(7_400), lbf(640), lbf(target), inch(192)));

  test('a tail-heavy machine goes 12 in forward for 10 % and 14.5 in for what the hitch takes', () => {
    // Said to half an inch; the sums are 11.94 and 14.53.
    expect(move(1_100)).toBeCloseTo(11.935, 3);
    expect(move(1_200)).toBeCloseTo(14.53, 2);
  });

  test('a tongue already too heavy asks for a move rearward', () => {
    expect(move(600)).toBeLessThan(0);
  });

  test('nothing that weighs nothing can help', () => {
    expect(() => forwardMove(kg(0), lbf(0), lbf(1), centre)).toThrow(RangeError);
    expect(placeForTongueShare(0.1, kg(0), [], centre)).toBeNull();
  });
});

describe('the middle of an axle group', () => {
  test('is the mean of its axles', () => {
    expect(axleGroupCentre([metres(4), metres(5), metres(6)])).toBe(5);
  });

  test('is unknown while one axle has no place, or there is none', () => {
    expect(axleGroupCentre([metres(4), null])).toBeNull();
    expect(axleGroupCentre([])).toBeNull();
  });

  test('cannot lie at the coupler or ahead of it', () => {
    expect(() => tongueWeight(placed(S1.weights), metres(0))).toThrow(RangeError);
    expect(axleGroupCentre([metres(0)])).toBeNull();
    expect(() => tongueChange(kg(1), metres(1), metres(-1))).toThrow(RangeError);
  });
});

const mass = fc.double({ min: 1, max: 20_000, noNaN: true }).map(kg);
const place = fc.double({ min: -1, max: 15, noNaN: true }).map(metres);
const weights = fc.array(fc.record({ massKg: mass, fromCouplerM: place }), { minLength: 1, maxLength: 6 });
const middle = fc.double({ min: 1, max: 12, noNaN: true }).map(metres);

describe('for any weights in any places', () => {
  test('tongue and axles together carry all of it, and their moments balance', () => {
    fc.assert(
      fc.property(weights, middle, (all, axleCentre) => {
        const tongue = tongueWeight(all, axleCentre);
        const axles = axleGroupLoad(all, axleCentre);
        const total = weightOf(kg(all.reduce((sum, one) => sum + one.massKg, 0)));
        const moment = all.reduce((sum, one) => sum + weightOf(one.massKg) * one.fromCouplerM, 0);
        // Sums of at most six terms of 1e5 N; a millionth of the whole is far above rounding.
        expect(Math.abs(tongue + axles - total)).toBeLessThan(total * 1e-6);
        expect(Math.abs(axles * axleCentre - moment)).toBeLessThan(total * 15 * 1e-6);
      }),
    );
  });

  test('moving a weight forward never lightens the tongue', () => {
    fc.assert(
      fc.property(weights, middle, fc.double({ min: 0, max: 5, noNaN: true }), (all, axleCentre, forward) => {
        const [first, ...rest] = all as [PlacedWeight, ...PlacedWeight[]];
        const moved = { massKg: first.massKg, fromCouplerM: metres(first.fromCouplerM - forward) };
        const before = tongueWeight(all, axleCentre);
        const after = tongueWeight([moved, ...rest], axleCentre);
        expect(after).toBeGreaterThanOrEqual(before - Math.abs(before) * 1e-9);
        // And by just what the rule for a move says.
        expect(after - before).toBeCloseTo(tongueChange(first.massKg, metres(forward), axleCentre), 3);
      }),
    );
  });

  test('a move worked out for a target reaches it', () => {
    fc.assert(
      fc.property(mass, middle, fc.double({ min: -5_000, max: 20_000, noNaN: true }), (massKg, axleCentre, target) => {
        const forward = forwardMove(massKg, newtons(1_000), newtons(target), axleCentre);
        expect(1_000 + tongueChange(massKg, forward, axleCentre)).toBeCloseTo(target, 3);
      }),
    );
  });
});
