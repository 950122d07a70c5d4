import pg from 'pg';
import type { Assessment } from '../../src/rules/assess.js';
import { addDays, day } from '../../src/rules/calendar/civil-date.js';
import { km } from '../../src/rules/units/distance.js';
import { metres } from '../../src/rules/units/length.js';
import { ApiTokenStore } from '../../src/store/api-token-store.js';
import { AuditStore } from '../../src/store/audit-store.js';
import { BuildStore } from '../../src/store/build-store.js';
import { CheckKindStore } from '../../src/store/check-kind-store.js';
import { CheckStore } from '../../src/store/check-store.js';
import type { Database } from '../../src/store/database.js';
import { HandoverStore } from '../../src/store/handover-store.js';
import { HoldStore } from '../../src/store/hold-store.js';
import { InvitationStore } from '../../src/store/invitation-store.js';
import { JobStore } from '../../src/store/job-store.js';
import { MachineStore } from '../../src/store/machine-store.js';
import { MembershipStore } from '../../src/store/membership-store.js';
import { newId } from '../../src/store/new-id.js';
import { PartStore } from '../../src/store/part-store.js';
import { ReadingStore } from '../../src/store/reading-store.js';
import type { Recorded } from '../../src/store/recorded.js';
import { ResultStore } from '../../src/store/result-store.js';
import { TowVehicleStore } from '../../src/store/tow-vehicle-store.js';
import { TrailerStore } from '../../src/store/trailer-store.js';
import { TripStore } from '../../src/store/trip-store.js';
import { YardStore } from '../../src/store/yard-store.js';
import {
  BARE_TRAILER,
  FULL_BUILD,
  FULL_MACHINE,
  FULL_READING,
  FULL_TIRE,
  FULL_TOW_VEHICLE,
  fullCheckKind,
  fullCheckRecord,
  fullHandover,
  fullJob,
  fullTrip,
} from './sample-facts.js';

export const STORES = {
  apiTokens: new ApiTokenStore(),
  audit: new AuditStore(),
  builds: new BuildStore(),
  checkKinds: new CheckKindStore(),
  checks: new CheckStore(),
  handovers: new HandoverStore(),
  holds: new HoldStore(),
  invitations: new InvitationStore(),
  jobs: new JobStore(),
  machines: new MachineStore(),
  memberships: new MembershipStore(),
  parts: new PartStore(),
  readings: new ReadingStore(),
  results: new ResultStore(),
  towVehicles: new TowVehicleStore(),
  trailers: new TrailerStore(),
  trips: new TripStore(),
  yards: new YardStore(),
};

export const BY_SEED: Recorded = { door: 'seed', recordedBy: null };

/** Runs one statement as the owner of the database, past every right and policy. */
export async function asOwner<Row extends pg.QueryResultRow>(
  url: string,
  sql: string,
  values: readonly unknown[] = [],
): Promise<Row[]> {
  const client = new pg.Client(url);
  await client.connect();
  try {
    return (await client.query<Row>(sql, [...values])).rows;
  } finally {
    await client.end();
  }
}

/** A person as sign-in would have made them. Returns the id. */
export async function aPerson(url: string, name: string): Promise<string> {
  const id = newId();
  const email = `${name.toLowerCase().replace(/\W+/g, '.')}.${id.slice(-6)}@yard.example`;
  await asOwner(url, 'insert into person (id, name, email, updated_at) values ($1, $2, $3, now())', [id, name, email]);
  return id;
}

export interface SampleYard {
  readonly yardId: string;
  readonly ownerId: string;
  readonly shopId: string;
}

/** A yard with an owner and somebody in the shop, and nothing else. */
export async function aYard(url: string, database: Database, name: string): Promise<SampleYard> {
  const yardId = newId();
  const ownerId = await aPerson(url, `Owner of ${name}`);
  const shopId = await aPerson(url, `Shop of ${name}`);
  await database.inYard(yardId, async (tx) => {
    await STORES.yards.insert(tx, { name, slug: `yard-${yardId}`, timeZone: 'America/Chicago' });
    for (const [personId, role] of [
      [ownerId, 'owner'],
      [shopId, 'shop'],
    ] as const) {
      await STORES.memberships.insert(tx, {
        personId,
        role,
        name: `${role} of ${name}`,
        email: `${role}@yard.example`,
      });
    }
  });
  return { yardId, ownerId, shopId };
}

export function anAssessment(asOf: string, more: Partial<Assessment> = {}): Assessment {
  const today = day(asOf);
  return {
    asOf: today,
    readiness: 'ready',
    ratings: null,
    contradictions: [],
    hubLives: [],
    deckLife: { outlook: null, probed: { soft: [], marked: [], lostM: metres(0) } },
    wear: [],
    due: [],
    flags: [],
    use: { totalKm: km(1_234.5), kmPerDay: 3.3, trips: 2, lastTripOn: today },
    unknowns: [],
    wakeOn: addDays(today, 30),
    ...more,
  };
}

