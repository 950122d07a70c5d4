import { z } from 'zod';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { CheckKind, CheckRecord, Trigger } from '../../rules/facts/check.js';
import type { Load } from '../../rules/facts/load.js';
import type { Job, MeterReading, Trip } from '../../rules/facts/use.js';
import { DEFAULT_POLICY } from '../../rules/facts/yard-policy.js';
import { dueChecks } from '../../rules/inspection/due.js';
import { computation } from './computation.js';
import { answer, civilDay, plain, road } from './values.js';

const EVERY = z.int().min(1).max(100_000);
const KM = z.number().gt(0).max(1e6);
const dayOrNull = (what: string) => z.string().nullable().describe(`${what}; null where it cannot be said.`);

const input = z.object({
  asOf: civilDay('Day of asking'),
  lastDoneOn: civilDay('Day it was last done; null: never').nullable(),
  everyDays: plain('Every so many days', EVERY).nullable(),
  everyMonths: plain('Every so many months', z.int().min(1).max(600)).nullable(),
  toMonthEnd: z
    .boolean()
    .describe('Whether the months run to the end of the last one, as after a pass by a State program.'),
  everyKm: road('Every so many km', KM).nullable(),
  everyTrips: plain('Every so many trips', EVERY).nullable(),
  leadDays: plain('Days before it falls due from which it counts as due soon', z.int().min(0).max(365)),
  readings: z
    .array(z.strictObject({ takenOn: civilDay('Day of it'), shownKm: road('As shown on the meter') }))
    .max(450)
    .describe('Of the hub meter.'),
  trips: z
    .array(
      z.strictObject({
        startedOn: civilDay('First day'),
        endedOn: civilDay('Last day'),
        distanceKm: road('Distance').nullable(),
      }),
    )
    .max(450)
    .describe('Done so far.'),
  jobs: z
    .array(
      z.strictObject({
        startsOn: civilDay('First day'),
        endsOn: civilDay('Last day'),
        distanceKm: road('Distance').nullable(),
      }),
    )
    .max(450)
    .describe('Booked.'),
});

/** What is due; of several triggers whichever comes first. */
export const DUE_COMPUTATIONS = [
  computation({
    name: 'check-due',
    about: 'When a check falls due by days, months, distance or trips, whichever is first, and how sure that is.',
    source:
      'Calendar days and months; distance and trips by the use forecast from readings, trips and booked jobs (see use-forecast).',
    input,
    output: z.object({
      state: z.enum(['overdue', 'due-soon', 'later', 'never-done', 'unknown']).describe('How it stands.'),
      dueOn: dayOrNull('Last good day'),
      by: z.string().nullable().describe('Which of them comes first.'),
      used: z.looseObject({}).nullable().describe('How much of the distance or trips is used.'),
      tenPercentOn: dayOrNull('Come by then with one chance in ten, where it hangs on use'),
      halfOn: dayOrNull('As likely as not'),
      ninetyPercentOn: dayOrNull('With nine chances in ten'),
      unknown: z.string().nullable().describe('What is missing to say it.'),
      yardDays: answer('Days in the yard until then, or until the first job at risk'),
    }),
    example: {
      ...{ asOf: '2026-06-02', lastDoneOn: '2025-06-02', everyDays: null, everyMonths: 12, toMonthEnd: true },
      ...{ everyKm: 19_312.128, everyTrips: null, leadDays: 30 },
      readings: [
        { takenOn: '2025-06-02', shownKm: 1_000 },
        { takenOn: '2025-12-01', shownKm: 8_200 },
        { takenOn: '2026-05-30', shownKm: 15_400 },
      ],
      trips: [],
      jobs: [{ startsOn: '2026-06-10', endsOn: '2026-06-12', distanceKm: 640 }],
    },
    compute: (given) => {
      const triggers = triggersOf(given);
      if (triggers.length === 0)
        throw new RangeError('"everyDays", "everyMonths", "everyKm" and "everyTrips" are all null: give one.');
      refuseBackwards(given);
      const [due] = dueChecks(factsOf(given, triggers), given.asOf);
      if (due === undefined) throw new RangeError('"asOf": nothing is due of a check that is not there.');
      return {
        ...{ state: due.state, dueOn: due.dueOn, by: due.trigger?.kind ?? null, unknown: due.unknown },
        used: due.used === null ? null : { ...due.used },
        tenPercentOn: due.range?.p10 ?? null,
        halfOn: due.range?.p50 ?? null,
        ninetyPercentOn: due.range?.p90 ?? null,
        yardDays: due.yardDays.length,
      };
    },
  }),
];

