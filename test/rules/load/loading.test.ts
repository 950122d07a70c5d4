import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { climbLoads } from '../../../src/rules/load/climb.js';
import { jackLoad } from '../../../src/rules/load/jack-load.js';
import {
  approachAngle,
  breakoverAngle,
  clearanceNeeded,
  frictionNeeded,
  rampAngle,
} from '../../../src/rules/load/ramp.js';
import { roomAheadOfPivot, tippingPoint } from '../../../src/rules/load/tilt.js';
import { lbf, newtons, toLbf } from '../../../src/rules/units/force.js';
import { inch, metres, toInch } from '../../../src/rules/units/length.js';
import { kg, lb } from '../../../src/rules/units/mass.js';
import { BREAKOVERS, G1, G4 } from '../reference/geometry-cases.js';
import { S11 } from '../reference/statics-cases.js';

const degrees = (radians: number) => (radians * 180) / Math.PI;

describe('ramps and crests', () => {
  test('G1: slope and the friction it asks for', () => {
    const angle = rampAngle(inch(G1.height), inch(G1.ramp));
    // Printed to a hundredth of a degree and a thousandth.
    expect(degrees(angle)).toBeCloseTo(G1.degrees, 2);
    expect(frictionNeeded(angle)).toBeCloseTo(G1.friction, 3);
  });

  test.each(BREAKOVERS)('$id: the sharpest crest a machine passes', ({ clearance, wheelbase, degrees: printed }) => {
    expect(degrees(breakoverAngle(inch(clearance), inch(wheelbase)))).toBeCloseTo(printed, 2);
  });

  test('G4: the clearance a crest asks for', () => {
    const needed = clearanceNeeded(inch(G4.wheelbase), (G4.crestDegrees * Math.PI) / 180);
    expect(toInch(needed)).toBeCloseTo(G4.clearance, 2);
  });

  test('a ramp shorter than it must be high is no ramp', () => {
    expect(() => rampAngle(inch(34), inch(30))).toThrow(RangeError);
    expect(() => rampAngle(inch(34), inch(0))).toThrow(RangeError);
    expect(() => breakoverAngle(inch(10), inch(0))).toThrow(RangeError);
    expect(() => approachAngle(inch(10), inch(0))).toThrow(RangeError);
  });

  test('the clearance needed at the sharpest crest is the clearance there is', () => {
    const length = fc.double({ min: 0.05, max: 4, noNaN: true });
    fc.assert(
      fc.property(length, length, (clearance, wheelbase) => {
        const crest = breakoverAngle(metres(clearance), metres(wheelbase));
        expect(clearanceNeeded(metres(wheelbase), crest)).toBeCloseTo(clearance, 9);
      }),
      { seed: 5, numRuns: 100 },
    );
  });

  test('an overhang of its own height meets a slope of 45 degrees', () => {
    expect(degrees(approachAngle(inch(18), inch(18)))).toBeCloseTo(45, 9);
  });
});

