import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { day } from '../../src/rules/calendar/civil-date.js';
import { DEFAULT_POLICY } from '../../src/rules/facts/yard-policy.js';
import { Database, type YardTx } from '../../src/store/database.js';
import { type FreshDatabase, freshDatabase } from '../support/database.js';
import * as sample from './sample-facts.js';
import { aYard, BY_SEED, type SampleYard, STORES } from './sample-yard.js';

let fresh: FreshDatabase;
let database: Database;
let yard: SampleYard;

beforeAll(async () => {
  fresh = await freshDatabase();
  database = new Database(fresh.url);
  yard = await aYard(fresh.url, database, 'Round trip');
});

afterAll(async () => {
  await database.onModuleDestroy();
  await fresh.drop();
});

/** Works in the yard and then forgets all of it, so that each test finds the yard as it was. */
async function inYard<T>(work: (tx: YardTx) => Promise<T>): Promise<T> {
  let result: { value: T } | undefined;
  await database
    .inYard(yard.yardId, async (tx) => {
      result = { value: await work(tx) };
      throw new Forget();
    })
    .catch((error) => {
      if (!(error instanceof Forget)) throw error;
    });
  if (result === undefined) throw new Error('the work ended without a result');
  return result.value;
}

class Forget extends Error {}

async function aTrailer(tx: YardTx): Promise<string> {
  return STORES.trailers.insert(tx, sample.BARE_TRAILER);
}

/** Paths of all fields that are null, so that a sample called full is. */
function nullsIn(value: unknown, path = ''): string[] {
  if (value === null || value === undefined) return [path];
  if (typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => nullsIn(inner, `${path}.${key}`));
}

test('the samples called full leave nothing out', () => {
  const samples = [
    sample.FULL_TRAILER,
    sample.FULL_BUILD,
    { ...sample.FULL_TIRE, bearings: 'a tire has none' },
    { ...sample.HUB_PART, tire: 'a hub has no marks' },
    { ...sample.FULL_MACHINE, replacesMachineId: 'set in its own test' },
    sample.FULL_TOW_VEHICLE,
    sample.fullTrip('m', 'j'),
    sample.FULL_READING,
    sample.fullJob({
      trailerId: 't',
      machineId: 'm',
      towVehicle: { ...sample.FULL_TOW_VEHICLE, id: 'v' },
      haulerPersonId: 'p',
    }),
    sample.fullCheckKind('p', 'q'),
    sample.fullCheckRecord('k', 'p'),
  ];
  expect(samples.flatMap((one) => nullsIn(one))).toEqual([]);
});

