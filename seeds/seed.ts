import type { INestApplicationContext } from '@nestjs/common';
import { addDays, addMonths, type CivilDate, latest } from '../src/rules/calendar/civil-date.js';
import type { CheckKind, CheckRecord } from '../src/rules/facts/check.js';
import type { Machine } from '../src/rules/facts/load.js';
import { thingsToSee } from '../src/rules/handover/things-to-see.js';
import { dateCodeOf } from '../src/rules/tire/date-code.js';
import { wheelPositions } from '../src/rules/trailer/wheel-positions.js';
import { miles } from '../src/rules/units/distance.js';
import { lb } from '../src/rules/units/mass.js';
import { psi } from '../src/rules/units/pressure.js';
import { CheckKindStore } from '../src/store/check-kind-store.js';
import { CheckStore } from '../src/store/check-store.js';
import { Database, type YardTx } from '../src/store/database.js';
import { HandoverStore } from '../src/store/handover-store.js';
import { JobStore } from '../src/store/job-store.js';
import { MachineStore } from '../src/store/machine-store.js';
import { newId } from '../src/store/new-id.js';
import { ReadingStore } from '../src/store/reading-store.js';
import { TowVehicleStore } from '../src/store/tow-vehicle-store.js';
import { TrailerStore } from '../src/store/trailer-store.js';
import { TripStore } from '../src/store/trip-store.js';
import { YardStore } from '../src/store/yard-store.js';
import { RebuildResults } from '../src/use-cases/assessments/rebuild-results.js';
import type { Caller } from '../src/use-cases/caller.js';
import { HandOut } from '../src/use-cases/handovers/hand-out.js';
import { TakeBack } from '../src/use-cases/handovers/take-back.js';
import { OpenHold } from '../src/use-cases/holds/open-hold.js';
import { BookJob } from '../src/use-cases/jobs/book-job.js';
import type { Outcome } from '../src/use-cases/outcome.js';
import { AddTrailer } from '../src/use-cases/trailers/add-trailer.js';
import { FitPart } from '../src/use-cases/trailers/fit-part.js';
import { SetYardSettings } from '../src/use-cases/yard/set-yard-settings.js';
import { demoChecks, SOFT_TIRES } from './demo/checks.js';
import type { DemoToFill } from './demo/demo-to-fill.js';
import { DEMO_HANDOVERS } from './demo/handovers.js';
import { DEMO_HOLDS } from './demo/holds.js';
import { DEMO_JOBS, DEMO_TOW_VEHICLES, type DemoJob } from './demo/jobs.js';
import { DEMO_MACHINES } from './demo/machines.js';
import { DEMO_TRAILERS, type DemoTrailer } from './demo/trailers.js';
import { demoReadings, demoTrips } from './demo/trips.js';

/** How far back the demo yard's records go. */
const DAYS_BACK = 730;

/**
 * Fills the demo yard: machines, trailers, two years of use and checks, jobs to come. Dates count from the caller's today.
 * What a person would type goes through the use cases; two years of history go straight into the stores, many at a time.
 * Safe to run twice: what is there already is left alone, so a start that was cut off goes on where it stopped.
 */
export async function seedDemo(app: INestApplicationContext, demo: DemoToFill): Promise<void> {
  const { caller } = demo;
  const database = app.get(Database);
  const machines = await database.inYard(caller.yardId, (tx) => seedMachines(tx, app.get(MachineStore)));
  const towVehicles = await database.inYard(caller.yardId, (tx) => seedTowVehicles(tx, app.get(TowVehicleStore)));
  const checkKinds = await database.inYard(caller.yardId, (tx) => assignChecks(tx, app.get(CheckKindStore), demo));

  await setClimate(app, caller);
  const trailerIds = new Map<string, string>();
  for (const each of DEMO_TRAILERS) {
    const { yardNumber } = each.trailer;
    const known = await database.inYard(caller.yardId, (tx) => app.get(TrailerStore).findByNumber(tx, yardNumber));
    const id = known?.id ?? (await addTrailer(app, caller, each));
    trailerIds.set(yardNumber, id);
    await layLaterDecks(app, caller, id, each);
    await database.inYard(caller.yardId, (tx) => seedHistory(tx, app, caller, id, each, machines, checkKinds));
  }
  await seedJobs(app, demo, trailerIds, machines, towVehicles);
  await seedHolds(app, caller, trailerIds);
  await seedHandovers(app, caller, trailerIds);
  must(await app.get(RebuildResults).run(caller));
}