describe('a machine at the tail', () => {
  // S11: 8,000 lb at 252 in, the trailer 2,800 lb at 165, axles at 180.
  const climb = {
    emptyTongueN: lbf((2_800 * (180 - 165)) / 180),
    axleCentreM: inch(S11.axleCentre),
    machineKg: lb(8_000),
    entersAtM: inch(252),
  };

  test('S11: with nothing under the tail it lifts the truck', () => {
    const found = climbLoads({ ...climb, supportAtM: null });
    // Printed to a pound.
    expect(Math.round(toLbf(found.tongueN))).toBe(S11.tongue);
    expect(Math.round(toLbf(found.liftN))).toBe(-S11.tongue);
    expect(found.support).toBeNull();
  });

  test('S11 propped at the tail: at least what holds the hitch down, at most the whole machine', () => {
    const { support } = climbLoads({ ...climb, supportAtM: inch(252) });
    // 2,966.67 × 180 / (252 − 180) by hand.
    expect(toLbf(support?.leastN ?? newtons(0))).toBeCloseTo(7_416.67, 1);
    expect(toLbf(support?.mostN ?? newtons(0))).toBeCloseTo(8_000, 6);
  });

  test('a light machine near the axles lifts nothing, and no support is needed for the hitch', () => {
    const found = climbLoads({ ...climb, machineKg: lb(300), entersAtM: inch(200), supportAtM: inch(252) });
    expect(found.liftN).toBe(0);
    expect(found.support?.leastN).toBe(0);
  });

  test('with the least support the hitch carries just nothing', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 500, max: 20_000 }),
        fc.integer({ min: 190, max: 320 }),
        fc.integer({ min: 0, max: 60 }),
        (pounds, enters, behind) => {
          const supportAtM = inch(enters + behind);
          const found = climbLoads({ ...climb, machineKg: lb(pounds), entersAtM: inch(enters), supportAtM });
          const least = found.support?.leastN ?? 0;
          if (found.liftN === 0) return;
          // Moments about the axles' middle of hitch and support.
          const hitchNm = found.tongueN * climb.axleCentreM;
          expect(hitchNm + least * (supportAtM - climb.axleCentreM)).toBeCloseTo(0, 3);
          expect(found.support?.mostN).toBeGreaterThanOrEqual(least);
        },
      ),
      { seed: 13, numRuns: 150 },
    );
  });

  test('a support ahead of the axles is none', () => {
    expect(() => climbLoads({ ...climb, supportAtM: inch(170) })).toThrow(RangeError);
  });
});

describe('the jack of an unhitched trailer', () => {
  test('stands nearer to the axles than the coupler, so it carries more than the tongue weight', () => {
    // 1,200 lb at the coupler, axles 180 in behind, the jack 36 in behind: 1,200 × 180 / 144.
    expect(toLbf(jackLoad(lbf(1_200), inch(36), inch(180)))).toBeCloseTo(1_500, 6);
    expect(toLbf(jackLoad(lbf(1_200), inch(0), inch(180)))).toBeCloseTo(1_200, 6);
  });

  test('jack and axles together carry the trailer', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 10_000, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (tongue, jack) => {
          const axleCentre = metres(4.5);
          const wholeN = 40_000;
          const load = jackLoad(newtons(tongue), metres(jack), axleCentre);
          // Moments about the coupler, hitched and unhitched, are of the same weights.
          const hitched = (wholeN - tongue) * axleCentre;
          expect(load * jack + (wholeN - load) * axleCentre).toBeCloseTo(hitched, 3);
        },
      ),
      { seed: 17, numRuns: 100 },
    );
  });

  test('a jack behind the axles, or axles at the coupler, is refused', () => {
    expect(() => jackLoad(lbf(1), inch(180), inch(180))).toThrow(RangeError);
    expect(() => jackLoad(lbf(1), inch(-10), inch(0))).toThrow(RangeError);
  });
});

describe('a deck that tilts under the machine', () => {
  test('turns at its pivot, as far as can be told while its own weight is unknown', () => {
    expect(tippingPoint({ pivotM: inch(200), own: null }, lb(8_000))).toEqual({
      fromCouplerM: inch(200),
      deckWeightUnknown: true,
    });
  });

  test('its front part holds it down a little behind the pivot', () => {
    // 1,200 lb with its middle 40 in ahead of the pivot, under 8,000 lb: 48,000 / 8,000 = 6 in.
    const found = tippingPoint({ pivotM: inch(200), own: { massKg: lb(1_200), fromCouplerM: inch(160) } }, lb(8_000));
    expect(toInch(found.fromCouplerM)).toBeCloseTo(206, 9);
    expect(found.deckWeightUnknown).toBe(false);
  });

  test('a machine whose balance point cannot come ahead of it leaves the deck standing', () => {
    const tipping = { fromCouplerM: inch(200) };
    expect(toInch(roomAheadOfPivot(inch(60), inch(70), tipping))).toBeCloseTo(70, 9);
    expect(roomAheadOfPivot(inch(60), inch(150), tipping)).toBeLessThan(0);
  });

  test('nothing tips under no weight', () => {
    expect(() => tippingPoint({ pivotM: inch(200), own: null }, kg(0))).toThrow(RangeError);
  });
});
