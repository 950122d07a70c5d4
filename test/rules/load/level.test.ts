import { describe, expect, test } from 'vitest';
import { carriedBy } from '../../../src/rules/load/carried.js';
import { reliefOf, tongueLever, whenLevel } from '../../../src/rules/load/level.js';
import { loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { lbf, newtons, toLbf } from '../../../src/rules/units/force.js';
import { inch, metres, toInch } from '../../../src/rules/units/length.js';
import { S5_LIGHTER, S5_MOVED } from '../reference/torsion-cases.js';
import { axle, build, load, ticket, tires } from '../sample-facts.js';

const springRateNPerM = lbf(2_000) / inch(1);
const tandem = build({
  suspension: 'torsion',
  axles: [163.5, 196.5].map((at, index) => axle(index + 1, 7_000, { fromCouplerM: inch(at), springRateNPerM })),
  hitch: { ...build().hitch, levelHeightM: inch(20) },
});
const limitsOf = (trailer = tandem) =>
  loadLimits({ build: trailer, tires: tires(2), coldPressures: new Map(), towVehicle: null });

/** S5, as a scale would have found it. */
const S5 = { onAxles: [4_687.9, 5_778.8], tongue: 1_333.3 };

describe('a nose brought down', () => {
  test('from S5 on the scale it comes to S4: 5,283.3 each and 1,233.3 on the tongue', () => {
    const scale = ticket({ gross: 11_800, tongue: S5.tongue, axles: S5.onAxles });
    const found = whenLevel(limitsOf(), carriedBy(limitsOf(), load({ scale })));
    // The ticket is S5 to a tenth of a pound.
    expect(found?.axleN.map((one) => Math.round(toLbf(one)))).toEqual([5_283, 5_283]);
    expect(Math.round(toLbf(found?.tongueN ?? newtons(0)))).toBe(1_233);
    expect(toInch(found?.hitchHeightM ?? metres(0))).toBeCloseTo(20, 9);
    expect(found?.ratesAssumed).toBe(false);
  });

  test('it is not said for springs that share by themselves, nor without the places of the axles', () => {
    const carried = load({ scale: ticket({ gross: 11_800, axles: S5.onAxles }) });
    for (const trailer of [build(), build({ suspension: 'torsion' })]) {
      expect(whenLevel(limitsOf(trailer), carriedBy(limitsOf(trailer), carried))).toBeNull();
    }
  });
});

describe('the springs as they are', () => {
  test('a load put 6 in forward adds to the tongue what its lever says', () => {
    const leverIn = toInch(tongueLever(limitsOf()) ?? metres(0));
    // Difference of two sums printed to a tenth of a pound.
    expect((9_000 * S5_MOVED.forward) / leverIn).toBeCloseTo(S5_MOVED.tongue - S5.tongue, 0);
  });

  test('500 lb taken off relieve each axle by its own part', () => {
    for (const [index, before] of S5.onAxles.entries()) {
      const relief = reliefOf(limitsOf(), index, inch(160)) ?? 0;
      expect(S5_LIGHTER.off * relief).toBeCloseTo(before - (S5_LIGHTER.onAxles[index] ?? 0), 0);
    }
  });

  test('springs that share by themselves turn about the middle of the axles', () => {
    const sharing = { ...tandem, suspension: 'slipper-spring' as const };
    expect(toInch(tongueLever(limitsOf(sharing)) ?? metres(0))).toBeCloseTo(180, 9);
    expect(reliefOf(limitsOf(sharing), 0, inch(160))).toBeNull();
  });

  test('unlike axles of unknown stiffness say nothing', () => {
    const unlike = { ...tandem, axles: [...tandem.axles.slice(0, 1), axle(2, 5_200, { fromCouplerM: inch(196.5) })] };
    expect(tongueLever(limitsOf(unlike))).toBeNull();
  });
});
