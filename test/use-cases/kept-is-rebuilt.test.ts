import { afterAll, beforeAll, expect, test } from 'vitest';
import { seedDemo } from '../../seeds/seed.js';
import { type Assessment, assess } from '../../src/rules/assess.js';
import { addDays, type CivilDate, day } from '../../src/rules/calendar/civil-date.js';
import type { TrailerFacts } from '../../src/rules/facts/trailer-facts.js';
import { yardDaysFrom } from '../../src/rules/inspection/yard-days.js';
import { Database } from '../../src/store/database.js';
import { ResultStore } from '../../src/store/result-store.js';
import { TrailerStore } from '../../src/store/trailer-store.js';
import { RebuildResults } from '../../src/use-cases/assessments/rebuild-results.js';
import type { Caller } from '../../src/use-cases/caller.js';
import { WakeTrailers } from '../../src/use-cases/notices/wake-trailers.js';
import { asOwner } from '../store/sample-yard.js';
import { startApp, type TestApp } from '../support/app.js';

const TODAY = day('2026-03-02');
const RESULT_TABLES = ['trailer_result', 'due_result', 'flag_result'];

let service: TestApp;
let yardId: string;

beforeAll(async () => {
  service = await startApp();
  const { owner, shop, hand, viewer, ...yard } = await service.makeYard('Demo');
  yardId = yard.yardId;
  const personIdOf = { owner: owner.id, shop: shop.id, hand: hand.id, driver: hand.id, viewer: viewer.id };
  await seedDemo(service.app, { caller: { ...on(TODAY), personId: owner.id, name: owner.name }, personIdOf });
});

afterAll(() => service.close());

function on(today: CivilDate): Caller {
  const now = new Date(`${today}T15:00:00Z`);
  return {
    yardId,
    personId: null,
    name: 'the timer',
    role: 'owner',
    door: 'job',
    today,
    now,
    timeZone: 'America/Chicago',
  };
}

/** All rows of the tables that hold results. */
async function keptRows() {
  const tables = RESULT_TABLES.map((table) =>
    asOwner(service.databaseUrl, `select to_jsonb(kept) as row from ${table} kept order by kept::text collate "C"`),
  );
  return (await Promise.all(tables)).map((rows) => rows.map(({ row }) => row));
}

async function facts(): Promise<readonly TrailerFacts[]> {
  return service.app.get(Database).inYard(yardId, async (tx) => {
    const found: TrailerFacts[] = [];
    for await (const each of service.app.get(TrailerStore).findFactsOfAll(tx)) found.push(each);
    return found;
  });
}

/** An assessment without what may differ from day to day with no wake: the day itself, and yard days gone by. */
function readOn(today: CivilDate, assessment: Assessment | undefined) {
  return {
    ...assessment,
    asOf: null,
    due: assessment?.due.map((one) => ({ ...one, yardDays: yardDaysFrom(one.yardDays, addDays(today, 1)) })),
  };
}

test('two years of a yard, entered fact by fact, leave the results that a rebuild from all facts gives', async () => {
  const kept = await keptRows();
  expect(kept.map((rows) => rows.length > 5)).toEqual([true, true, true]);
  await service.app.get(RebuildResults).run(on(TODAY));
  expect(await keptRows()).toEqual(kept);
});

test('results that were thrown away come back as they were', async () => {
  const kept = await keptRows();
  for (const table of [...RESULT_TABLES].reverse()) await asOwner(service.databaseUrl, `delete from ${table}`);
  expect(await keptRows()).toEqual([[], [], []]);
  await service.app.get(RebuildResults).run(on(TODAY));
  expect(await keptRows()).toEqual(kept);
});

test('as days go by, waking only the trailers whose day has come keeps every trailer right', async () => {
  const fleet = await facts();
  const trailerIds = fleet.map(({ trailer }) => trailer.id);
  const woken: number[] = [];
  for (let after = 1; after <= 60; after += 1) {
    const today = addDays(TODAY, after);
    const outcome = await service.app.get(WakeTrailers).run(on(today));
    woken.push(outcome.ok ? outcome.value.woken : Number.NaN);
    const kept = await service.app
      .get(Database)
      .inYard(yardId, (tx) => service.app.get(ResultStore).findMany(tx, trailerIds));
    for (const one of fleet) {
      const rebuilt = assess(one, today);
      const told = `${one.trailer.yardNumber} on ${today}`;
      expect(readOn(today, kept.get(one.trailer.id)), told).toEqual({
        ...readOn(today, JSON.parse(JSON.stringify(rebuilt))),
        // Its own day to wake is as good as a later look's, as long as nothing reads differently before.
        wakeOn: kept.get(one.trailer.id)?.wakeOn,
      });
    }
  }
  // Had every trailer been woken every day, this would prove nothing.
  const everyDay = 60 * fleet.length;
  expect(woken.reduce((sum, count) => sum + count, 0)).toBeLessThan(everyDay / 2);
  expect(Math.max(...woken)).toBeGreaterThan(0);
});
