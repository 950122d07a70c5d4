import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { day } from '../../src/rules/calendar/civil-date.js';
import { km } from '../../src/rules/units/distance.js';
import { kg } from '../../src/rules/units/mass.js';
import { Database, type YardTx } from '../../src/store/database.js';
import { newId } from '../../src/store/new-id.js';
import type { HistoryOf, Recorded } from '../../src/store/recorded.js';
import { type FreshDatabase, freshDatabase } from '../support/database.js';
import * as sample from './sample-facts.js';
import { asOwner, aYard, BY_SEED, type SampleYard, STORES } from './sample-yard.js';

let fresh: FreshDatabase;
let database: Database;
let yard: SampleYard;
let kindId: string;

beforeAll(async () => {
  fresh = await freshDatabase();
  database = new Database(fresh.url);
  yard = await aYard(fresh.url, database, 'Corrections');
  kindId = await database.inYard(yard.yardId, (tx) => STORES.checkKinds.save(tx, sample.BARE_CHECK_KIND));
});

afterAll(async () => {
  await database.onModuleDestroy();
  await fresh.drop();
});

interface Kind {
  readonly name: string;
  readonly list: 'trips' | 'readings' | 'parts' | 'builds' | 'checkRecords';
  /** Writes one of two facts that differ. */
  readonly write: (tx: YardTx, trailerId: string, which: 'first' | 'second', recorded: Recorded) => Promise<string>;
  readonly store: {
    withdraw(tx: YardTx, trailerId: string, id: string, recorded: Recorded): Promise<void>;
    history(tx: YardTx, trailerId: string): Promise<readonly HistoryOf<{ id: string }>[]>;
    find(tx: YardTx, trailerId: string, id: string): Promise<{ id: string } | null>;
  };
}

const KINDS: readonly Kind[] = [
  {
    name: 'a trip',
    list: 'trips',
    store: STORES.trips,
    write: (tx, trailerId, which, recorded) =>
      STORES.trips.insert(
        tx,
        trailerId,
        { ...sample.BARE_TRIP, distanceKm: km(which === 'first' ? 10 : 20) },
        recorded,
      ),
  },
  {
    name: 'a reading',
    list: 'readings',
    store: STORES.readings,
    write: (tx, trailerId, which, recorded) =>
      STORES.readings.insert(
        tx,
        trailerId,
        { ...sample.FULL_READING, shownKm: km(which === 'first' ? 1 : 2) },
        recorded,
      ),
  },
  {
    name: 'a part',
    list: 'parts',
    store: STORES.parts,
    write: (tx, trailerId, which, recorded) =>
      STORES.parts.insert(tx, trailerId, { ...sample.FULL_TIRE, position: which === 'first' ? '1L' : '1R' }, recorded),
  },
  {
    name: 'a version of the build sheet',
    list: 'builds',
    store: STORES.builds,
    write: (tx, trailerId, which, recorded) => {
      const plate = { gvwrKg: kg(which === 'first' ? 6_000 : 6_350), coldPressureKpa: null };
      return STORES.builds.insert(tx, trailerId, { ...sample.FULL_BUILD, plate }, recorded);
    },
  },
  {
    name: 'a check',
    list: 'checkRecords',
    store: STORES.checks,
    write: (tx, trailerId, which, recorded) => {
      const record = { ...sample.fullCheckRecord(kindId, yard.shopId), byName: 'Tomas' };
      const outcome = which === 'first' ? ('fail' as const) : ('pass' as const);
      return STORES.checks.insert(tx, trailerId, { ...record, outcome }, [], recorded);
    },
  },
];

async function aTrailer(): Promise<string> {
  return database.inYard(yard.yardId, (tx) =>
    STORES.trailers.insert(tx, { ...sample.BARE_TRAILER, yardNumber: `C-${newId()}` }),
  );
}

async function standing(trailerId: string, list: Kind['list']): Promise<readonly string[]> {
  const facts = await database.inYard(yard.yardId, (tx) => STORES.trailers.findFacts(tx, trailerId));
  return facts?.[list].map((fact) => fact.id) ?? [];
}

