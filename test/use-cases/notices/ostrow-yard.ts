import { day } from '../../../src/rules/calendar/civil-date.js';
import type { CheckKind } from '../../../src/rules/facts/check.js';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';
import { miles } from '../../../src/rules/units/distance.js';
import { CheckKindStore } from '../../../src/store/check-kind-store.js';
import { MembershipStore } from '../../../src/store/membership-store.js';
import { newId } from '../../../src/store/new-id.js';
import { YardStore } from '../../../src/store/yard-store.js';
import type { Caller, Role } from '../../../src/use-cases/caller.js';
import { RecordCheck } from '../../../src/use-cases/checks/record-check.js';
import { BookJob } from '../../../src/use-cases/jobs/book-job.js';
import { AddTrailer } from '../../../src/use-cases/trailers/add-trailer.js';
import { RecordTrip } from '../../../src/use-cases/trips/record-trip.js';
import { aBuild, tiresOn } from '../../support/trailers.js';
import { callerAt, type NoticeService, value } from './notice-service.js';

export interface Person {
  readonly personId: string;
  readonly name: string;
  readonly role: Role;
  readonly address: string;
}

/** A yard with an owner, a mechanic and a hand; Dale of the shop has the hubs, and Wren stands in for him. */
export interface OstrowYard {
  readonly yardId: string;
  readonly timeZone: string;
  readonly marta: Person;
  readonly dale: Person;
  readonly wren: Person;
  readonly hubs: CheckKind;
  at(iso: string, who?: Person): Caller;
}

export async function ostrowYard(service: NoticeService, timeZone = 'America/Chicago'): Promise<OstrowYard> {
  const yardId = newId();
  const [marta, dale, wren] = [
    await person(service, 'Marta Ostrow', 'owner'),
    await person(service, 'Dale Finch', 'shop'),
    await person(service, 'Wren Castell', 'hand'),
  ];
  const hubs = await service.database.inYard(yardId, async (tx) => {
    const yard = { name: 'Ostrow Fencing', slug: `ostrow-${yardId.slice(-6)}`, timeZone };
    await service.get(YardStore).insert(tx, yard);
    for (const { personId, name, role, address } of [marta, dale, wren]) {
      await service.get(MembershipStore).insert(tx, { personId, role, name, email: address });
    }
    const kind = DEFAULT_CHECK_KINDS.find(({ code }) => code === 'hub-repack');
    if (kind === undefined) throw new Error('no hub repack among the default checks');
    const owned = { ...kind, ownerPersonId: dale.personId, backupPersonId: wren.personId };
    return { ...owned, id: await service.get(CheckKindStore).save(tx, owned) };
  });
  return {
    yardId,
    timeZone,
    marta,
    dale,
    wren,
    hubs,
    at: (iso, who) => callerAt(iso, { yardId, timeZone }, who ?? null),
  };
}

/** Job card section 12, scenario 12: last repacked 2 June 2024, 3,100 miles since, three jobs to come. */
export async function trailerSeven(service: NoticeService, yard: OstrowYard, yardNumber = 'T-07') {
  const caller = yard.at('2025-05-11T15:00:00Z', yard.marta);
  const { trailerId } = value(
    await service.get(AddTrailer).run(yard.at('2023-05-01T15:00:00Z', yard.marta), {
      yardNumber,
      name: 'the long black one',
      build: aBuild(),
      parts: tiresOn(2, { fittedOn: day('2023-05-01'), dateCode: '1023' }),
    }),
  );
  value(
    await service.get(RecordCheck).run(caller, {
      trailerId,
      checkKindId: yard.hubs.id,
      doneOn: day('2024-06-02'),
      outcome: 'pass',
    }),
  );
  for (const [startedOn, endedOn, far] of [
    ['2024-08-05', '2024-08-08', 1_600],
    ['2025-03-03', '2025-03-06', 1_500],
  ] as const) {
    value(
      await service.get(RecordTrip).run(caller, {
        trailerId,
        startedOn: day(startedOn),
        endedOn: day(endedOn),
        distanceKm: miles(far),
        roads: [],
      }),
    );
  }
  const jobs = new Map<string, string>();
  for (const [name, on] of [
    ['Mill St fence', '2025-05-20'],
    ['Depot gates', '2025-05-28'],
    ['Hollow Rd', '2025-06-09'],
  ] as const) {
    const { jobId } = value(
      await service.get(BookJob).run(caller, {
        trailerId,
        name,
        startsOn: day(on),
        endsOn: day(on),
        distanceKm: miles(140),
        haulerPersonId: yard.wren.personId,
      }),
    );
    jobs.set(name, jobId);
  }
  return { trailerId, jobs };
}

async function person(service: NoticeService, name: string, role: Role): Promise<Person> {
  const personId = newId();
  const address = `${name.toLowerCase().replace(' ', '.')}.${personId.slice(-6)}@ostrow.example`;
  await service.sql('insert into person (id, name, email, updated_at) values ($1, $2, $3, now())', [
    personId,
    name,
    address,
  ]);
  return { personId, name, role, address };
}
