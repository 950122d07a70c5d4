import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { Load } from '../../../src/rules/facts/load.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import { portableLoad } from '../../../src/rules/ranking/portable-load.js';
import { rankTrailers } from '../../../src/rules/ranking/rank-trailers.js';
import type { Haul } from '../../../src/rules/ranking/ranked-trailer.js';
import { type TrailerBrief, worthAsking } from '../../../src/rules/ranking/worth-asking.js';
import { inch } from '../../../src/rules/units/length.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { axle, build, item, load, ticket, tires } from '../sample-facts.js';
import { done, facts, job, kind, trailer } from '../sample-trailer.js';

const ASKED_ON = day('2025-06-16');

/** A trailer by its plate, empty at 3,900 lb, with axles, coupler and tires that never come first. */
function rated(id: string, plate: number | null, more: Partial<TrailerFacts> = {}): TrailerFacts {
  const strong = build({
    plate: { gvwrKg: plate === null ? null : lb(plate), coldPressureKpa: null },
    axles: [axle(1, 20_000), axle(2, 20_000)],
    hitch: { ...build().hitch, couplerRatingKg: lb(40_000) },
  });
  const parts = tires(2, { maxLoadSingleKg: lb(15_000) });
  return facts({ trailer: trailer({ id, yardNumber: id }), builds: [strong], parts, ...more });
}

function haul(pounds: number, more: Partial<Haul> = {}): Haul {
  return {
    load: load({ cargo: [item('machine', pounds)] }),
    startsOn: day('2025-06-20'),
    endsOn: day('2025-06-21'),
    commercial: false,
    towVehicle: null,
    driver: null,
    jobId: null,
    plannedTrailerId: null,
    ...more,
  };
}

const order = (trailers: readonly TrailerFacts[], asked: Haul) =>
  rankTrailers(trailers, asked, ASKED_ON).map((one) => one.trailerId);

describe('trailers for a haul', () => {
  it('the smallest with 15 % to spare comes first, then the bigger, then the tight, then those too small', () => {
    // 11,900 lb in all: 11,000 is over, 12,500 leaves 4.8 %, 13,000 leaves 8.5 %, 14,500 leaves 17.9 %, 20,000 leaves 40.5 %.
    const yard = [11_000, 20_000, 12_500, 14_500, 13_000].map((plate) => rated(`p${plate}`, plate));
    const ranked = rankTrailers(yard, haul(8_000), ASKED_ON);
    expect(ranked.map((one) => one.trailerId)).toEqual(['p14500', 'p20000', 'p13000', 'p12500', 'p11000']);
    expect(ranked[0]?.tightest?.limit.kind).toBe('plate');
    expect(ranked[0]?.marginShare).toBeCloseTo(1 - 11_900 / 14_500, 9);
    expect(ranked[4]).toMatchObject({ fit: { verdict: 'no-go' } });
    expect(ranked[4]?.fit.reasons[0]).toMatchObject({ kind: 'over', comparison: { limit: { kind: 'plate' } } });
  });

  it('one that is booked comes after those that are free, with the job it clashes with', () => {
    const booked = rated('booked', 14_500, { jobs: [job('2025-06-21', { id: 'other', name: 'Mill Lane' })] });
    const ranked = rankTrailers([booked, rated('free', 11_000)], haul(8_000), ASKED_ON);
    expect(ranked.map((one) => one.trailerId)).toEqual(['free', 'booked']);
    expect(ranked[1]?.clashes).toEqual([
      { jobId: 'other', name: 'Mill Lane', startsOn: '2025-06-21', endsOn: '2025-06-21' },
    ]);
  });

  it('its own booking is no clash, nor is a day next to it, nor a job called off', () => {
    const jobs = [
      job('2025-06-20', { id: 'own' }),
      job('2025-06-22', { id: 'after' }),
      job('2025-06-19', { id: 'before' }),
      job('2025-06-20', { id: 'off', state: 'cancelled' }),
    ];
    const [only] = rankTrailers([rated('one', 14_500, { jobs })], haul(8_000, { jobId: 'own' }), ASKED_ON);
    expect(only?.clashes).toEqual([]);
  });

  it('of two that need work first, the one with less work', () => {
    const check = (hours: number) =>
      kind('repack', [{ kind: 'days', every: 30 }], {
        safety: true,
        blocks: 'all-jobs',
        work: { hours, place: 'shop', parts: [], bundle: null, together: [] },
      });
    const overdue = (id: string, hours: number) =>
      rated(id, 14_500, { checkKinds: [check(hours)], checkRecords: [done('repack', '2025-01-01')] });
    const ranked = rankTrailers([overdue('long', 6), overdue('short', 1)], haul(8_000), ASKED_ON);
    expect(ranked.map(({ trailerId, hoursFirst }) => [trailerId, hoursFirst])).toEqual([
      ['short', 1],
      ['long', 6],
    ]);
    expect(order([overdue('short', 1), rated('ready', 14_500)], haul(8_000))[0]).toBe('ready');
  });

  it('what is sold is last, and what nobody knows comes after every yes', () => {
    const sold = rated('sold', 14_500, { trailer: trailer({ id: 'sold', status: 'sold' }) });
    const yard = [sold, rated('unknown', null), rated('yes', 13_000), rated('no', 11_000)];
    expect(order(yard, haul(8_000))).toEqual(['yes', 'unknown', 'no', 'sold']);
  });

  it('places on the deck hold for the trailer they were given for, and for no other', () => {
    const at: Load = load({ cargo: [item('machine', 8_000, { fromCouplerM: inch(160) })], balancePointM: inch(160) });
    const asked = haul(0, { load: at, plannedTrailerId: 'own' });
    const ranked = rankTrailers([rated('own', 14_500), rated('other', 14_500)], asked, ASKED_ON);
    const lacks = (id: string) =>
      ranked.find((one) => one.trailerId === id)?.fit.loadCheck.unknowns.map((one) => one.lacks) ?? [];
    expect(lacks('own')).not.toContain('balance-point');
    expect(lacks('other')).toContain('balance-point');
  });

  it('does not depend on the order in which trailers are handed over', () => {
    const yard = [rated('a', 14_500), rated('b', 14_500), rated('c', 13_000), rated('d', 11_000), rated('e', null)];
    const expected = order(yard, haul(8_000));
    fc.assert(
      fc.property(fc.shuffledSubarray(yard, { minLength: 5 }), (shuffled) => {
        expect(order(shuffled, haul(8_000))).toEqual(expected);
      }),
      { numRuns: 30, seed: 56 },
    );
  });
});