describe('what was written down about a trailer is read back to the last digit', () => {
  test.each([
    ['with everything known', sample.FULL_TRAILER],
    ['with nothing but its number', sample.BARE_TRAILER],
  ])('the trailer itself, %s', async (_, trailer) => {
    await inYard(async (tx) => {
      const id = await STORES.trailers.insert(tx, trailer);
      expect(await STORES.trailers.find(tx, id)).toEqual({ id, ...trailer });
      expect(await STORES.trailers.findByNumber(tx, trailer.yardNumber)).toEqual({ id, ...trailer });
      expect(await STORES.trailers.list(tx)).toEqual([{ id, ...trailer }]);
      const { registrationPlate: _plate, boughtForCents: _price, note: _note, ...facts } = trailer;
      expect((await STORES.trailers.findFacts(tx, id))?.trailer).toEqual({ id, ...facts });
    });
  });

  test.each([
    ['with everything known', sample.FULL_BUILD],
    ['with nothing known', sample.BARE_BUILD],
  ])('a build sheet %s', async (_, build) => {
    await inYard(async (tx) => {
      const trailerId = await aTrailer(tx);
      const id = await STORES.builds.insert(tx, trailerId, build, BY_SEED);
      expect((await STORES.trailers.findFacts(tx, trailerId))?.builds).toEqual([{ id, ...build }]);
      expect(await STORES.builds.find(tx, trailerId, id)).toEqual({ id, ...build });
    });
  });

  test.each([
    ['a tire with every mark', sample.FULL_TIRE],
    ['a tire nobody looked at', sample.BARE_TIRE],
    ['a deck, which has no marks', sample.DECK_PART],
    ['hub bearings with their numbers, which broke', sample.HUB_PART],
    ['hub bearings of which one number is known', sample.HALF_KNOWN_HUB_PART],
  ])('%s', async (_, part) => {
    await inYard(async (tx) => {
      const trailerId = await aTrailer(tx);
      const id = await STORES.parts.insert(tx, trailerId, part, BY_SEED);
      expect((await STORES.trailers.findFacts(tx, trailerId))?.parts).toEqual([{ id, ...part }]);
    });
  });

  test('trips with everything known, with nothing known, known to be dry, and known to be tied by nothing', async () => {
    await inYard(async (tx) => {
      const trailerId = await aTrailer(tx);
      const machineId = await STORES.machines.insert(tx, sample.FULL_MACHINE, null);
      const jobId = await STORES.jobs.insert(tx, { ...sample.BARE_JOB, trailerId }, BY_SEED);
      const full = sample.fullTrip(machineId, jobId);
      const dry = { ...sample.BARE_TRIP, startedOn: day('2024-03-01'), endedOn: day('2024-03-01'), roads: [] };
      const tongueOnly = {
        ...full,
        startedOn: day('2024-04-01'),
        load: { ...full.load, scale: { grossKg: null, tongueN: full.load.scale?.tongueN ?? null, axleN: null } },
      };
      const untied = {
        ...sample.BARE_TRIP,
        startedOn: day('2024-03-15'),
        endedOn: day('2024-03-15'),
        load: sample.UNTIED_LOAD,
      };
      const trips = [sample.BARE_TRIP, dry, untied, tongueOnly, full];
      const ids = await STORES.trips.insertMany(
        tx,
        trips.map((trip) => ({ trailerId, trip, recorded: BY_SEED })),
      );
      const expected = trips.map((trip, at) => ({ id: ids[at], ...trip }));
      expect((await STORES.trailers.findFacts(tx, trailerId))?.trips).toEqual(expected);
      expect(await STORES.trips.find(tx, trailerId, ids[3] ?? '')).toEqual(expected[3]);
    });
  });

  test('meter readings, rolled over and replaced', async () => {
    await inYard(async (tx) => {
      const trailerId = await aTrailer(tx);
      const first = await STORES.readings.insert(tx, trailerId, sample.FULL_READING, BY_SEED);
      const second = await STORES.readings.insert(tx, trailerId, sample.BARE_READING, BY_SEED);
      expect((await STORES.trailers.findFacts(tx, trailerId))?.readings).toEqual([
        { id: first, ...sample.FULL_READING },
        { id: second, ...sample.BARE_READING },
      ]);
    });
  });

  test('jobs with everything known and with nothing but a name and days', async () => {
    await inYard(async (tx) => {
      const trailerId = await aTrailer(tx);
      const machineId = await STORES.machines.insert(tx, sample.FULL_MACHINE, null);
      const towVehicleId = await STORES.towVehicles.insert(tx, sample.FULL_TOW_VEHICLE);
      const towVehicle = { id: towVehicleId, ...sample.FULL_TOW_VEHICLE };
      const full = sample.fullJob({ trailerId, machineId, towVehicle, haulerPersonId: yard.shopId });
      const id = await STORES.jobs.insert(tx, full, BY_SEED);
      const bareId = await STORES.jobs.insert(tx, sample.BARE_JOB, BY_SEED);
      expect(await STORES.jobs.find(tx, id)).toEqual({ id, ...full });
      expect(await STORES.jobs.find(tx, bareId)).toEqual({ id: bareId, ...sample.BARE_JOB });
      const { trailerId: _trailer, customer: _customer, note: _note, ...facts } = full;
      expect((await STORES.trailers.findFacts(tx, trailerId))?.jobs).toEqual([{ id, ...facts }]);
    });
  });

  test('a job that was booked again: other days, another trailer, less cargo', async () => {
    await inYard(async (tx) => {
      const trailerId = await aTrailer(tx);
      const machineId = await STORES.machines.insert(tx, sample.FULL_MACHINE, null);
      const booked = { ...sample.BARE_JOB, state: 'booked' as const, load: sample.fullLoad(machineId) };
      const id = await STORES.jobs.insert(tx, booked, BY_SEED);
      const again = { id, ...booked, trailerId, endsOn: day('2025-08-03'), load: { ...booked.load, cargo: [] } };
      expect(await STORES.jobs.update(tx, again)).toBe(true);
      expect(await STORES.jobs.find(tx, id)).toEqual(again);
      expect(await STORES.jobs.list(tx, { trailerId, from: day('2025-08-03'), to: day('2025-08-09') })).toEqual([
        again,
      ]);
      expect(await STORES.jobs.list(tx, { from: day('2025-08-04') })).toEqual([]);
      expect(await STORES.jobs.list(tx, { state: 'done' })).toEqual([]);
    });
  });

  test('kinds of check with every trigger and with none', async () => {
    await inYard(async (tx) => {
      const full = sample.fullCheckKind(yard.ownerId, yard.shopId);
      const id = await STORES.checkKinds.save(tx, full);
      const bareId = await STORES.checkKinds.save(tx, sample.BARE_CHECK_KIND);
      const kinds = [
        { id, ...full },
        { id: bareId, ...sample.BARE_CHECK_KIND },
      ];
      expect(await STORES.checkKinds.list(tx)).toEqual(kinds);
      const trailerId = await aTrailer(tx);
      expect((await STORES.trailers.findFacts(tx, trailerId))?.checkKinds).toEqual(kinds);
      await STORES.checkKinds.save(tx, { ...sample.BARE_CHECK_KIND, id, code: full.code });
      expect(await STORES.checkKinds.find(tx, id)).toEqual({ ...sample.BARE_CHECK_KIND, id, code: full.code });
      expect(await STORES.checkKinds.retire(tx, bareId)).toBe(true);
      expect((await STORES.checkKinds.list(tx)).map((kind) => kind.id)).toEqual([id]);
      // Its records still name it.
      expect(await STORES.checkKinds.find(tx, bareId)).toEqual({ id: bareId, ...sample.BARE_CHECK_KIND });
    });
  });

  test('checks with their lines, measurements and pictures', async () => {
    await inYard(async (tx) => {
      const trailerId = await aTrailer(tx);
      const kindId = await STORES.checkKinds.save(tx, sample.BARE_CHECK_KIND);
      const full = sample.fullCheckRecord(kindId, yard.shopId);
      const bare = sample.bareCheckRecord(kindId);
      const picture = { mediaType: 'image/jpeg', bytes: new Uint8Array([0xff, 0xd8, 0xff, 0x00]) };
      const id = await STORES.checks.insert(tx, trailerId, { ...full, byName: 'Tomas' }, [picture], BY_SEED);
      const bareId = await STORES.checks.insert(tx, trailerId, { ...bare, byName: 'Wren' }, [], BY_SEED);
      expect((await STORES.trailers.findFacts(tx, trailerId))?.checkRecords).toEqual([
        { id, ...full },
        { id: bareId, ...bare },
      ]);
      const [photoId] = await STORES.checks.photoIds(tx, id);
      const kept = await STORES.checks.findPhoto(tx, photoId ?? '');
      expect(kept?.mediaType).toBe(picture.mediaType);
      expect([...(kept?.bytes ?? [])]).toEqual([...picture.bytes]);
      expect(await STORES.checks.photoIds(tx, bareId)).toEqual([]);
    });
  });

  test('a hold, open and then lifted once', async () => {
    await inYard(async (tx) => {
      const trailerId = await aTrailer(tx);
      const hold = { openedOn: day('2025-06-01'), reason: 'cracked weld', openedByName: 'Tomas' };
      const id = await STORES.holds.open(tx, trailerId, { ...hold, openedBy: yard.shopId });
      expect((await STORES.trailers.findFacts(tx, trailerId))?.holds).toEqual([{ id, ...hold, liftedOn: null }]);
      const lift = {
        liftedBy: yard.ownerId,
        liftedByName: 'Ines',
        reason: 'welded and looked at',
        checkRecordId: null,
      };
      expect(await STORES.holds.lift(tx, trailerId, id, { ...lift, liftedOn: day('2025-06-03') })).toBe(true);
      expect(await STORES.holds.lift(tx, trailerId, id, { ...lift, liftedOn: day('2025-06-09') })).toBe(false);
      expect(await STORES.holds.find(tx, trailerId, id)).toEqual({ id, ...hold, liftedOn: day('2025-06-03') });
    });
  });

  test('a tire that came off, once', async () => {
    await inYard(async (tx) => {
      const trailerId = await aTrailer(tx);
      const id = await STORES.parts.insert(
        tx,
        trailerId,
        { ...sample.FULL_TIRE, removedOn: null, removedFor: null },
        BY_SEED,
      );
      expect(await STORES.parts.remove(tx, trailerId, id, { on: day('2025-05-06'), why: 'precaution' })).toBe(true);
      expect(await STORES.parts.remove(tx, trailerId, id, { on: day('2025-05-07'), why: 'worn-out' })).toBe(false);
      expect(await STORES.parts.find(tx, trailerId, id)).toEqual({ id, ...sample.FULL_TIRE });
    });
  });
});

