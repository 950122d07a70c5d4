import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aloneOn, freeOffset, type SpringAxle, type Stance, springLoads } from '../../../src/rules/load/springs.js';
import {
  type PlacedWeight,
  type Resultant,
  resultant,
  rollMoment,
  wheelPair,
} from '../../../src/rules/load/statics.js';
import { lbf, newtons, toLbf, weightOf } from '../../../src/rules/units/force.js';
import { inch, type Metres, metres, toInch } from '../../../src/rules/units/length.js';
import { kg, lb } from '../../../src/rules/units/mass.js';
import { S4_OFFSET, S12, SPRINGS } from '../reference/statics-cases.js';

type Case = (typeof SPRINGS)[number];

const perInch = (pounds: number) => lbf(pounds) / inch(1);

function trailer({ weights, axles, rate }: Pick<Case, 'weights' | 'axles' | 'rate'>) {
  const on = resultant(weights.map(({ pounds, at }) => ({ massKg: lb(pounds), fromCouplerM: inch(at) })));
  const springs = axles.map((at) => ({ fromCouplerM: inch(at), rateNPerM: perInch(rate) }));
  return { on, springs, offsetM: freeOffset(springs, on.momentNm) };
}

const stance = (raised: number, ground: readonly number[] | null): Stance => ({
  raisedM: inch(raised),
  groundM: ground?.map(inch) ?? null,
});

describe('independent axles', () => {
  test.each(SPRINGS.map((one) => [one.id, one] as const))('%s', (_id, one) => {
    const { on, springs, offsetM } = trailer(one);
    const found = springLoads(springs, on, offsetM, stance(one.raised, one.ground));
    // Printed to a tenth of a pound.
    expect(found.axleN.map(toLbf)).toEqual(one.onAxles.map((pounds) => expect.closeTo(pounds, 1)));
    expect(toLbf(found.tongueN)).toBeCloseTo(one.tongue, 1);
    expect(found.lifted).toBe(one.onAxles.includes(0));
  });

  test('S4: level they are pressed 2.64167 in', () => {
    const { offsetM } = trailer(SPRINGS[0] as Case);
    expect(toInch(offsetM)).toBeCloseTo(S4_OFFSET, 5);
  });

  test('an axle alone on the ground carries the whole moment: S8', () => {
    const { on, springs } = trailer(SPRINGS[0] as Case);
    expect(toLbf(aloneOn(springs[0] as SpringAxle, on.momentNm))).toBeCloseTo(11_633, 1);
  });

  test('what cannot be solved is refused', () => {
    const axle = { fromCouplerM: metres(4), rateNPerM: 1 };
    expect(() => freeOffset([axle], 0)).toThrow(RangeError);
    expect(() => freeOffset([{ ...axle, rateNPerM: 0 }], 1)).toThrow(RangeError);
    expect(() => freeOffset([{ ...axle, fromCouplerM: metres(0) }], 1)).toThrow(RangeError);
    expect(() => freeOffset([], 1)).toThrow(RangeError);
  });
});

test('S12: four inches off centre on an 80 in track shift 250 lb from one wheel to the other', () => {
  const off: PlacedWeight = { massKg: lb(S12.onAxle), fromCouplerM: metres(1), offCentreM: inch(S12.offCentre) };
  const wheels = wheelPair(lbf(S12.onAxle), rollMoment([off]), inch(S12.track));
  expect(toLbf(wheels.rightN)).toBeCloseTo(S12.heavier, 6);
  expect(toLbf(wheels.leftN)).toBeCloseTo(S12.lighter, 6);
  expect(() => wheelPair(lbf(1), 0, metres(0))).toThrow(RangeError);
});

const rate = fc.double({ min: 50_000, max: 600_000, noNaN: true });
const height = fc.double({ min: -0.2, max: 0.2, noNaN: true }).map(metres);
const weights = fc.array(
  fc.record({
    massKg: fc.double({ min: 100, max: 5_000, noNaN: true }).map(kg),
    fromCouplerM: fc.double({ min: 1, max: 8, noNaN: true }).map(metres),
  }),
  { minLength: 1, maxLength: 5 },
);
const axles = fc
  .tuple(
    fc.double({ min: 3, max: 6, noNaN: true }),
    fc.array(fc.tuple(fc.double({ min: 0.7, max: 1.2, noNaN: true }), rate), { minLength: 1, maxLength: 5 }),
  )
  .map(([first, rest]) => {
    let at = first;
    return rest.map(([gap, rateNPerM]): SpringAxle => {
      at += gap;
      return { fromCouplerM: metres(at), rateNPerM };
    });
  });