describe('a load for another trailer', () => {
  it('known from a ticket alone, it weighs what the ticket told', () => {
    const weighed = load({
      cargo: [item('loader', 9_000, { machineId: 'm' }), item('chains', 100)],
      scale: ticket({ gross: 14_000 }),
    });
    const moved = portableLoad(weighed, lb(10_100));
    expect(moved.scale).toBeNull();
    expect(moved.cargo).toHaveLength(1);
    expect(moved.cargo[0]).toMatchObject({ name: 'loader, chains', machineId: 'm', basis: 'weighed' });
    expect(toLb(moved.cargo[0]?.massKg ?? lb(0))).toBeCloseTo(10_100, 9);
  });
});

describe('worth asking', () => {
  const brief = (id: string, payload: number | null, more: Partial<TrailerBrief> = {}): TrailerBrief => ({
    trailerId: id,
    yardNumber: id,
    readiness: 'ready',
    payloadKg: payload === null ? null : lb(payload),
    clashes: [],
    ...more,
  });
  const clash = { jobId: 'j', name: 'Mill Lane', startsOn: day('2025-06-20'), endsOn: day('2025-06-20') };

  it('passes over what is gone, down, booked or surely too small, each with its reason', () => {
    const { ask, passedOver } = worthAsking(
      [
        brief('gone', 20_000, { readiness: 'gone' }),
        brief('down', 20_000, { readiness: 'down' }),
        brief('booked', 20_000, { clashes: [clash] }),
        brief('small', 9_000),
        brief('tight', 9_500),
        brief('roomy', 13_000),
        brief('huge', 30_000),
        brief('due', 14_000, { readiness: 'due' }),
        brief('unknown', null),
      ],
      lb(10_000),
    );
    expect(ask.map((one) => one.trailerId)).toEqual(['roomy', 'due', 'huge', 'tight', 'unknown']);
    expect(passedOver.map(({ trailerId, why }) => [trailerId, why.kind])).toEqual([
      ['gone', 'gone'],
      ['down', 'down'],
      ['booked', 'booked'],
      ['small', 'too-small'],
    ]);
    const small = passedOver.find((one) => one.trailerId === 'small')?.why;
    expect(small?.kind === 'too-small' && toLb(small.shortKg)).toBeCloseTo(1_000, 9);
  });

  it('a load nobody weighed passes nobody over for size', () => {
    expect(worthAsking([brief('a', 1), brief('b', null)], null).ask).toHaveLength(2);
  });

  it('never passes over for size a trailer that would get a plain yes, wherever the load sits', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 6_000, max: 14_000 }),
        fc.integer({ min: 130, max: 200 }),
        fc.integer({ min: 5_000, max: 9_000 }),
        (pounds, at, axlePounds) => {
          const centred = build({
            axles: [
              axle(1, axlePounds, { fromCouplerM: inch(162.5) }),
              axle(2, axlePounds, { fromCouplerM: inch(197.5) }),
            ],
            plate: { gvwrKg: lb(20_000), coldPressureKpa: null },
            hitch: { ...build().hitch, couplerRatingKg: lb(40_000) },
          });
          const own = facts({ builds: [centred], parts: tires(2, { maxLoadSingleKg: lb(15_000) }) });
          const asked = haul(pounds, {
            plannedTrailerId: own.trailer.id,
            load: load({ cargo: [item('machine', pounds)], balancePointM: inch(at) }),
          });
          const [ranked] = rankTrailers([own], asked, ASKED_ON);
          const payloadKg = lb(Math.min(20_000, (2 * axlePounds) / 0.9) - 3_900);
          const small = worthAsking([brief('own', toLb(payloadKg))], lb(pounds)).passedOver.length > 0;
          if (small) expect(ranked?.fit.verdict).not.toBe('go');
        },
      ),
      { numRuns: 100, seed: 61 },
    );
  });
});