/** A decay index of the humid middle of the country; the demo yard stands nowhere. */
const DEMO_DECAY_INDEX = 55;

async function setClimate(app: INestApplicationContext, caller: Caller): Promise<void> {
  const { policy } = await app.get(Database).inYard(caller.yardId, (tx) => app.get(YardStore).get(tx));
  if (policy.decayIndex !== null) return;
  must(await app.get(SetYardSettings).run(caller, { policy: { decayIndex: DEMO_DECAY_INDEX } }));
}

async function seedMachines(tx: YardTx, store: MachineStore): Promise<ReadonlyMap<string, Machine>> {
  const there = await store.list(tx);
  const machines = new Map<string, Machine>();
  for (const { key, replaces, ...machine } of DEMO_MACHINES) {
    const known = there.find((each) => each.name === machine.name);
    const replacesMachineId = replaces === null ? null : (machines.get(replaces)?.id ?? null);
    const id = known?.id ?? (await store.insert(tx, { ...machine, replacesMachineId }, null));
    machines.set(key, { ...machine, replacesMachineId, id });
  }
  return machines;
}

async function seedTowVehicles(tx: YardTx, store: TowVehicleStore): Promise<ReadonlyMap<string, string>> {
  const there = await store.list(tx);
  const ids = new Map<string, string>();
  for (const { key, ...vehicle } of DEMO_TOW_VEHICLES) {
    ids.set(key, there.find((each) => each.name === vehicle.name)?.id ?? (await store.insert(tx, vehicle)));
  }
  return ids;
}

/** The shop answers for work with parts and tools, the hand for looking; each is the other's backup. */
async function assignChecks(
  tx: YardTx,
  store: CheckKindStore,
  { personIdOf }: DemoToFill,
): Promise<readonly CheckKind[]> {
  for (const kind of await store.list(tx)) {
    const [ownerPersonId, backupPersonId] =
      kind.work.place === 'shop' ? [personIdOf.shop, personIdOf.owner] : [personIdOf.hand, personIdOf.shop];
    if (kind.ownerPersonId === null) await store.save(tx, { ...kind, ownerPersonId, backupPersonId });
  }
  return store.list(tx);
}

/** Of one tire on its wheel (our invention). */
const TIRE_CENTS = { ST: 17_500, LT: 21_000, passenger: 12_000, truck: 41_000 } as const;

async function addTrailer(app: INestApplicationContext, caller: Caller, demo: DemoTrailer): Promise<string> {
  const { today } = caller;
  const { boughtYearsAgo, ...trailer } = demo.trailer;
  const boughtOn = addMonths(today, -12 * boughtYearsAgo);
  const tire = (position: string, weeks: number) => {
    const madeOn = addDays(today, -7 * weeks);
    // A tire is fitted some weeks after it is made, and not before the trailer was bought.
    return {
      kind: 'tire' as const,
      position,
      fittedOn: latest([addDays(madeOn, 60), boughtOn]),
      tire: { ...demo.tire, dateCode: dateCodeOf(madeOn) },
      // What comes with a trailer is in its price.
      costCents: addDays(madeOn, 60) > boughtOn ? TIRE_CENTS[demo.tire.kind ?? 'ST'] : null,
    };
  };
  const build = { ...demo.build, id: '', effectiveFrom: boughtOn };
  const wheels = wheelPositions(build).filter((position) => position !== 'spare');
  const added = must(
    await app.get(AddTrailer).run(caller, {
      ...trailer,
      boughtOn,
      registrationExpiresOn: addDays(today, 40 + 23 * boughtYearsAgo),
      insuranceExpiresOn: addDays(today, 150),
      build: demo.build,
      builtSince: boughtOn,
      parts: [
        ...wheels.map((position) => tire(position, demo.tireWeeks)),
        ...(demo.spareWeeks === null ? [] : [tire('spare', demo.spareWeeks)]),
        { kind: 'deck' as const, fittedOn: boughtOn },
        ...build.axles.flatMap(({ number }) =>
          ['L', 'R'].map((side) => ({
            kind: 'hub-bearings' as const,
            position: `${number}${side}`,
            fittedOn: boughtOn,
            bearings: demo.bearings,
          })),
        ),
        { kind: 'coupler' as const, fittedOn: boughtOn },
      ],
    }),
  );
  return added.trailerId;
}

