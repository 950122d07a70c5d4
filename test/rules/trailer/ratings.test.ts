import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import { ratings } from '../../../src/rules/trailer/ratings.js';
import { lbf } from '../../../src/rules/units/force.js';
import { inch } from '../../../src/rules/units/length.js';
import { kg, lb, toLb } from '../../../src/rules/units/mass.js';
import { psi } from '../../../src/rules/units/pressure.js';
import { axle, build, marks, tire, tires, unknownBuild } from '../sample-facts.js';

const pounds = (mass: Parameters<typeof toLb>[0] | null) => (mass === null ? null : Math.round(toLb(mass)));

describe('payload', () => {
  test('a 9,990 lb plate less 2,980 empty leaves 7,010, though two 7,000 lb axles add up to 14,000', () => {
    const fence = build({
      plate: { gvwrKg: lb(9_990), coldPressureKpa: psi(80) },
      empty: { massKg: lb(2_980), basis: 'weighed', tongueN: null },
    });
    const found = ratings(fence, tires(2));
    expect([pounds(found.payloadKg), pounds(found.axleSumKg)]).toEqual([7_010, 14_000]);
    expect(found.governing).toMatchObject({ kind: 'plate', origin: 'plate', limitN: lbf(9_990) });
  });

  test('four 3,420 lb tires are fine under a 14,000 lb plate, because the hitch carries some', () => {
    const found = ratings(build(), tires(2));
    expect(pounds(found.payloadKg)).toBe(10_100);
    expect(found.governing?.kind).toBe('plate');
    expect(pounds(found.axleGroupKg)).toBe(13_680);
    expect(found.tongueShareAssumed).toBe(0.1);
  });

  test('with the hitch unknown nothing is credited to it, so the tires govern', () => {
    const found = ratings(build({ hitch: unknownBuild().hitch }), tires(2));
    expect(pounds(found.payloadKg)).toBe(13_680 - 3_900);
    expect(found.governing?.kind).toBe('tire');
  });

  test('one weaker tire sets the group: four times 3,000, not 13,680', () => {
    const weak = tire('2L', { maxLoadSingleKg: lb(3_000), loadRange: 'D', maxColdPressureKpa: psi(65) });
    const found = ratings(build(), [...tires(2).filter((one) => one.position !== '2L'), weak]);
    expect(pounds(found.axleGroupKg)).toBe(12_000);
    expect(found.governing).toMatchObject({ kind: 'tire', subject: '2L' });
    // 12,000 lb on the axles are 90 % of the gross.
    expect(pounds(found.payloadKg)).toBe(Math.round(12_000 / 0.9 - 3_900));
  });

  test('a weak coupler governs over a stronger plate', () => {
    const hitch = { ...build().hitch, couplerRatingKg: lb(10_000) };
    const found = ratings(build({ hitch }), tires(2));
    expect(found.governing).toMatchObject({ kind: 'coupler', origin: 'coupler-maker' });
    expect(pounds(found.payloadKg)).toBe(6_100);
  });

  test('a coupler’s vertical rating bounds the gross by the least share the tongue should carry', () => {
    const hitch = { ...build().hitch, couplerTongueN: lbf(1_000) };
    const found = ratings(build({ hitch }), tires(2));
    expect(found.governing?.kind).toBe('coupler-tongue');
    expect(pounds(found.payloadKg)).toBe(6_100);
  });

  test('tires soft by order of the plate carry what the table says', () => {
    const plate = { gvwrKg: lb(14_000), coldPressureKpa: psi(50) };
    expect(pounds(ratings(build({ plate }), tires(2)).axleGroupKg)).toBe(10_400);
  });

  test('a trailer heavier than its own limit has no payload left, and not less than none', () => {
    expect(ratings(build({ empty: { massKg: lb(15_000), basis: 'stated', tongueN: null } }), tires(2)).payloadKg).toBe(
      0,
    );
  });

  test('with no empty mass the governing limit is known and the payload is not', () => {
    const found = ratings(build({ empty: unknownBuild().empty }), tires(2));
    expect([found.governing?.kind, found.payloadKg, pounds(found.grossKg)]).toEqual(['plate', null, 14_000]);
  });

  test('of an unknown build nothing is said', () => {
    expect(ratings(unknownBuild(), [])).toEqual({
      limits: [],
      governing: null,
      grossKg: null,
      payloadKg: null,
      axleGroupKg: null,
      axleSumKg: null,
      tongueShareAssumed: 0,
      trailerClass: null,
    });
  });

  test('every limit is listed with where it comes from', () => {
    const trailer = build({ axles: [axle(1, 7_000), axle(2, null, { ratingKg: lb(7_000) })] });
    expect(ratings(trailer, tires(2)).limits.map(({ kind, subject, origin }) => [kind, subject, origin])).toEqual([
      ['plate', null, 'plate'],
      ['axle-group', null, 'plate'],
      ['axle', '1', 'plate'],
      ['axle', '2', 'axle-maker'],
      ['tire', '1L', 'tire-sidewall'],
      ['tire', '1R', 'tire-sidewall'],
      ['tire', '2L', 'tire-sidewall'],
      ['tire', '2R', 'tire-sidewall'],
      ['coupler', null, 'coupler-maker'],
      ['legal-axles', '1', 'law'],
      ['legal-axles', '2', 'law'],
    ]);
  });
});

