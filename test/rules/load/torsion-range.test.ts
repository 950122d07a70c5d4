import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { freeOffset, type SpringAxle, springLoads, springsUnder } from '../../../src/rules/load/springs.js';
import {
  SOFTEST_N_PER_M,
  STIFFEST_N_PER_M,
  splitByGroup,
  splitByMoment,
  type Torsion,
} from '../../../src/rules/load/torsion.js';
import { newtons } from '../../../src/rules/units/force.js';
import { metres } from '../../../src/rules/units/length.js';

const SEED = { seed: 20_251_128, numRuns: 300 };

const places = fc
  .tuple(fc.double({ min: 2.5, max: 7, noNaN: true }), fc.double({ min: 0.7, max: 1.3, noNaN: true }))
  .chain(([first, gap]) =>
    fc.integer({ min: 2, max: 4 }).map((count) => Array.from({ length: count }, (_, at) => metres(first + at * gap))),
  );
const rate = fc.double({ min: SOFTEST_N_PER_M, max: STIFFEST_N_PER_M, noNaN: true });
const moment = fc.double({ min: 10_000, max: 600_000, noNaN: true });
const raised = fc.double({ min: -0.5, max: 0.5, noNaN: true }).map(metres);

const springsAt = (placesM: readonly number[], rateNPerM: number): readonly SpringAxle[] =>
  placesM.map((at) => ({ fromCouplerM: metres(at), rateNPerM }));
const unknownRate = (placesM: readonly number[]): Torsion => ({
  placesM: placesM.map(metres),
  rates: {
    known: false,
    softest: springsAt(placesM, SOFTEST_N_PER_M),
    stiffest: springsAt(placesM, STIFFEST_N_PER_M),
  },
  levelHeightM: null,
  ballHeightM: null,
});

describe('whatever the stiffness is, between the softest and the stiffest, each load lies in its range', () => {
  test('by moment: axles, their sum and the tongue', () => {
    fc.assert(
      fc.property(places, rate, moment, raised, (placesM, rateNPerM, momentNm, raisedM) => {
        const on = { weightN: newtons((momentNm / (placesM[0] as number)) * 1.1), momentNm };
        const springs = springsAt(placesM, rateNPerM);
        const found = springLoads(springs, on, freeOffset(springs, momentNm), { raisedM, groundM: null });
        const split = splitByMoment(unknownRate(placesM), on, raisedM);
        const noise = on.weightN * 1e-9;
        const within = (force: number, range: { leastN: number; mostN: number } | undefined) => {
          expect(force).toBeGreaterThanOrEqual((range?.leastN ?? Number.NaN) - noise);
          expect(force).toBeLessThanOrEqual((range?.mostN ?? Number.NaN) + noise);
        };
        for (const [index, force] of found.axleN.entries()) within(force, split?.axleN[index]);
        within(found.onAxlesN, split?.groupN);
        within(found.tongueN, split?.tongueN);
      }),
      SEED,
    );
  });

  test('by the weighed sum', () => {
    fc.assert(
      fc.property(places, rate, moment, raised, (placesM, rateNPerM, momentNm, raisedM) => {
        const groupN = newtons(momentNm / (placesM[0] as number));
        const found = springsUnder(springsAt(placesM, rateNPerM), groupN, raisedM);
        const split = splitByGroup(unknownRate(placesM), placesM.length, groupN, raisedM);
        for (const [index, force] of found.axleN.entries()) {
          expect(force).toBeGreaterThanOrEqual((split.axleN[index]?.leastN ?? Number.NaN) - groupN * 1e-9);
          expect(force).toBeLessThanOrEqual((split.axleN[index]?.mostN ?? Number.NaN) + groupN * 1e-9);
        }
      }),
      SEED,
    );
  });

  test('and whatever the height: no narrower than what any height and stiffness brings', () => {
    fc.assert(
      fc.property(places, rate, moment, raised, (placesM, rateNPerM, momentNm, raisedM) => {
        const on = { weightN: newtons(momentNm), momentNm };
        const springs = springsAt(placesM, rateNPerM);
        const found = springLoads(springs, on, freeOffset(springs, momentNm), { raisedM, groundM: null });
        const split = splitByMoment({ ...unknownRate(placesM), rates: null }, on, null);
        const noise = momentNm * 1e-9;
        for (const [index, force] of found.axleN.entries()) {
          expect(force).toBeLessThanOrEqual((split?.axleN[index]?.mostN ?? Number.NaN) + noise);
        }
        expect(found.onAxlesN).toBeLessThanOrEqual((split?.groupN.mostN ?? Number.NaN) + noise);
        expect(found.onAxlesN).toBeGreaterThanOrEqual((split?.groupN.leastN ?? Number.NaN) - noise);
      }),
      SEED,
    );
  });

  test('a load that does not press the axles down is not split', () => {
    expect(splitByMoment(unknownRate([4, 5]), { weightN: newtons(1), momentNm: 0 }, metres(0))).toBeNull();
  });
});
