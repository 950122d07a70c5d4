import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { day } from '../../src/rules/calendar/civil-date.js';
import { lb } from '../../src/rules/units/mass.js';
import { Database, type YardTx } from '../../src/store/database.js';
import { newId } from '../../src/store/new-id.js';
import { HistoryView } from '../../src/store/views/history.view.js';
import { type FreshDatabase, freshDatabase } from '../support/database.js';
import * as sample from './sample-facts.js';
import { anAssessment, aPerson, aYard, type SampleYard, STORES } from './sample-yard.js';

let fresh: FreshDatabase;
let database: Database;
let yard: SampleYard;

beforeAll(async () => {
  fresh = await freshDatabase();
  database = new Database(fresh.url);
  yard = await aYard(fresh.url, database, 'Kept');
});

afterAll(async () => {
  await database.onModuleDestroy();
  await fresh.drop();
});

function inYard<T>(work: (tx: YardTx) => Promise<T>): Promise<T> {
  return database.inYard(yard.yardId, work);
}

function aTrailer(tx: YardTx): Promise<string> {
  return STORES.trailers.insert(tx, { ...sample.BARE_TRAILER, yardNumber: `K-${newId()}` });
}

describe('results', () => {
  const due = {
    code: 'hub-repack',
    state: 'overdue' as const,
    dueOn: day('2025-06-01'),
    failed: false,
    trigger: { kind: 'days' as const, every: 90 },
    lastDoneOn: day('2025-03-03'),
    used: null,
    range: null,
    stops: null,
    firstJobAtRisk: null,
    yardDays: [{ from: day('2025-06-17'), to: day('2025-06-20') }],
    unknown: null,
  };
  const flag = {
    key: 'on-hold:1',
    rule: 'on-hold' as const,
    severity: 'stop' as const,
    since: null,
    evidence: { kind: 'hold' as const, holdId: '1', reason: 'hub runs hot' },
    clears: [{ kind: 'lift-hold' as const, holdId: '1' }] as const,
  };

  test('come back as they were kept, and a newer one takes the place of the older whole', async () => {
    await inYard(async (tx) => {
      const trailerId = await aTrailer(tx);
      const checkKindId = await STORES.checkKinds.save(tx, sample.BARE_CHECK_KIND);
      const first = anAssessment('2025-06-16', {
        readiness: 'down',
        ratings: {
          limits: [],
          governing: null,
          grossKg: lb(14_000),
          payloadKg: lb(9_907),
          axleGroupKg: null,
          axleSumKg: lb(14_000),
          tongueShareAssumed: 0.1,
          trailerClass: 'medium',
        },
        due: [{ ...due, checkKindId }],
        flags: [flag, { ...flag, key: 'on-hold:2', severity: 'watch' }],
      });
      await STORES.results.save(tx, trailerId, first);
      expect(await STORES.results.find(tx, trailerId)).toEqual(first);
      expect(await tx.trailerResult.findFirst({ where: { trailerId }, omit: { assessment: true } })).toMatchObject({
        readiness: 'down',
        stopFlags: 1,
        limitFlags: 0,
        watchFlags: 1,
        overdue: 1,
        nextDueOn: new Date('2025-06-01'),
        payloadKg: lb(9_907),
        trailerClass: 'medium',
      });
      const second = anAssessment('2025-06-17', { wakeOn: null });
      await STORES.results.save(tx, trailerId, second);
      expect(await STORES.results.find(tx, trailerId)).toEqual(second);
      expect(await tx.dueResult.count({ where: { trailerId } })).toBe(0);
      expect(await tx.flagResult.count({ where: { trailerId } })).toBe(0);
      await STORES.checkKinds.retire(tx, checkKindId);
    });
  });

  test('wake on the first day they would read differently, and those that never would do not', async () => {
    await inYard(async (tx) => {
      const soon = await aTrailer(tx);
      const late = await aTrailer(tx);
      const never = await aTrailer(tx);
      await STORES.results.saveMany(tx, [
        { trailerId: soon, assessment: anAssessment('2025-06-16', { wakeOn: day('2025-06-20') }) },
        { trailerId: late, assessment: anAssessment('2025-06-16', { wakeOn: day('2025-06-21') }) },
        { trailerId: never, assessment: anAssessment('2025-06-16', { wakeOn: null }) },
      ]);
      expect(await STORES.results.wakeBy(tx, day('2025-06-19'))).toEqual([]);
      expect(await STORES.results.wakeBy(tx, day('2025-06-20'))).toEqual([soon]);
      expect(await STORES.results.wakeBy(tx, day('2030-01-01'))).toEqual([soon, late].sort());
      const unknown = newId();
      expect([...(await STORES.results.findMany(tx, [soon, never, unknown])).keys()].sort()).toEqual(
        [soon, never].sort(),
      );
      await STORES.results.wakeAllOn(tx, day('2025-06-10'));
      expect(await STORES.results.wakeBy(tx, day('2025-06-09'))).toEqual([]);
      expect(await STORES.results.wakeBy(tx, day('2025-06-10'))).toEqual(expect.arrayContaining([soon, late, never]));
    });
  });
});

