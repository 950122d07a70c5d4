import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_TRAILERS } from '../../seeds/demo/trailers.js';
import { seedDemo } from '../../seeds/seed.js';
import { assess } from '../../src/rules/assess.js';
import { day } from '../../src/rules/calendar/civil-date.js';
import {
  BODIES,
  BRAKES,
  DECK_MATERIALS,
  FENDERS,
  FRAME_SECTIONS,
  HITCHES,
  RAMPS,
  SUSPENSIONS,
  TONGUES,
} from '../../src/rules/facts/build-sheet.js';
import type { TrailerFacts } from '../../src/rules/facts/trailer-facts.js';
import { Database } from '../../src/store/database.js';
import { TrailerStore } from '../../src/store/trailer-store.js';
import { FindBetterTrailer } from '../../src/use-cases/assessments/find-better-trailer.js';
import type { Caller } from '../../src/use-cases/caller.js';
import { startApp, type TestApp } from '../support/app.js';

const TODAY = day('2026-03-02');

describe('the builds of the demo yard', () => {
  const seen = <T>(pick: (build: (typeof DEMO_TRAILERS)[number]['build']) => T) =>
    new Set(DEMO_TRAILERS.map(({ build }) => pick(build)));

  it.each([
    ['body', BODIES, seen((build) => build.body)],
    ['suspension', SUSPENSIONS, seen((build) => build.suspension)],
    ['deck', DECK_MATERIALS, seen((build) => build.deck.material)],
    ['ramp', RAMPS, seen((build) => build.rear.ramps)],
    ['fender', FENDERS, seen((build) => build.fenders.kind)],
    ['hitch', HITCHES, seen((build) => build.hitch.kind)],
    ['frame', FRAME_SECTIONS, seen((build) => build.frame.section)],
    ['tongue', TONGUES, seen((build) => build.frame.tongue)],
    ['brake', BRAKES, seen((build) => build.axles[0]?.brakes)],
  ])('every kind of %s stands in the yard', (_what, kinds, found) => {
    expect([...kinds].filter((kind) => !(found as Set<unknown>).has(kind))).toEqual([]);
  });

  it('no two trailers carry the same number', () => {
    const numbers = DEMO_TRAILERS.map(({ trailer }) => trailer.yardNumber);
    expect(new Set(numbers).size).toBe(numbers.length);
  });
});