type Given = z.output<typeof input>;

function triggersOf({ everyDays, everyMonths, toMonthEnd, everyKm, everyTrips }: Given): readonly Trigger[] {
  const all: (Trigger | null)[] = [
    everyDays === null ? null : { kind: 'days', every: everyDays },
    everyMonths === null ? null : { kind: 'months', every: everyMonths, toMonthEnd },
    everyKm === null ? null : { kind: 'distance', everyKm },
    everyTrips === null ? null : { kind: 'trips', every: everyTrips },
  ];
  return all.filter((trigger) => trigger !== null);
}

function refuseBackwards({ trips, jobs }: Given): void {
  const refuse = (list: string, from: string, to: string, place: number) => {
    if (place >= 0) throw new RangeError(`"${list}[${place}].${to}" must not lie before its "${from}".`);
  };
  refuse(
    'trips',
    'startedOn',
    'endedOn',
    trips.findIndex(({ startedOn, endedOn }) => endedOn < startedOn),
  );
  refuse(
    'jobs',
    'startsOn',
    'endsOn',
    jobs.findIndex(({ startsOn, endsOn }) => endsOn < startsOn),
  );
}

/** A trailer of which only this is known. */
function factsOf({ lastDoneOn, toMonthEnd, leadDays, readings, trips, jobs }: Given, triggers: readonly Trigger[]) {
  return {
    trailer: {
      ...{ id: 'trailer', yardNumber: 'trailer', name: null, vin: null, status: 'in-service' as const, stored: null },
      ...{ boughtOn: null, registrationExpiresOn: null, insuranceExpiresOn: null },
    },
    ...{ builds: [], parts: [], holds: [], machines: [], decks: [], policy: DEFAULT_POLICY },
    checkKinds: [{ ...CHECK, triggers, leadDays }],
    checkRecords: lastDoneOn === null ? [] : [recordOn(lastDoneOn, toMonthEnd)],
    readings: readings.map(
      (one, place): MeterReading => ({ id: `r${place}`, ...one, kind: 'read', meterSpanKm: null }),
    ),
    trips: trips.map((one, place): Trip => ({ ...TRIP, id: `t${place}`, ...one })),
    jobs: jobs.map((one, place): Job => ({ ...JOB, id: `j${place}`, ...one })),
  };
}

const CHECK: Omit<CheckKind, 'triggers' | 'leadDays'> = {
  ...{ id: 'check', code: 'check', name: 'check', source: '', safety: false, blocks: 'none', proof: null, lines: [] },
  ...{ ownerPersonId: null, backupPersonId: null },
  appliesTo: {
    ...{ bodies: null, suspensions: null, brakes: null, hitches: null },
    ...{ deckMaterials: null, lubricants: null, ramps: null },
  },
  work: { hours: 0, place: 'yard', parts: [], bundle: null, together: [] },
};

function recordOn(doneOn: CivilDate, byState: boolean): CheckRecord {
  return {
    ...{ id: 'done', checkKindId: 'check', doneOn, outcome: 'pass', byPersonId: null, lines: [] },
    ...{ inspectedBy: byState ? 'state' : null, proofOnTrailer: null, costCents: null },
  };
}

const NOTHING: Load = {
  cargo: [],
  balancePointM: null,
  scale: null,
  hitchHeightM: null,
  offCentreM: null,
  tieDowns: null,
};
const TRIP: Omit<Trip, 'id' | 'startedOn' | 'endedOn' | 'distanceKm'> = {
  machineId: null,
  load: NOTHING,
  roads: null,
  jobId: null,
};
const JOB: Omit<Job, 'id' | 'startsOn' | 'endsOn' | 'distanceKm'> = {
  ...{ name: 'job', state: 'booked', work: 'own', commercial: null, machineId: null, load: NOTHING },
  ...{ towVehicle: null, driver: null, haulerPersonId: null },
};