test('a trailer comes with the machines its hauls name and those that took over their work, and no others', async () => {
  await inYard(async (tx) => {
    const machine = (name: string, replacesMachineId: string | null) =>
      STORES.machines.insert(tx, { ...sample.FULL_MACHINE, name, replacesMachineId }, null);
    const skidSteer = await machine('a skid steer', null);
    const loader = await machine('b track loader', skidSteer);
    const bigger = await machine('c bigger loader', loader);
    const aboard = await machine('d forks', null);
    await machine('e dozer', null);
    const trailerId = await aTrailer(tx);
    const load = { ...sample.BARE_LOAD, cargo: sample.fullLoad(aboard).cargo };
    await STORES.trips.insert(tx, trailerId, { ...sample.BARE_TRIP, machineId: skidSteer }, BY_SEED);
    await STORES.jobs.insert(tx, { ...sample.BARE_JOB, trailerId, load }, BY_SEED);
    const other = await STORES.trailers.insert(tx, { ...sample.BARE_TRAILER, yardNumber: 'T-99' });
    await STORES.trips.insert(tx, other, { ...sample.BARE_TRIP, machineId: loader }, BY_SEED);

    const found = new Map<string, readonly string[]>();
    for await (const facts of STORES.trailers.findFactsOfAll(tx)) {
      found.set(
        facts.trailer.id,
        facts.machines.map((one) => one.id),
      );
    }
    expect(found.get(trailerId)).toEqual([skidSteer, loader, bigger, aboard]);
    expect(found.get(other)).toEqual([loader, bigger]);
    expect((await STORES.trailers.findFacts(tx, trailerId))?.machines[1]).toEqual({
      ...sample.FULL_MACHINE,
      id: loader,
      name: 'b track loader',
      replacesMachineId: skidSteer,
    });
  });
});