describe('what the law lets the axles carry', () => {
  const deckOver = (apartIn: number) =>
    build({
      body: 'deck-over',
      plate: { gvwrKg: lb(40_000), coldPressureKpa: null },
      hitch: { ...build().hitch, kind: 'gooseneck', couplerRatingKg: lb(40_000) },
      axles: [
        axle(1, 15_000, { fromCouplerM: inch(300), wheelsPerSide: 2 }),
        axle(2, 15_000, { fromCouplerM: inch(300 + apartIn), wheelsPerSide: 2 }),
      ],
    });

  test('two 15,000 lb axles 38 in apart are one single axle of 20,000 lb, and that governs', () => {
    const found = ratings(deckOver(38), []);
    expect(found.governing).toEqual({ kind: 'legal-axles', subject: '1-2', limitN: lbf(20_000), origin: 'law' });
    // 20,000 lb are the 85 % that the least share on a gooseneck leaves to the axles.
    expect(pounds(found.grossKg)).toBe(Math.round(20_000 / 0.85));
  });

  test('49 in apart they are a tandem of 34,000 lb, and the axles govern', () => {
    const found = ratings(deckOver(49), []);
    expect(found.governing).toMatchObject({ kind: 'axle-group', limitN: lbf(30_000) });
    expect(found.limits.filter((limit) => limit.origin === 'law').map(({ subject }) => subject)).toEqual([
      '1',
      '1-2',
      '2',
    ]);
  });

  test('it never raises what the axles may carry, and never speaks where no rating is known', () => {
    expect(pounds(ratings(deckOver(38), []).axleGroupKg)).toBe(30_000);
    const unrated = build({ ...unknownBuild(), axles: [axle(1, null)] });
    expect(ratings(unrated, [])).toMatchObject({ governing: null, grossKg: null });
  });
});

test('no part that is made weaker ever leaves more payload', () => {
  const rating = fc.integer({ min: 1_000, max: 20_000 });
  const trailer = (plate: number, coupler: number, front: number): BuildSheet =>
    build({
      plate: { gvwrKg: lb(plate), coldPressureKpa: null },
      hitch: { ...build().hitch, couplerRatingKg: lb(coupler) },
      axles: [axle(1, front), axle(2, 7_000)],
    });
  fc.assert(
    fc.property(rating, rating, rating, rating, fc.integer({ min: 0, max: 3 }), (plate, coupler, front, one, which) => {
      const wheels = [
        {
          id: 'a',
          kind: 'tire' as const,
          position: '1L',
          fittedOn: null,
          removedOn: null,
          removedFor: null,
          bearings: null,
          costCents: null,
          tire: marks({ maxLoadSingleKg: lb(one) }),
        },
      ];
      const before = ratings(trailer(plate, coupler, front), wheels);
      const less = (value: number, place: number) => (which === place ? value * 0.9 : value);
      const weaker = ratings(trailer(less(plate, 0), less(coupler, 1), less(front, 2)), [
        { ...(wheels[0] as (typeof wheels)[number]), tire: marks({ maxLoadSingleKg: lb(less(one, 3)) }) },
      ]);
      expect(weaker.payloadKg).toBeLessThanOrEqual((before.payloadKg ?? kg(0)) + 1e-6);
    }),
  );
});