describe('the demo yard, loaded', () => {
  let service: TestApp;
  let caller: Caller;
  let facts: ReadonlyMap<string, TrailerFacts>;

  const load = async () => {
    const found = new Map<string, TrailerFacts>();
    await service.app.get(Database).inYard(caller.yardId, async (tx) => {
      for await (const each of service.app.get(TrailerStore).findFactsOfAll(tx))
        found.set(each.trailer.yardNumber, each);
    });
    return found;
  };

  beforeAll(async () => {
    service = await startApp();
    const yard = await service.makeYard('Demo');
    caller = {
      yardId: yard.yardId,
      personId: yard.owner.id,
      name: yard.owner.name,
      role: 'owner',
      door: 'seed',
      today: TODAY,
      now: new Date(`${TODAY}T15:00:00Z`),
      timeZone: 'America/Chicago',
    };
    const personIdOf = {
      owner: yard.owner.id,
      shop: yard.shop.id,
      hand: yard.hand.id,
      driver: yard.hand.id,
      viewer: yard.viewer.id,
    };
    await seedDemo(service.app, { caller, personIdOf });
    facts = await load();
    await seedDemo(service.app, { caller, personIdOf });
  });

  afterAll(() => service.close());

  const rulesUp = (yardNumber: string) => assess(mustHave(yardNumber), TODAY).flags.map((flag) => flag.rule);
  const mustHave = (yardNumber: string) => {
    const found = facts.get(yardNumber);
    if (found === undefined) throw new Error(`no ${yardNumber}`);
    return found;
  };

  it('loading it twice leaves it as it was', async () => {
    expect(await load()).toEqual(facts);
  });

  it('two years of trips, checks and readings are there', () => {
    const all = [...facts.values()];
    expect(all.length).toBe(DEMO_TRAILERS.length);
    expect(all.reduce((sum, each) => sum + each.trips.length, 0)).toBeGreaterThan(600);
    expect(all.every((each) => each.readings.length > 10 && each.checkRecords.length > 10)).toBe(true);
    expect(all.some((each) => each.trips.some((trip) => trip.startedOn < day('2024-04-01')))).toBe(true);
  });

  it('what springs, hubs and ramps are worked out from is known of most trailers and unknown of some', () => {
    const builds = [...facts.values()].map(({ builds: [build] }) => build);
    const rates = builds.map((build) => build?.axles[0]?.springRateNPerM ?? null);
    expect([rates.includes(null), rates.filter((rate) => rate !== null).length > 6]).toEqual([true, true]);
    const levels = builds.map((build) => build?.hitch.levelHeightM ?? null);
    expect([levels.includes(null), levels.filter((level) => level !== null).length > 6]).toEqual([true, true]);
    const hubs = [...facts.values()].flatMap(({ parts }) => parts.filter(({ kind }) => kind === 'hub-bearings'));
    expect(hubs.some(({ bearings }) => bearings === null)).toBe(true);
    expect(hubs.filter(({ bearings }) => bearings?.inner && bearings.outer).length).toBeGreaterThan(20);
  });

  it('decks have come off for every reason that ends one, and pine tells of more lives than one', () => {
    const lives = new Map([...facts.values()].flatMap(({ decks }) => decks.map((life) => [life.partId, life])));
    const parts = [...facts.values()].flatMap((each) => each.parts.filter(({ kind }) => kind === 'deck'));
    expect(new Set(parts.map((part) => part.removedFor))).toEqual(new Set(['worn-out', 'damaged', 'precaution', null]));
    expect(lives.size).toBe(parts.length);
    const worn = [...lives.values()].filter((life) => life.wornOut);
    expect(worn.filter(({ material }) => material === 'pine').length).toBeGreaterThan(1);
    expect([...lives.values()].filter((life) => life.endedOn === null).length).toBe(DEMO_TRAILERS.length);
  });

  it('some trips tell how they rode and what tied the load down, and some do not', () => {
    const loads = [...facts.values()].flatMap(({ trips }) => trips.map(({ load: carried }) => carried));
    for (const told of [
      loads.map((load) => load.hitchHeightM),
      loads.map((load) => load.offCentreM),
      loads.map((load) => load.tieDowns),
    ]) {
      expect(told.filter((one) => one !== null).length).toBeGreaterThan(40);
      expect(told).toContain(null);
    }
  });

  it.each(['tread-depth-mm', 'lining-mm', 'magnet-mm', 'chain-mm', 'battery-v'] as const)(
    '%s was measured over two years and has become less',
    (quantity) => {
      const { checkRecords } = mustHave('T-02');
      const values = checkRecords
        .toSorted((a, b) => (a.doneOn < b.doneOn ? -1 : 1))
        .flatMap(({ doneOn, lines }) =>
          lines
            .filter(({ position, measured }) => measured?.quantity === quantity && (position ?? '1L') === '1L')
            .map(({ measured }) => ({ doneOn, value: measured?.value ?? Number.NaN })),
        );
      expect(values.length).toBeGreaterThan(1);
      expect(values.at(-1)?.value).toBeLessThan(values[0]?.value ?? Number.NaN);
    },
  );

  it.each([
    ['T-07', 'outgrown'],
    ['T-07', 'over-plate'],
    ['T-07', 'class-drift'],
    ['T-10', 'tire-age'],
    ['T-10', 'overdue-check'],
    ['T-11', 'tongue-share'],
    ['T-11', 'on-hold'],
    ['T-12', 'tire-pressure'],
    ['T-12', 'overdue-check'],
  ])('%s is past a limit on purpose: %s', (yardNumber, rule) => {
    expect(rulesUp(yardNumber)).toContain(rule);
  });

  it('the trailer that does another one’s work leads to one of a larger plate that carries all of it', async () => {
    const own = mustHave('T-07');
    for (const { key } of assess(own, TODAY).flags.filter(
      ({ rule }) => rule === 'class-drift' || rule === 'outgrown',
    )) {
      const outcome = await service.app
        .get(FindBetterTrailer, { strict: false })
        .run(caller, { trailerId: own.trailer.id, flag: key });
      const best = outcome.ok ? outcome.value.best : null;
      expect(best?.carries, key).toBe(best?.ofLoads);
      const plate = (yardNumber: string) => mustHave(yardNumber).builds.at(-1)?.plate.gvwrKg ?? 0;
      expect(plate(best?.yardNumber ?? 'none'), key).toBeGreaterThan(plate('T-07'));
    }
  });

  it.each(['T-01', 'T-04', 'T-05'])('%s is in order', (yardNumber) => {
    expect(rulesUp(yardNumber)).toEqual([]);
  });
});
