import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { Load } from '../../../src/rules/facts/load.js';
import type { Part } from '../../../src/rules/facts/part.js';
import { knownAxleLoad, mostAxleLoad } from '../../../src/rules/history/axle-load.js';
import type { HubLife } from '../../../src/rules/history/hub-lives.js';
import { trailerOn } from '../../../src/rules/history/trailer-on.js';
import { km, toMiles } from '../../../src/rules/units/distance.js';
import { lbf, toLbf } from '../../../src/rules/units/force.js';
import { inch } from '../../../src/rules/units/length.js';
import { axle, build, item, load, placedAxles, ticket, tires } from '../sample-facts.js';
import { facts, trip } from '../sample-trailer.js';

const ON = day('2025-06-01');

function hub(position: string | null, more: Partial<Part> = {}): Part {
  return {
    id: `hub-${position}`,
    kind: 'hub-bearings',
    position,
    fittedOn: null,
    removedOn: null,
    removedFor: null,
    tire: null,
    bearings: { inner: 'L68149', outer: 'L44649' },
    costCents: null,
    ...more,
  };
}

/** Two 3,500 lb axles, weighed on each by every ticket. */
function lives(parts: readonly Part[], trips = [weighed('2025-05-01', 1_000, [3_500, 3_000])]): readonly HubLife[] {
  const light = build({ axles: [axle(1, 3_500), axle(2, 3_500)] });
  return assess(facts({ builds: [light], parts: [...tires(2, { size: 'ST205/75R15' }), ...parts], trips }), ON)
    .hubLives;
}

function weighed(on: string, mi: number, axles: readonly number[]) {
  return trip(on, mi, { load: load({ scale: ticket({ gross: 7_200, axles }) }) });
}

describe('life of a hub', () => {
  it('3,500 lb on an axle for 1,000 miles', () => {
    const [life] = lives([hub('1L')]);
    // Worked out apart from this code in test/rules/reference/python/hub_life.py.
    expect(toLbf(life?.meanLoadN ?? lbf(0))).toBeCloseTo(2_100, 6);
    expect(toMiles(life?.l10Km ?? km(0))).toBeCloseTo(252_012.54876, 2);
    expect(life?.lifeUsed).toBeCloseTo(1_000 / 252_012.54876, 10);
    expect(life).toMatchObject({ position: '1L', isBound: false, rating: 'series', lacks: null, uncountedKm: 0 });
  });

  it('the lighter axle uses up less, by the 10/3 of the loads', () => {
    const [front, rear] = lives([hub('1L'), hub('2R')]);
    expect((rear?.lifeUsed ?? 0) / (front?.lifeUsed ?? 1)).toBeCloseTo((3_000 / 3_500) ** (10 / 3), 9);
  });

  it('adds up trip by trip, whatever their order of load', () => {
    const one = lives([hub('1L')], [weighed('2025-05-01', 400, [3_500, 3_000])])[0]?.lifeUsed ?? 0;
    const other = lives([hub('1L')], [weighed('2025-05-02', 600, [2_000, 3_000])])[0]?.lifeUsed ?? 0;
    const both = lives(
      [hub('1L')],
      [weighed('2025-05-01', 400, [3_500, 3_000]), weighed('2025-05-02', 600, [2_000, 3_000])],
    );
    expect(both[0]?.lifeUsed).toBeCloseTo(one + other, 12);
  });

  it('counts from the day it was fitted, and says how far it went unweighed', () => {
    const trips = [
      weighed('2025-04-01', 500, [3_500, 3_000]),
      weighed('2025-05-01', 100, [3_500, 3_000]),
      trip('2025-05-03', 60),
    ];
    const [life] = lives([hub('1L', { fittedOn: day('2025-04-15') })], trips);
    expect(toMiles(life?.countedKm ?? km(0))).toBeCloseTo(100, 6);
    expect(toMiles(life?.uncountedKm ?? km(0))).toBeCloseTo(60, 6);
  });

  it.each([
    ['no place', hub(null), 'position'],
    ['no numbers', hub('1L', { bearings: null }), 'bearing-numbers'],
    ['one number', hub('1L', { bearings: { inner: 'L68149', outer: null } }), 'bearing-numbers'],
    ['a number not in the table', hub('1L', { bearings: { inner: 'L68149', outer: '999' } }), 'bearing-rating'],
    ['no tire there', hub('3L'), 'tire-size'],
  ])('%s: says what is lacking instead of guessing', (_, part, lacks) => {
    expect(lives([part])[0]).toMatchObject({ lacks, lifeUsed: null, l10Km: null });
  });

  it('no weighed trip: the loads are lacking', () => {
    expect(lives([hub('1L')], [trip('2025-05-03', 60)])[0]).toMatchObject({ lacks: 'loads', lifeUsed: null });
  });

  it('with the tongue unknown it is the most it can be, and says so', () => {
    const cargo = load({ cargo: [item('machine', 8_000)] });
    const [life] = lives([hub('1L')], [trip('2025-05-01', 100, { load: cargo })]);
    expect(life?.isBound).toBe(true);
    expect(toLbf(life?.meanLoadN ?? lbf(0))).toBeCloseTo(((3_900 + 8_000) / 4) * 1.2, 6);
  });

  it('a load off centre wears its own side more', () => {
    const axles = placedAxles(180, 3_500).map((one) => ({ ...one, trackM: inch(80) }));
    const placed = build({ axles, empty: { ...build().empty, tongueN: lbf(400) } });
    const off = load({ cargo: [item('machine', 4_000)], balancePointM: inch(165), offCentreM: inch(4) });
    const parts = [...tires(2), hub('1L'), hub('1R')];
    const found = assess(
      facts({ builds: [placed], parts, trips: [trip('2025-05-01', 100, { load: off })] }),
      ON,
    ).hubLives;
    const [left, right] = found;
    expect(right?.lifeUsed ?? 0).toBeGreaterThan((left?.lifeUsed ?? 0) * 1.1);
  });
});