/** Puts at least one row into every table that a yard has. Returns the trailer they are about. */
export async function fillYard(database: Database, yard: SampleYard): Promise<string> {
  return database.inYard(yard.yardId, async (tx) => {
    const trailerId = await STORES.trailers.insert(tx, BARE_TRAILER);
    await STORES.builds.insert(tx, trailerId, FULL_BUILD, BY_SEED);
    await STORES.parts.insert(tx, trailerId, { ...FULL_TIRE, removedOn: null, removedFor: null }, BY_SEED);
    const machineId = await STORES.machines.insert(tx, FULL_MACHINE, null);
    const towVehicleId = await STORES.towVehicles.insert(tx, FULL_TOW_VEHICLE);
    const towVehicle = { ...FULL_TOW_VEHICLE, id: towVehicleId };
    const job = fullJob({ trailerId, machineId, towVehicle, haulerPersonId: yard.shopId });
    const jobId = await STORES.jobs.insert(tx, job, BY_SEED);
    await STORES.trips.insert(tx, trailerId, fullTrip(machineId, jobId), BY_SEED);
    await STORES.readings.insert(tx, trailerId, FULL_READING, BY_SEED);
    const kindId = await STORES.checkKinds.save(tx, fullCheckKind(yard.ownerId, yard.shopId));
    const recordId = await STORES.checks.insert(
      tx,
      trailerId,
      { ...fullCheckRecord(kindId, yard.shopId), byName: 'Shop' },
      [{ mediaType: 'image/png', bytes: new Uint8Array([0x89, 0x50]) }],
      BY_SEED,
    );
    await STORES.holds.open(tx, trailerId, {
      openedOn: day('2025-04-30'),
      reason: 'hub runs hot',
      openedBy: yard.shopId,
      openedByName: 'Shop',
      checkRecordId: recordId,
    });
    await STORES.handovers.insert(
      tx,
      trailerId,
      { ...fullHandover(jobId), byPersonId: yard.shopId },
      [{ place: 1, mediaType: 'image/png', bytes: new Uint8Array([0x89, 0x50]) }],
      BY_SEED,
    );
    await STORES.results.save(
      tx,
      trailerId,
      anAssessment('2025-06-16', {
        due: [
          {
            checkKindId: kindId,
            code: 'hub-repack',
            state: 'overdue',
            dueOn: day('2025-06-01'),
            range: null,
            stops: null,
            failed: false,
            trigger: { kind: 'days', every: 90 },
            lastDoneOn: null,
            used: null,
            firstJobAtRisk: null,
            yardDays: [],
            unknown: null,
          },
        ],
        flags: [
          {
            key: 'on-hold:1',
            rule: 'on-hold',
            severity: 'stop',
            since: day('2025-04-30'),
            evidence: { kind: 'hold', holdId: '1', reason: 'hub runs hot' },
            clears: [{ kind: 'lift-hold', holdId: '1' }],
          },
        ],
      }),
    );
    await STORES.invitations.insert(tx, {
      email: 'new@yard.example',
      name: null,
      role: 'hand',
      invitedBy: yard.ownerId,
      expiresAt: new Date('2026-01-01T00:00:00Z'),
      tokenHash: `invitation of ${yard.yardId}`,
    });
    await STORES.apiTokens.insert(tx, { personId: yard.ownerId, name: 'till', tokenHash: `key of ${yard.yardId}` });
    await STORES.audit.append(tx, {
      personId: yard.ownerId,
      who: 'Owner',
      door: 'page',
      action: 'record-check',
      subject: 'check_record',
      subjectId: recordId,
      trailerId,
      detail: { outcome: 'fail' },
    });
    const noticeId = newId();
    await tx.notice.create({
      data: {
        id: noticeId,
        yardId: tx.yardId,
        personId: yard.shopId,
        kind: 'day',
        key: 'day:2025-06-16',
        toName: 'Shop',
        toEmail: 'shop@yard.example',
        subject: 'Today',
        bodyText: 'Repack the hubs of T-08.',
        bodyHtml: '<p>Repack the hubs of T-08.</p>',
        messageId: `<${noticeId}@yard.example>`,
        notBefore: new Date('2025-06-16T11:00:00Z'),
        items: {
          create: {
            id: newId(),
            itemKey: 'overdue:hub-repack',
            kind: 'overdue',
            trailerId,
            checkKindId: kindId,
            jobId,
            toldOn: new Date('2025-06-16'),
            item: {},
          },
        },
      },
    });
    await tx.noticeAnswer.create({
      data: {
        id: newId(),
        yardId: tx.yardId,
        itemKey: 'overdue:hub-repack',
        personId: yard.shopId,
        answer: 'done',
        checkRecordId: recordId,
        answeredOn: new Date('2025-06-17'),
      },
    });
    return trailerId;
  });
}