describe.each(KINDS)('$name that was written down wrong', ({ list, write, store }) => {
  const inYard = <T>(work: (tx: YardTx) => Promise<T>) => database.inYard(yard.yardId, work);
  const byPage = { door: 'page', recordedBy: null } as const;

  test('stands no more once a later row names it, and that row can be mended in turn', async () => {
    const trailerId = await aTrailer();
    const first = await inYard((tx) => write(tx, trailerId, 'first', BY_SEED));
    expect(await standing(trailerId, list)).toEqual([first]);
    const second = await inYard((tx) => write(tx, trailerId, 'second', { ...byPage, correctsId: first }));
    expect(await standing(trailerId, list)).toEqual([second]);
    const third = await inYard((tx) => write(tx, trailerId, 'first', { ...byPage, correctsId: second }));
    expect(await standing(trailerId, list)).toEqual([third]);
    expect(await inYard((tx) => store.find(tx, trailerId, second))).toBe(null);
    expect(await inYard((tx) => store.find(tx, trailerId, third))).toMatchObject({ id: third });
  });

  test('is gone once it was taken back, and stays in the history with who and when', async () => {
    const trailerId = await aTrailer();
    const recordedAt = new Date('2025-06-16T13:45:01.234Z');
    const kept = await inYard((tx) => write(tx, trailerId, 'first', { ...BY_SEED, recordedAt }));
    const wrong = await inYard((tx) => write(tx, trailerId, 'second', { ...BY_SEED, recordedAt }));
    const taken = { door: 'api', recordedBy: yard.shopId, recordedAt: new Date('2025-06-17T00:00:00Z') } as const;
    await inYard((tx) => store.withdraw(tx, trailerId, wrong, taken));
    expect(await standing(trailerId, list)).toEqual([kept]);
    const history = await inYard((tx) => store.history(tx, trailerId));
    const common = { recordedAt, door: 'seed', recordedBy: null, correctsId: null, withdrawn: false };
    expect(history.map(({ fact, ...entry }) => ({ id: fact.id, ...entry }))).toEqual([
      { ...common, id: kept, standing: true },
      { ...common, id: wrong, standing: false },
      { ...taken, id: expect.any(String), correctsId: wrong, withdrawn: true, standing: false },
    ]);
  });

  test('cannot be mended twice from the same row, so that two people at once do not make two truths', async () => {
    const trailerId = await aTrailer();
    const first = await inYard((tx) => write(tx, trailerId, 'first', BY_SEED));
    const second = await inYard((tx) => write(tx, trailerId, 'second', { ...BY_SEED, correctsId: first }));
    const again = inYard((tx) => write(tx, trailerId, 'second', { ...BY_SEED, correctsId: first }));
    await expect(again).rejects.toThrow(/unique constraint/i);
    await expect(inYard((tx) => store.withdraw(tx, trailerId, first, BY_SEED))).rejects.toThrow('no standing');
    expect(await standing(trailerId, list)).toEqual([second]);
  });

  test('can be mended or taken back only on its own trailer', async () => {
    const trailerId = await aTrailer();
    const other = await aTrailer();
    const first = await inYard((tx) => write(tx, trailerId, 'first', BY_SEED));
    const across = inYard((tx) => write(tx, other, 'second', { ...BY_SEED, correctsId: first }));
    await expect(across).rejects.toThrow(/foreign key constraint/i);
    await expect(inYard((tx) => store.withdraw(tx, other, first, BY_SEED))).rejects.toThrow('no standing');
    expect(await standing(trailerId, list)).toEqual([first]);
  });
});

test('two writers of one trailer take turns, so that neither result misses the other fact', async () => {
  const trailerId = await aTrailer();
  const order: string[] = [];
  let firstHasIt = () => {};
  const firstTook = new Promise<void>((resolve) => {
    firstHasIt = resolve;
  });
  const write = async (name: string, hold: () => Promise<void>) =>
    database.inYard(yard.yardId, async (tx) => {
      await STORES.trailers.lock(tx, trailerId);
      order.push(`${name} reads`);
      firstHasIt();
      await hold();
      const before = (await STORES.trailers.findFacts(tx, trailerId))?.readings.length;
      await STORES.readings.insert(tx, trailerId, { ...sample.FULL_READING, takenOn: day('2025-06-16') }, BY_SEED);
      order.push(`${name} wrote after ${before}`);
    });
  const first = write('first', async () => {
    // Long enough for the other to have gone ahead, were it not for the lock.
    await waitingForLock();
  });
  await firstTook;
  const second = write('second', async () => {});
  await Promise.all([first, second]);
  expect(order).toEqual(['first reads', 'first wrote after 0', 'second reads', 'second wrote after 1']);
});

/** Until somebody in this database waits for a lock. */
async function waitingForLock(): Promise<void> {
  for (let tries = 0; tries < 2_000; tries += 1) {
    const waiting = await asOwner(
      fresh.url,
      "select 1 from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'",
    );
    if (waiting.length > 0) return;
  }
  throw new Error('nobody ever waited for the lock');
}