const ground = fc.array(height, { minLength: 5, maxLength: 5 });
const SEED = { seed: 20_251_128, numRuns: 300 };

/** What the springs and the weights store at a pitch: the least of it is where the trailer comes to rest. */
function energy(springs: readonly SpringAxle[], on: Resultant, offsetM: Metres, stand: Stance, pitch: number): number {
  return springs.reduce((sum, { fromCouplerM, rateNPerM }, index) => {
    const pressed = offsetM + (stand.groundM?.[index] ?? 0) - stand.raisedM - pitch * fromCouplerM;
    return sum + (rateNPerM / 2) * Math.max(0, pressed) ** 2;
  }, on.momentNm * pitch);
}

/** The pitch of least energy by golden section: knows nothing of axles that lift. */
function pitchOfLeastEnergy(at: (pitch: number) => number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [-2, 2];
  while (high - low > 1e-7) {
    const [a, b] = [high - golden * (high - low), low + golden * (high - low)];
    if (at(a) < at(b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

describe('for any weights, axles, hitch height and ground', () => {
  test('forces and moments balance and no axle pulls', () => {
    fc.assert(
      fc.property(weights, axles, height, ground, (all, springs, raisedM, groundM) => {
        const on = resultant(all);
        const found = springLoads(springs, on, freeOffset(springs, on.momentNm), { raisedM, groundM });
        const moment = found.axleN.reduce((sum, force, i) => sum + force * (springs[i] as SpringAxle).fromCouplerM, 0);
        // Sums of at most five terms: a billionth of the whole is far above rounding.
        expect(Math.abs(found.onAxlesN + found.tongueN - on.weightN)).toBeLessThan(on.weightN * 1e-9);
        expect(Math.abs(moment - on.momentNm)).toBeLessThan(on.momentNm * 1e-9);
        expect(Math.min(...found.axleN)).toBeGreaterThanOrEqual(0);
        for (const [i, force] of found.axleN.entries()) {
          expect(force).toBeLessThanOrEqual(aloneOn(springs[i] as SpringAxle, on.momentNm) * (1 + 1e-9));
        }
      }),
      SEED,
    );
  });

  test('the pitch is that of least energy', () => {
    fc.assert(
      fc.property(weights, axles, height, ground, (all, springs, raisedM, groundM) => {
        const on = resultant(all);
        const offsetM = freeOffset(springs, on.momentNm);
        const stand = { raisedM, groundM };
        const { pitch } = springLoads(springs, on, offsetM, stand);
        const least = pitchOfLeastEnergy((angle) => energy(springs, on, offsetM, stand, angle));
        // Golden section stops at 1e-7; near its least the energy is flat, which costs it as much again and more.
        expect(Math.abs(pitch - least)).toBeLessThan(1e-5);
      }),
      SEED,
    );
  });

  test('the higher the nose, the more on the last axle and the hitch and the less on the first', () => {
    fc.assert(
      fc.property(
        weights,
        axles,
        height,
        fc.double({ min: 0.001, max: 0.1, noNaN: true }),
        (all, springs, low, more) => {
          const on = resultant(all);
          const offsetM = freeOffset(springs, on.momentNm);
          const at = (raisedM: Metres) => springLoads(springs, on, offsetM, { raisedM, groundM: null });
          const [lower, higher] = [at(low), at(metres(low + more))];
          const noise = on.weightN * 1e-9;
          expect(higher.axleN[0]).toBeLessThanOrEqual((lower.axleN[0] as number) + noise);
          expect(higher.axleN.at(-1)).toBeGreaterThanOrEqual((lower.axleN.at(-1) as number) - noise);
          expect(higher.tongueN).toBeGreaterThanOrEqual(lower.tongueN - noise);
        },
      ),
      SEED,
    );
  });

  test('level, equal springs carry equal loads, whatever their rate', () => {
    fc.assert(
      fc.property(weights, axles, rate, (all, springs, rateNPerM) => {
        const on = resultant(all);
        const alike = springs.map((one) => ({ ...one, rateNPerM }));
        const found = springLoads(alike, on, freeOffset(alike, on.momentNm), stance(0, null));
        const even = newtons(found.onAxlesN / alike.length);
        for (const force of found.axleN) expect(Math.abs(force - even)).toBeLessThan(weightOf(kg(1e-6)) + even * 1e-9);
      }),
      SEED,
    );
  });
});