/** Boards and work of a new deck (our invention). */
const DECK_CENTS = 165_000;

/** The deck the trailer was bought with, and each after it, until the one that lies now. */
async function layLaterDecks(
  app: INestApplicationContext,
  caller: Caller,
  trailerId: string,
  demo: DemoTrailer,
): Promise<void> {
  const facts = await app.get(Database).inYard(caller.yardId, (tx) => app.get(TrailerStore).findFacts(tx, trailerId));
  const laid = (facts?.parts ?? []).filter((part) => part.kind === 'deck').length;
  let fittedOn = addMonths(caller.today, -12 * demo.trailer.boughtYearsAgo);
  for (const [at, former] of demo.formerDecks.entries()) {
    fittedOn = addMonths(fittedOn, former.monthsOld);
    if (at + 1 < laid) continue;
    must(
      await app
        .get(FitPart)
        .run(caller, { trailerId, kind: 'deck', fittedOn, replacedFor: former.removedFor, costCents: DECK_CENTS }),
    );
  }
}

/** Trips, readings and checks of one trailer, all or none. */
async function seedHistory(
  tx: YardTx,
  app: INestApplicationContext,
  caller: Caller,
  trailerId: string,
  demo: DemoTrailer,
  machines: ReadonlyMap<string, Machine>,
  checkKinds: readonly CheckKind[],
): Promise<void> {
  const facts = await app.get(TrailerStore).findFacts(tx, trailerId);
  if (facts === null || facts.trips.length > 0) return;
  const { today } = caller;
  const recorded = { door: 'seed', recordedBy: null } as const;
  const trips = demoTrips(demo.trailer.yardNumber, demo.build, (key) => mustFind(machines, key), today).map((trip) => ({
    ...trip,
    id: newId(),
    jobId: null,
  }));
  await app.get(TripStore).insertMany(
    tx,
    trips.map((trip) => ({ trailerId, trip, recorded })),
  );
  for (const reading of demoReadings(trips, 1_200, today)) {
    await app.get(ReadingStore).insert(tx, trailerId, { ...reading, kind: 'read', meterSpanKm: null }, recorded);
  }
  const used = (await app.get(TrailerStore).findFacts(tx, trailerId)) ?? facts;
  const from = addDays(today, -DAYS_BACK);
  const soft =
    demo.trailer.yardNumber === SOFT_TIRES.yardNumber
      ? [softTires(checkKinds, demo, addDays(today, -SOFT_TIRES.daysAgo))]
      : [];
  await app.get(CheckStore).insertMany(
    tx,
    [...demoChecks({ ...used, checkKinds }, from, today), ...soft].map(({ id: _made, ...record }) => ({
      trailerId,
      record: { ...record, byName: 'Tomas Reyle' },
      recorded,
    })),
  );
}

function softTires(kinds: readonly CheckKind[], demo: DemoTrailer, doneOn: CivilDate): CheckRecord {
  const kind = kinds.find((each) => each.code === 'tire-pressure');
  const line = kind?.lines.find((each) => each.quantity === 'cold-pressure-kpa');
  if (kind === undefined || line === undefined) throw new Error('the demo yard has no check of tire pressures');
  const wheels = wheelPositions({ ...demo.build, id: '', effectiveFrom: doneOn }).filter((each) => each !== 'spare');
  return {
    id: '',
    checkKindId: kind.id,
    doneOn,
    outcome: 'pass',
    byPersonId: null,
    inspectedBy: null,
    proofOnTrailer: null,
    costCents: null,
    lines: wheels.map((position) => ({
      code: line.code,
      result: 'ok',
      position,
      measured: { quantity: 'cold-pressure-kpa', value: psi(SOFT_TIRES.coldPsi) },
    })),
  };
}

