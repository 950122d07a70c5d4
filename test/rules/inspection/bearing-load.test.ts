import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { AppliesTo } from '../../../src/rules/facts/check.js';
import type { Trip } from '../../../src/rules/facts/use.js';
import { trailerOn } from '../../../src/rules/history/trailer-on.js';
import { bearingWeight, isOfBearings } from '../../../src/rules/inspection/bearing-load.js';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';
import { dueCheck } from '../../../src/rules/inspection/due.js';
import { miles, toMiles } from '../../../src/rules/units/distance.js';
import { axle, build, load, ticket } from '../sample-facts.js';
import { ANY_BUILD, done, facts, kind, trip } from '../sample-trailer.js';

const GREASED: AppliesTo = { ...ANY_BUILD, lubricants: ['grease'] };
const EVERY_12000 = { kind: 'distance', everyKm: miles(12_000) } as const;
const repack = kind('repack', [EVERY_12000], { appliesTo: GREASED });
const adjust = kind('adjust', [EVERY_12000]);

/** Weighed on both 7,000 lb axles, gross well inside the plate. */
function weighed(on: string, mi: number, front: number, rear: number, more: Partial<Trip> = {}): Trip {
  return trip(on, mi, { load: load({ scale: ticket({ gross: 13_000, axles: [front, rear] }) }), ...more });
}

function weightOf(one: Trip): number {
  return bearingWeight(one, trailerOn(facts({ trips: [one] }), day('2025-06-01')));
}

function used(check: typeof repack, trips: readonly Trip[]) {
  const answer = dueCheck(
    check,
    facts({ trips, checkKinds: [check], checkRecords: [done(check.code, '2025-01-01')] }),
    day('2025-06-01'),
  );
  if (answer.used?.kind !== 'distance') throw new Error('counts no distance');
  const { usedKm, harshKm, loadKm } = answer.used;
  return { used: toMiles(usedKm), harsh: toMiles(harshKm), load: toMiles(loadKm), dueOn: answer.dueOn };
}

describe('what a mile counts for to a bearing', () => {
  // ISO 281: life at 1.10 and 1.20 of the load is 0.7278 and 0.5446 of the life; the weight is one over it.
  it.each([
    { front: 7_700, weight: 1 / 0.7278 },
    { front: 8_400, weight: 1 / 0.5446 },
  ])('$front lb on a 7,000 lb axle: $weight', ({ front, weight }) => {
    expect(weightOf(weighed('2025-05-01', 10, front, 4_000))).toBeCloseTo(weight, 3);
  });

  it('the axle that took most of its rating decides', () => {
    const uneven = build({ axles: [axle(1, 7_000), axle(2, 3_500)] });
    const one = weighed('2025-05-01', 10, 6_000, 3_850);
    const trailer = trailerOn(facts({ builds: [uneven], trips: [one] }), day('2025-06-01'));
    expect(bearingWeight(one, trailer)).toBeCloseTo(1 / 0.7278, 3);
  });

  it('a light load, an unknown load and an unrated axle count as they are', () => {
    expect(weightOf(weighed('2025-05-01', 10, 2_000, 2_000))).toBe(1);
    expect(weightOf(weighed('2025-05-01', 10, 7_000, 7_000))).toBe(1);
    expect(weightOf(trip('2025-05-01', 10))).toBe(1);
    const unrated = build({ axles: [axle(1, null), axle(2, null)] });
    const one = weighed('2025-05-01', 10, 9_000, 9_000);
    expect(bearingWeight(one, trailerOn(facts({ builds: [unrated], trips: [one] }), day('2025-06-01')))).toBe(1);
  });
});

describe('a repack', () => {
  it('counts overloaded miles by their load and says how many that adds', () => {
    const trips = [weighed('2025-02-01', 1_000, 7_700, 4_000), weighed('2025-03-01', 1_000, 5_000, 5_000)];
    const count = used(repack, trips);
    expect(count.used).toBeCloseTo(1_000 / 0.7278 + 1_000, 0);
    expect(count.load).toBeCloseTo(1_000 / 0.7278 - 1_000, 0);
    expect(count.harsh).toBe(0);
  });

  it('any other check by distance does not', () => {
    expect(used(adjust, [weighed('2025-02-01', 1_000, 7_700, 4_000)])).toMatchObject({ load: 0, harsh: 0 });
  });

  it('on salt the harsher of the two counts, not their product', () => {
    const salted = used(repack, [weighed('2025-02-01', 1_000, 7_700, 4_000, { roads: ['salt'] })]);
    expect(salted.used).toBeCloseTo(2_000, 6);
    const heavier = used(repack, [weighed('2025-02-01', 1_000, 9_100, 3_000, { roads: ['salt'] })]);
    expect(heavier.used).toBeCloseTo(1_000 * 1.3 ** (10 / 3), 6);
    expect(heavier.harsh).toBeCloseTo(1_000, 6);
    expect(heavier.load).toBeCloseTo(1_000 * 1.3 ** (10 / 3) - 2_000, 6);
  });

  it('comes sooner or at the same day, never later, whatever was hauled', () => {
    const anyTrip = fc.record({
      place: fc.integer({ min: 0, max: 100 }),
      mi: fc.integer({ min: 1, max: 900 }),
      front: fc.integer({ min: 500, max: 12_000 }),
      salted: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(anyTrip, { minLength: 1, maxLength: 12 }), (drawn) => {
        const trips = drawn.map(({ place, mi, front, salted }, i) =>
          weighed(`2025-0${1 + (place % 4)}-1${place % 9}`, mi, front, 3_000, {
            id: `trip-${i}`,
            roads: salted ? ['salt'] : [],
          }),
        );
        const byLoad = used(repack, trips);
        const plain = used(adjust, trips);
        expect(byLoad.used).toBeGreaterThanOrEqual(plain.used - 1e-6);
        if (plain.dueOn !== null) expect(byLoad.dueOn !== null && byLoad.dueOn <= plain.dueOn).toBe(true);
      }),
      { numRuns: 150, seed: 281 },
    );
  });

  it('of the starting checks, those of greased and of oiled hubs', () => {
    expect(DEFAULT_CHECK_KINDS.filter(isOfBearings).map((check) => check.code)).toEqual([
      'hub-repack',
      'hub-oil-service',
      'hub-oil-level',
    ]);
  });
});