test('machines and tow vehicles change, and unknown stays unknown', async () => {
  await inYard(async (tx) => {
    const machineId = await STORES.machines.insert(tx, sample.FULL_MACHINE, null);
    expect(await STORES.machines.update(tx, { id: machineId, ...sample.BARE_MACHINE })).toBe(true);
    expect(await STORES.machines.retire(tx, machineId, day('2025-01-01'))).toBe(true);
    const machine = { id: machineId, ...sample.BARE_MACHINE, retiredOn: day('2025-01-01') };
    expect(await STORES.machines.find(tx, machineId)).toEqual(machine);
    expect(await STORES.machines.list(tx)).toEqual([machine]);
    const towVehicleId = await STORES.towVehicles.insert(tx, sample.FULL_TOW_VEHICLE);
    expect(await STORES.towVehicles.update(tx, { id: towVehicleId, ...sample.BARE_TOW_VEHICLE })).toBe(true);
    expect(await STORES.towVehicles.list(tx)).toEqual([{ id: towVehicleId, ...sample.BARE_TOW_VEHICLE }]);
  });
});

test('a fleet of several batches comes whole, each trailer once and with its own trips only', async () => {
  await inYard(async (tx) => {
    const trailerIds: string[] = [];
    for (let at = 0; at < 230; at += 1) {
      trailerIds.push(await STORES.trailers.insert(tx, { ...sample.BARE_TRAILER, yardNumber: `F-${at}` }));
    }
    const days = trailerIds.map((_, at) => day(`2024-01-${String((at % 28) + 1).padStart(2, '0')}`));
    await STORES.trips.insertMany(
      tx,
      trailerIds.map((trailerId, at) => ({
        trailerId,
        trip: { ...sample.BARE_TRIP, startedOn: days[at] ?? day('2024-01-01'), note: String(at) },
        recorded: BY_SEED,
      })),
    );
    const seen: [string, unknown][] = [];
    for await (const facts of STORES.trailers.findFactsOfAll(tx)) {
      seen.push([facts.trailer.id, facts.trips.map((trip) => trip.startedOn)]);
    }
    expect(seen).toEqual([...trailerIds].sort().map((id) => [id, [days[trailerIds.indexOf(id)]]]));
    const some = [trailerIds[200], trailerIds[3]].filter((id) => id !== undefined);
    const chosen: string[] = [];
    for await (const facts of STORES.trailers.findFactsOfAll(tx, some)) chosen.push(facts.trailer.id);
    expect(chosen).toEqual(some.sort());
  });
});

test('a new yard has the policy the rules call the default, and keeps what it changes', async () => {
  await inYard(async (tx) => {
    const before = await STORES.yards.get(tx);
    expect(before.policy).toEqual(DEFAULT_POLICY);
    await STORES.yards.save(tx, { timeZone: 'America/Denver', policy: { tireAgeLimitYears: 5.5 } });
    expect(await STORES.yards.get(tx)).toEqual({
      ...before,
      timeZone: 'America/Denver',
      policy: { ...DEFAULT_POLICY, tireAgeLimitYears: 5.5 },
    });
  });
});