describe('the load of an axle, the short way', () => {
  const placed = build({ axles: placedAxles(180), empty: { ...build().empty, tongueN: lbf(400) } });
  const anyLoad: fc.Arbitrary<Load> = fc
    .record({
      pounds: fc.option(fc.integer({ min: 0, max: 12_000 }), { nil: null }),
      at: fc.option(fc.integer({ min: 120, max: 240 }), { nil: null }),
      scale: fc.constantFrom(
        null,
        ticket({ gross: 11_000 }),
        ticket({ gross: 11_000, tongue: 900 }),
        ticket({ axles: [5_000, 5_200] }),
      ),
    })
    .map(({ pounds, at, scale }) =>
      load({
        cargo: pounds === null ? [] : [item('machine', pounds)],
        balancePointM: at === null ? null : inch(at),
        scale,
      }),
    );

  it('is what the whole load check finds', () => {
    fc.assert(
      fc.property(anyLoad, fc.constantFrom(placed, build(), build({ suspension: null })), (drawn, drawnBuild) => {
        const one = trip('2025-05-01', 10, { load: drawn });
        const trailer = trailerOn(facts({ builds: [drawnBuild], trips: [one] }), ON);
        const check = trailer.judge(one);
        for (const index of [0, 1]) {
          const whole = check?.axleN?.[index] ?? null;
          const short = knownAxleLoad(one, index, trailer);
          if (whole === null) expect(short).toBeNull();
          else expect(short).toBeCloseTo(whole, 6);
          const most = mostAxleLoad(one, index, trailer);
          if (whole !== null) expect(most).toBeCloseTo(whole, 6);
          else if (most !== null) expect(most * 2).toBeCloseTo(check?.axleGroupN ?? Number.NaN, 6);
        }
      }),
      { numRuns: 300, seed: 33 },
    );
  });
});