test('the history of a trailer is told newest first, and others do not come into it', async () => {
  await inYard(async (tx) => {
    const trailerId = await aTrailer(tx);
    const entry = { personId: yard.ownerId, who: 'Ines', door: 'page', subject: 'trip', subjectId: null };
    const told = (action: string, of: string | null, at: string) =>
      STORES.audit.append(tx, { ...entry, action, trailerId: of, at: new Date(at), detail: { of: action } });
    await told('record-trip', trailerId, '2025-06-15T09:00:00Z');
    await told('mend-trip', trailerId, '2025-06-16T09:00:00Z');
    await told('save-policy', null, '2025-06-17T09:00:00Z');
    const { personId: _person, ...shown } = entry;
    expect(await new HistoryView().ofTrailer(tx, trailerId, { page: 1, perPage: 10 })).toEqual({
      rows: [
        {
          ...shown,
          id: expect.any(String),
          action: 'mend-trip',
          trailerId,
          at: new Date('2025-06-16T09:00:00Z'),
          detail: { of: 'mend-trip' },
        },
        expect.objectContaining({ action: 'record-trip' }),
      ],
      total: 2,
    });
  });
});

test('people join, change, cannot be reached, and leave without being forgotten', async () => {
  const personId = await aPerson(fresh.url, 'Wren Castell');
  await inYard(async (tx) => {
    const wren = { personId, role: 'hand' as const, name: 'Wren Castell', email: 'wren@yard.example' };
    await STORES.memberships.insert(tx, wren);
    const joined = { ...wren, cdl: null, leftOn: null, bouncedAt: null, bounceNote: null };
    expect(await STORES.memberships.find(tx, personId)).toEqual(joined);
    const bouncedAt = new Date('2025-06-16T12:00:00Z');
    const change = { role: 'shop' as const, cdl: 'B' as const, bouncedAt, bounceNote: '550 no such mailbox' };
    expect(await STORES.memberships.save(tx, personId, change)).toBe(true);
    expect(await STORES.memberships.save(tx, personId, { leftOn: day('2025-06-30') })).toBe(true);
    const left = { ...joined, ...change, leftOn: day('2025-06-30') };
    expect(await STORES.memberships.find(tx, personId)).toEqual(left);
    expect(await STORES.memberships.save(tx, personId, { leftOn: null, bouncedAt: null, bounceNote: null })).toBe(true);
    expect(await STORES.memberships.find(tx, personId)).toEqual({ ...joined, role: 'shop', cdl: 'B' });
    expect(await STORES.memberships.save(tx, newId(), { role: 'owner' })).toBe(false);
    expect((await STORES.memberships.list(tx)).map((one) => one.personId)).toContain(personId);
  });
});

test('an invitation is accepted once, and not after its time or once revoked', async () => {
  const expiresAt = new Date('2025-06-20T00:00:00Z');
  const before = new Date('2025-06-19T00:00:00Z');
  await inYard(async (tx) => {
    const invite = (tokenHash: string) =>
      STORES.invitations.insert(tx, {
        email: 'new@yard.example',
        name: 'New',
        role: 'hand',
        invitedBy: yard.ownerId,
        expiresAt,
        tokenHash,
      });
    const taken = await invite('a');
    expect(await STORES.invitations.accept(tx, taken, before)).toBe(true);
    expect(await STORES.invitations.accept(tx, taken, before)).toBe(false);
    expect(await STORES.invitations.revoke(tx, taken, before)).toBe(false);
    const revoked = await invite('b');
    expect(await STORES.invitations.revoke(tx, revoked, before)).toBe(true);
    expect(await STORES.invitations.accept(tx, revoked, before)).toBe(false);
    const late = await invite('c');
    expect(await STORES.invitations.accept(tx, late, expiresAt)).toBe(false);
    expect(await STORES.invitations.find(tx, late)).toMatchObject({ acceptedAt: null, revokedAt: null, expiresAt });
    expect((await STORES.invitations.list(tx)).length).toBe(3);
  });
});

test('a new id sorts after those made in milliseconds before it, and Postgres takes it', async () => {
  const [first, second] = [newId(), await new Promise<string>((resolve) => setTimeout(() => resolve(newId()), 5))];
  expect(second > first).toBe(true);
  expect(first).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(new Set(Array.from({ length: 1_000 }, newId)).size).toBe(1_000);
});
