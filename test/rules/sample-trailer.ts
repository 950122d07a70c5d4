import { day } from '../../src/rules/calendar/civil-date.js';
import type { AppliesTo, CheckKind, CheckRecord, Trigger } from '../../src/rules/facts/check.js';
import type { Machine } from '../../src/rules/facts/load.js';
import type { TrailerFacts } from '../../src/rules/facts/trailer-facts.js';
import type { Job, MeterReading, TowVehicle, Trip } from '../../src/rules/facts/use.js';
import { DEFAULT_POLICY } from '../../src/rules/facts/yard-policy.js';
import { miles } from '../../src/rules/units/distance.js';
import { lb } from '../../src/rules/units/mass.js';
import { build, load, tires } from './sample-facts.js';

/** A trailer of which only the build is known, unless said otherwise. */
export function facts(more: Partial<TrailerFacts> = {}): TrailerFacts {
  return {
    trailer: trailer(),
    builds: [build()],
    parts: tires(2),
    trips: [],
    readings: [],
    jobs: [],
    checkKinds: [],
    checkRecords: [],
    holds: [],
    machines: [],
    decks: [],
    policy: DEFAULT_POLICY,
    ...more,
  };
}

export function trailer(more: Partial<TrailerFacts['trailer']> = {}): TrailerFacts['trailer'] {
  return {
    id: 'trailer-1',
    yardNumber: 'T-01',
    name: null,
    vin: null,
    status: 'in-service',
    boughtOn: null,
    registrationExpiresOn: null,
    insuranceExpiresOn: null,
    stored: null,
    ...more,
  };
}

export const ANY_BUILD: AppliesTo = {
  bodies: null,
  suspensions: null,
  brakes: null,
  hitches: null,
  deckMaterials: null,
  lubricants: null,
  ramps: null,
};

export function kind(code: string, triggers: readonly Trigger[], more: Partial<CheckKind> = {}): CheckKind {
  return {
    id: `kind-${code}`,
    code,
    name: code,
    triggers,
    appliesTo: ANY_BUILD,
    safety: false,
    blocks: 'none',
    proof: null,
    work: { hours: 1, place: 'yard', parts: [], bundle: null, together: [] },
    leadDays: 10,
    ownerPersonId: null,
    backupPersonId: null,
    source: 'test',
    lines: [],
    ...more,
  };
}

export function done(code: string, on: string, more: Partial<CheckRecord> = {}): CheckRecord {
  return {
    id: `record-${code}-${on}`,
    checkKindId: `kind-${code}`,
    doneOn: day(on),
    outcome: 'pass',
    byPersonId: null,
    lines: [],
    inspectedBy: null,
    proofOnTrailer: null,
    costCents: null,
    ...more,
  };
}

/** A trip of one day, empty, with its miles. */
export function trip(on: string, mi: number | null, more: Partial<Trip> = {}): Trip {
  return {
    id: `trip-${on}-${mi}`,
    startedOn: day(on),
    endedOn: day(on),
    distanceKm: mi === null ? null : miles(mi),
    machineId: null,
    load: load(),
    roads: [],
    jobId: null,
    ...more,
  };
}

export function reading(on: string, mi: number, more: Partial<MeterReading> = {}): MeterReading {
  return { id: `reading-${on}-${mi}`, takenOn: day(on), shownKm: miles(mi), kind: 'read', meterSpanKm: null, ...more };
}

/** A booked job of one day. */
export function job(on: string, more: Partial<Job> = {}): Job {
  return {
    id: `job-${on}`,
    name: `Job of ${on}`,
    startsOn: day(on),
    endsOn: day(on),
    state: 'booked',
    distanceKm: null,
    work: 'own',
    commercial: null,
    machineId: null,
    load: load(),
    towVehicle: null,
    driver: null,
    haulerPersonId: null,
    ...more,
  };
}

export function machine(id: string, pounds: number, more: Partial<Machine> = {}): Machine {
  return {
    id,
    name: id,
    massKg: lb(pounds),
    basis: 'weighed',
    lengthM: null,
    widthM: null,
    balancePointM: null,
    contact: null,
    contactCount: null,
    contactLengthM: null,
    contactWidthM: null,
    wheelbaseM: null,
    clearanceM: null,
    replacesMachineId: null,
    ...more,
  };
}

export function towVehicle(more: Partial<TowVehicle> = {}): TowVehicle {
  return {
    id: 'truck-1',
    name: 'Truck',
    gvwrKg: null,
    massKg: null,
    gcwrKg: null,
    hitchRatingKg: null,
    hitchTongueN: null,
    ballSizeM: null,
    ballHeightM: null,
    ...more,
  };
}
