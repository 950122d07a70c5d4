import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Handover } from '../../src/rules/facts/handover.js';
import { Database, type YardTx } from '../../src/store/database.js';
import { newId } from '../../src/store/new-id.js';
import { type FreshDatabase, freshDatabase } from '../support/database.js';
import * as sample from './sample-facts.js';
import { aYard, BY_SEED, type SampleYard, STORES } from './sample-yard.js';

let fresh: FreshDatabase;
let database: Database;
let yard: SampleYard;

beforeAll(async () => {
  fresh = await freshDatabase();
  database = new Database(fresh.url);
  yard = await aYard(fresh.url, database, 'Handovers');
});

afterAll(async () => {
  await database.onModuleDestroy();
  await fresh.drop();
});

const { handovers } = STORES;
const inYard = <T>(work: (tx: YardTx) => Promise<T>) => database.inYard(yard.yardId, work);

function aTrailer(tx: YardTx): Promise<string> {
  return STORES.trailers.insert(tx, { ...sample.BARE_TRAILER, yardNumber: `H-${newId()}` });
}

function hand(tx: YardTx, trailerId: string, handover: Omit<Handover, 'id' | 'trailerId'>): Promise<string> {
  return handovers.insert(tx, trailerId, { ...handover, byPersonId: yard.shopId }, [], BY_SEED);
}

test('what was seen, the hitch and the signature come back to the last digit, pictures with what they show', async () => {
  await inYard(async (tx) => {
    const trailerId = await aTrailer(tx);
    const jobId = await STORES.jobs.insert(tx, { ...sample.BARE_JOB, trailerId }, BY_SEED);
    const out = sample.fullHandover(jobId);
    const picture = (place: number, first: number) => ({
      ...{ place, mediaType: 'image/jpeg', bytes: new Uint8Array([first, 0xd8, 0xff]) },
    });
    const id = await handovers.insert(
      tx,
      trailerId,
      { ...out, byPersonId: yard.shopId },
      [picture(1, 1), picture(0, 2), picture(1, 3)],
      BY_SEED,
    );
    const kept = await handovers.find(tx, trailerId, id);
    const [tire, coupler] = kept?.seen ?? [];
    expect([tire?.photoIds.length, coupler?.photoIds.length]).toEqual([1, 2]);
    expect({ ...kept, seen: kept?.seen.map((one) => ({ ...one, photoIds: [] })) }).toEqual({ id, trailerId, ...out });
    const photo = await handovers.findPhoto(tx, tire?.photoIds[0] ?? '');
    expect([photo?.mediaType, ...(photo?.bytes ?? [])]).toEqual(['image/jpeg', 2, 0xd8, 0xff]);

    const back = sample.bareReturn(id);
    const backId = await hand(tx, trailerId, back);
    expect(await handovers.find(tx, trailerId, backId)).toEqual({ id: backId, trailerId, ...back });
  });
});

test('a trailer is out until its return stands, and out again once that return is taken back', async () => {
  await inYard(async (tx) => {
    const trailerId = await aTrailer(tx);
    expect(await handovers.outNow(tx, trailerId)).toBe(null);
    const outId = await hand(tx, trailerId, sample.fullHandover(null));
    expect((await handovers.outNow(tx, trailerId))?.id).toBe(outId);
    expect(await handovers.allOutNow(tx)).toEqual([
      { trailerId, handoverId: outId, jobId: null, customer: 'Brindle Pools', on: '2025-05-02' },
    ]);
    const backId = await hand(tx, trailerId, sample.bareReturn(outId));
    expect(await handovers.outNow(tx, trailerId)).toBe(null);
    expect((await handovers.backOf(tx, trailerId, outId))?.id).toBe(backId);

    const at = (second: number) => ({ ...BY_SEED, recordedAt: new Date(Date.UTC(2030, 0, 1, 0, 0, second)) });
    await handovers.withdraw(tx, trailerId, backId, at(1));
    expect((await handovers.outNow(tx, trailerId))?.id).toBe(outId);
    expect(await handovers.backOf(tx, trailerId, outId)).toBe(null);
    expect(await handovers.find(tx, trailerId, backId)).toBe(null);
    await handovers.withdraw(tx, trailerId, outId, at(2));
    expect(await handovers.outNow(tx, trailerId)).toBe(null);
    const history = await handovers.history(tx, trailerId);
    expect(history.slice(2).map(({ correctsId, withdrawn }) => [correctsId, withdrawn])).toEqual([
      [backId, true],
      [outId, true],
    ]);
    expect(history.some(({ standing }) => standing)).toBe(false);
    await expect(handovers.withdraw(tx, trailerId, outId, BY_SEED)).rejects.toThrow('no standing');
  });
});

test('a return ends a way out of its own trailer and no other', async () => {
  const { outId, other } = await inYard(async (tx) => ({
    outId: await hand(tx, await aTrailer(tx), sample.fullHandover(null)),
    other: await aTrailer(tx),
  }));
  await expect(inYard((tx) => hand(tx, other, sample.bareReturn(outId)))).rejects.toThrow(/foreign key constraint/i);
});
