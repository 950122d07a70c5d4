import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import type { Trip } from '../../../src/rules/facts/use.js';
import { classDriftFlags } from '../../../src/rules/flags/class-drift.js';
import { trailerOn } from '../../../src/rules/history/trailer-on.js';
import { betterTrailer } from '../../../src/rules/ranking/better-trailer.js';
import { flaggedWork, heaviestLoad, workOnTrips } from '../../../src/rules/ranking/flagged-work.js';
import { inch } from '../../../src/rules/units/length.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { axle, build, item, load, ticket, tires } from '../sample-facts.js';
import { facts, job, machine, trailer, trip } from '../sample-trailer.js';

const ON = day('2025-06-16');

function rated(id: string, plate: number | null, more: Partial<TrailerFacts> = {}): TrailerFacts {
  const strong = build({
    plate: { gvwrKg: plate === null ? null : lb(plate), coldPressureKpa: null },
    axles: [axle(1, 20_000), axle(2, 20_000)],
    hitch: { ...build().hitch, couplerRatingKg: lb(40_000) },
  });
  const parts = tires(2, { maxLoadSingleKg: lb(15_000) });
  return facts({ trailer: trailer({ id, yardNumber: id }), builds: [strong], parts, ...more });
}

/** 14,000 lb plate, 10,100 lb payload: the work that drifts out of its class. */
const trips: readonly Trip[] = [9_600, 10_400, 9_800].map((pounds, place) =>
  trip(`2025-06-0${place + 1}`, 30, {
    id: `trip-${place}`,
    load: load({ cargo: [item('loader', pounds, { fromCouplerM: inch(150) })], balancePointM: inch(150) }),
  }),
);
const own = rated('own', 14_000, { trips });
const ids = trips.map((one) => one.id);
const workOf = (of: TrailerFacts, tripIds: readonly string[]) => workOnTrips(trailerOn(of, ON), new Set(tripIds));

describe('the better trailer', () => {
  it('does the work that the flag names: the smallest with room to spare', () => {
    const [flag] = classDriftFlags({ trailer: trailerOn(own, ON) });
    const named = flag?.evidence.kind === 'class-drift' ? flag.evidence.tripIds : [];
    // 14,300 lb at the most: 15,000 leaves 4.7 %, 18,000 leaves 20.6 %, 26,000 leaves 45 %.
    const others = [rated('p26', 26_000), rated('p15', 15_000), rated('p18', 18_000), own];
    const answer = betterTrailer(own, workOf(own, named), others, ON);
    expect(answer.best).toMatchObject({ trailerId: 'p18', carries: 3, ofLoads: 3, busy: 0, ofDays: 3 });
    expect(answer.best?.marginShare).toBeCloseTo(1 - 14_300 / 18_000, 9);
    expect(answer.all.map((one) => one.trailerId)).toEqual(['p18', 'p26', 'p15']);
  });

  it('one that was out on the same days comes after one that was free', () => {
    const out = rated('out', 18_000, { trips: [trip('2025-06-02', 10)], jobs: [job('2025-06-03')] });
    const answer = betterTrailer(own, workOf(own, ids), [out, rated('free', 26_000)], ON);
    expect(answer.all.map(({ trailerId, busy }) => [trailerId, busy])).toEqual([
      ['free', 0],
      ['out', 2],
    ]);
  });

  it('none carries all of it: no best, and for each its tightest limit', () => {
    const answer = betterTrailer(own, workOf(own, ids), [rated('small', 13_600), rated('unknown', null)], ON);
    expect(answer.best).toBeNull();
    expect(answer.all[0]).toMatchObject({ trailerId: 'small', carries: 1, tightest: { limit: { kind: 'plate' } } });
    expect(answer.all[1]).toMatchObject({ trailerId: 'unknown', carries: 0 });
  });

  it('too near a limit to go unweighed is not carried', () => {
    const guessed = {
      ...own,
      trips: [trip('2025-06-01', 30, { id: 'g', load: load({ cargo: [item('m', 10_400, { basis: 'stated' })] }) })],
    };
    expect(betterTrailer(guessed, workOf(guessed, ['g']), [rated('near', 14_400)], ON).best).toBeNull();
    expect(betterTrailer(guessed, workOf(guessed, ['g']), [rated('clear', 15_000)], ON).best?.trailerId).toBe('clear');
  });

  it('a load that only a ticket told is taken at what it weighed', () => {
    const weighed = {
      ...own,
      trips: [trip('2025-06-01', 30, { id: 'w', load: load({ scale: ticket({ gross: 15_000 }) }) })],
    };
    // 15,000 less 3,900 empty is 11,100 of cargo, on another trailer of 3,900 again 15,000.
    expect(betterTrailer(weighed, workOf(weighed, ['w']), [rated('other', 20_000)], ON).best?.marginShare).toBeCloseTo(
      0.25,
      9,
    );
  });

  it('leaves out what is sold, itself, and trips it was not asked about', () => {
    const sold = rated('sold', 26_000, { trailer: trailer({ id: 'sold', status: 'sold' }) });
    expect(betterTrailer(own, workOf(own, ids), [sold, own], ON)).toEqual({ best: null, all: [] });
    expect(betterTrailer(own, workOf(own, []), [rated('any', 26_000)], ON).best).toBeNull();
  });
});

describe('the work behind a flag', () => {
  const skid = machine('skid', 7_200);
  const loader = machine('loader', 9_920, { replacesMachineId: 'skid' });
  const carried = [item('skid steer', 7_200, { machineId: 'skid' }), item('chains', 400)];
  const outgrown = {
    ...rated('own', 14_000, { machines: [skid, loader] }),
    trips: [trip('2025-05-20', 30, { id: 'old', machineId: 'skid', load: load({ cargo: carried }) })],
  };
  const flagOf = (of: TrailerFacts, rule: string) => {
    const flag = assess(of, ON).flags.find((one) => one.rule === rule);
    if (flag === undefined) throw new Error(`${rule} is not up`);
    return flag;
  };

  it('outgrown: the new machine with all that rides along, on the days of the one before it', () => {
    const work = flaggedWork(outgrown, flagOf(outgrown, 'outgrown'), ON);
    // 9,920 lb of machine and 400 lb of chains, where 10,100 lb is all the trailer carries.
    expect(work?.days).toEqual([{ from: '2025-05-20', to: '2025-05-20' }]);
    expect(toLb(heaviestLoad(work ?? { loads: [] }) ?? lb(0))).toBeCloseTo(10_320, 6);
    const answer = work && betterTrailer(outgrown, work, [rated('p18', 18_000), rated('p14', 14_000)], ON);
    expect(answer?.best).toMatchObject({ trailerId: 'p18', carries: 1, ofLoads: 1, ofDays: 1 });
    expect(answer?.all[1]).toMatchObject({ trailerId: 'p14', carries: 0 });
  });

  it('drift: the trips that the flag names, the heaviest of them for thinning out', () => {
    const work = flaggedWork(own, flagOf(own, 'class-drift'), ON);
    expect(work).toEqual(workOf(own, ids));
    expect(toLb(heaviestLoad(work ?? { loads: [] }) ?? lb(0))).toBeCloseTo(10_400, 6);
  });

  it('any other flag has none, and loads of which nobody said the weight have no heaviest', () => {
    const other = assess(own, ON).flags.find((one) => one.rule !== 'class-drift' && one.rule !== 'outgrown');
    if (other === undefined) throw new Error('no other flag is up');
    expect(flaggedWork(own, other, ON)).toBeNull();
    expect(heaviestLoad({ loads: [load()] })).toBeNull();
  });
});