async function seedJobs(
  app: INestApplicationContext,
  { caller, personIdOf }: DemoToFill,
  trailerIds: ReadonlyMap<string, string>,
  machines: ReadonlyMap<string, Machine>,
  towVehicles: ReadonlyMap<string, string>,
): Promise<void> {
  const there = await app.get(Database).inYard(caller.yardId, (tx) => app.get(JobStore).list(tx));
  for (const job of DEMO_JOBS) {
    if (there.some((each) => each.name === job.name)) continue;
    const startsOn = addDays(caller.today, job.startsInDays);
    const machine = mustFind(machines, job.machine);
    must(
      await app.get(BookJob).run(caller, {
        name: job.name,
        trailerId: job.yardNumber === null ? null : mustFind(trailerIds, job.yardNumber),
        startsOn,
        endsOn: addDays(startsOn, job.days - 1),
        distanceKm: miles(job.miles),
        work: job.work,
        customer: job.customer,
        commercial: job.commercial,
        machineId: machine.id,
        load: { cargo: cargoOf(job, machine) },
        towVehicleId: job.truck === null ? null : mustFind(towVehicles, job.truck),
        driver: job.driver,
        haulerPersonId: job.hauler === null ? null : personIdOf[job.hauler],
      }),
    );
  }
}

function cargoOf(job: DemoJob, machine: Machine) {
  return [
    { name: machine.name, massKg: machine.massKg ?? lb(0), basis: machine.basis, machineId: machine.id },
    ...job.aboard.map((item) => ({
      name: item.name,
      massKg: lb(item.lb),
      basis: 'assumed' as const,
      remedy: item.remedy,
    })),
  ];
}

async function seedHolds(
  app: INestApplicationContext,
  caller: Caller,
  trailerIds: ReadonlyMap<string, string>,
): Promise<void> {
  for (const { yardNumber, reason } of DEMO_HOLDS) {
    const trailerId = mustFind(trailerIds, yardNumber);
    const facts = await app.get(Database).inYard(caller.yardId, (tx) => app.get(TrailerStore).findFacts(tx, trailerId));
    if (facts !== null && facts.holds.length === 0) must(await app.get(OpenHold).run(caller, { trailerId, reason }));
  }
}

async function seedHandovers(
  app: INestApplicationContext,
  caller: Caller,
  trailerIds: ReadonlyMap<string, string>,
): Promise<void> {
  const { today } = caller;
  for (const { yardNumber, customer, hitch, ...hire } of DEMO_HANDOVERS) {
    const trailerId = mustFind(trailerIds, yardNumber);
    const there = await app.get(Database).inYard(caller.yardId, (tx) => app.get(HandoverStore).history(tx, trailerId));
    const demo = DEMO_TRAILERS.find(({ trailer }) => trailer.yardNumber === yardNumber);
    const build = demo === undefined ? null : { ...demo.build, id: '', effectiveFrom: today };
    const seen = thingsToSee(build).map((one) => ({ ...one, condition: 'sound' as const }));
    const signature = { name: customer, strokes: [] };
    if (there.length === 0) {
      const on = addDays(today, -hire.outDaysAgo);
      must(await app.get(HandOut).run(caller, { trailerId, customer, on, hitch, seen, signature }));
    }
    if (there.length > 1 || hire.backDaysAgo === null) continue;
    const back = seen.map((one) => {
      const found = hire.changed.find(({ thing, position }) => thing === one.thing && position === one.position);
      return found === undefined ? one : { ...one, condition: found.is };
    });
    const on = addDays(today, -hire.backDaysAgo);
    must(await app.get(TakeBack).run(caller, { trailerId, on, seen: back, signature }));
  }
}

/** The demo data is ours and must be right: a refusal is a mistake in it. */
function must<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(`the demo yard was refused: ${JSON.stringify(outcome.problem)}`);
}

function mustFind<T>(map: ReadonlyMap<string, T>, key: string): T {
  const found = map.get(key);
  if (found === undefined) throw new Error(`the demo yard has no ${key}`);
  return found;
}
