import { z } from 'zod';
import { BUILD } from './build-schema.js';
import { CHECK_KIND, CHECK_RECORD, HOLD } from './check-schema.js';
import { EXPLAINED_FIT, FIT } from './fit-schema.js';
import { HANDOVER } from './handover-schema.js';
import { KEPT_MACHINE, MACHINE, TOW_VEHICLE } from './load-schema.js';
import { ASSESSMENT, CONTRADICTION, DUE, FLAG, READINESS, TRAILER_CLASS, UNKNOWN } from './result-schema.js';
import { DECK_LIFE, PART, STATUS, TRAILER, TRAILER_FACT } from './trailer-schema.js';
import { CDL, JOB, KEPT_JOB, READING, TRIP } from './use-schema.js';
import { computed, DAY, ID, INSTANT, known } from './values.js';
import { WORKING } from './working-schema.js';

/** A page of a list. */
function page<Row extends z.ZodType>(row: Row) {
  return z.object({
    rows: z.array(row),
    total: z.int().describe('How many there are on all pages.'),
    page: z.int(),
    perPage: z.int(),
  });
}

const RAISED = z.array(FLAG).describe('Flags that this put up.');
const TRAILER_NAME = z.object({ id: ID, number: z.string(), name: z.string().nullable() });
const NEXT_JOB = z.object({ id: ID, name: z.string(), startsOn: DAY });
const COUNT = z.int();

/** A fact with how it was told. */
function told<Fact extends z.ZodType>(fact: Fact) {
  return page(
    z.object({
      fact: fact.nullable().describe('Null in the row that only takes another back.'),
      correctsId: ID.nullable().describe('The earlier row that this one mends or takes back.'),
      withdrawn: z.boolean().describe('Whether this row takes another back.'),
      standing: z.boolean().describe('False once a later row mended it or took it back.'),
      recordedAt: INSTANT,
      recordedBy: ID.nullable(),
      door: z.string().describe('The way it came in.'),
    }),
  );
}

export const ME = z.object({
  yardId: ID,
  personId: ID.nullable(),
  name: z.string(),
  role: z.enum(['owner', 'shop', 'hand', 'viewer']),
  today: DAY.describe("The day it is in the yard's time zone."),
  timeZone: z.string(),
});

export const TRAILERS = page(
  z.object({
    id: ID,
    number: z.string(),
    status: STATUS,
    stopFlags: COUNT,
    limitFlags: COUNT,
    watchFlags: COUNT,
    overdue: COUNT,
    ...known({
      name: z.string(),
      readiness: READINESS,
      trailerClass: TRAILER_CLASS,
      payloadKg: computed('kg'),
      nextDueOn: DAY,
      nextJob: NEXT_JOB,
    }),
  }),
).extend({ counts: z.object({ ready: COUNT, due: COUNT, down: COUNT, gone: COUNT }) });

export const TRAILER_READ = z.object({
  trailer: TRAILER,
  build: BUILD.nullable(),
  parts: z.array(PART),
  holds: z.array(HOLD),
  assessment: ASSESSMENT,
});

const POLICY = z.object({
  tireAgeLimitYears: computed('Years from the date code after which a tire is replaced.'),
  weighFirstShare: computed('Share of a limit within which an unmeasured weight is never good enough, 0 to 1.'),
  useWindowDays: z.int().describe('Recent days from which the usual use is learned.'),
  driftTrips: z.int().describe('Trips looked back on for class drift.'),
  decayIndex: computed('Decay hazard index of the place (Scheffer).').nullable(),
  deckLifeYears: computed('Years the owner expects a deck to last here in the open.').nullable(),
});

export const TRAILER_FACTS = z.object({
  trailer: TRAILER_FACT,
  builds: z.array(BUILD),
  parts: z.array(PART),
  trips: z.array(TRIP),
  readings: z.array(READING),
  jobs: z.array(JOB),
  checkKinds: z.array(CHECK_KIND),
  checkRecords: z.array(CHECK_RECORD),
  holds: z.array(HOLD),
  machines: z.array(MACHINE),
  decks: z.array(DECK_LIFE),
  policy: POLICY,
});

const VIN_DOUBT = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('bad-length'), vin: z.string(), length: COUNT }),
    z.object({ kind: z.literal('bad-check-digit'), vin: z.string(), found: z.string(), expected: z.string() }),
  ])
  .nullable()
  .describe('What is odd about the VIN. Said, not blocking.');

export const TRAILER_ADDED = z.object({
  trailerId: ID,
  contradictions: z.array(CONTRADICTION),
  vinDoubt: VIN_DOUBT,
  unknowns: z.array(UNKNOWN),
});
export const TRAILER_UPDATED = z.object({
  trailerId: ID,
  vinDoubt: VIN_DOUBT,
  jobsWithoutTrailer: z.array(ID).describe('Jobs that were booked with a trailer that has now gone.'),
});

export const BUILDS = told(BUILD);
export const PARTS = told(PART);
export const TRIPS = told(TRIP);
export const READINGS = told(READING);
export const CHECKS = told(CHECK_RECORD);
export const HANDOVERS = told(HANDOVER);

export const BUILD_REVISED = z.object({ buildSheetId: ID, contradictions: z.array(CONTRADICTION), raised: RAISED });
export const PART_FITTED = z.object({ partId: ID, removedPartId: ID.nullable(), raised: RAISED });
export const PART_REMOVED = z.object({ partId: ID, raised: RAISED });
export const PART_CORRECTED = z.object({ partId: ID.nullable(), raised: RAISED });
export const TRIP_RECORDED = z.object({ tripId: ID, raised: RAISED });
export const TRIP_WITHDRAWN = z.object({ tripId: ID, reopenedJobId: ID.nullable() });
export const READING_RECORDED = z.object({ readingId: ID, raised: RAISED });
export const READING_CORRECTED = z.object({ readingId: ID.nullable(), raised: RAISED });

export const MACHINES = z.object({ rows: z.array(KEPT_MACHINE) });
export const MACHINE_ADDED = z.object({ machineId: ID });
export const MACHINE_CHANGED = z.object({
  machineId: ID,
  trailersAssessed: COUNT,
  jobsReloaded: z.array(ID).describe('Booked jobs whose load was brought up to it.'),
});
export const TOW_VEHICLES = z.object({ rows: z.array(TOW_VEHICLE) });
export const TOW_VEHICLE_ADDED = z.object({ towVehicleId: ID });
export const TOW_VEHICLE_CHANGED = z.object({ towVehicleId: ID, trailersAssessed: COUNT });

const JOB_FIT = FIT.nullable().describe('Null while no trailer is chosen, or once the job is over.');
export const JOBS = page(
  z.object({
    job: z.object({
      id: ID,
      name: z.string(),
      startsOn: DAY,
      endsOn: DAY,
      state: z.enum(['booked', 'cancelled', 'done']),
      work: z.enum(['own', 'hire']),
      ...known({
        distanceKm: computed('km'),
        customer: z.string(),
        trailer: TRAILER_NAME,
        machineName: z.string(),
        towVehicleName: z.string(),
        driverName: z.string(),
      }),
    }),
    fit: JOB_FIT,
  }),
);
export const JOB_READ = z.object({ job: KEPT_JOB, fit: EXPLAINED_FIT.nullable() });
export const WORKINGS = z.object({ workings: z.array(WORKING) });
export const JOB_BOOKED = z.object({ jobId: ID, fit: JOB_FIT });
export const JOB_CANCELLED = z.object({ jobId: ID });
export const JOB_FINISHED = z.object({ jobId: ID, tripId: ID, raised: RAISED });

export const CHECK_KINDS = z.object({ rows: z.array(CHECK_KIND) });
const WOKEN = { assessed: COUNT.describe('Trailers judged anew.'), waiting: COUNT.describe('Trailers still to be.') };
export const WOKEN_YARD = z.object(WOKEN);
export const CHECK_KIND_SET = z.object({ checkKindId: ID, ...WOKEN });
export const CHECK_READ = z.object({
  record: CHECK_RECORD,
  byName: z.string(),
  note: z.string().nullable(),
  costCents: COUNT.nullable(),
  photoIds: z.array(ID),
  standing: z.boolean(),
});
const CHANGED_SINCE = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('renumbered'), from: z.string(), to: z.string() }),
  z.object({ kind: z.literal('gone'), status: z.enum(['sold', 'scrapped']) }),
  z.object({ kind: z.literal('build-changed') }),
  z.object({ kind: z.literal('sheet-changed') }),
  z.object({ kind: z.literal('held'), holdId: ID, reason: z.string(), openedOn: DAY }),
  z.object({ kind: z.literal('checked'), checkRecordId: ID, doneOn: DAY, outcome: z.enum(['pass', 'fail']) }),
]);
export const CHECK_RECORDED = z.object({
  checkRecordId: ID,
  holdId: ID.nullable().describe('The hold this check put on the trailer.'),
  besides: z.array(ID).describe('Records of the same check that stood before and are kept beside this one.'),
  changed: z
    .array(CHANGED_SINCE)
    .describe('What had changed since the sheet was opened, when seen said what it showed.'),
  sentAgain: z.boolean().describe('It had come in before under the same send id; nothing was recorded anew.'),
  raised: RAISED,
});
export const CHECK_CORRECTED = z.object({ checkRecordId: ID.nullable(), holdId: ID.nullable(), raised: RAISED });

const HOLD_ROW = z.object({
  id: ID,
  openedOn: DAY,
  reason: z.string(),
  openedByName: z.string(),
  ...known({ liftedOn: DAY, liftedByName: z.string(), liftReason: z.string() }),
});
export const HOLDS = z.object({ rows: z.array(HOLD_ROW) });
export const OPEN_HOLDS = page(HOLD_ROW.extend({ trailer: TRAILER_NAME, ...known({ nextJob: NEXT_JOB }) }));
export const HOLD_CHANGED = z.object({ holdId: ID });

export const DUE_LIST = page(
  z.object({
    trailer: TRAILER_NAME,
    checkKind: z.object({ id: ID, name: z.string(), safety: z.boolean() }),
    ownerName: z.string().nullable(),
    due: DUE,
  }),
);
export const FLAG_LIST = page(z.object({ trailer: TRAILER_NAME, flag: FLAG }));

const NOTICE = z.object({
  id: ID,
  kind: z.string(),
  toName: z.string(),
  toEmail: z.string(),
  subject: z.string(),
  state: z.enum(['waiting', 'sent', 'dead', 'bounced', 'cancelled']),
  createdAt: INSTANT,
  notBefore: INSTANT,
  sentAt: INSTANT.nullable(),
  attempts: COUNT,
  lastError: z.string().nullable(),
  items: z.array(z.object({ kind: z.string(), ...known({ trailerId: ID, number: z.string() }) })),
});
export const NOTICES = page(NOTICE).extend({ undelivered: COUNT.describe('Given up or come back.') });
export const NOTICE_READ = NOTICE.extend({
  bodyText: z.string().describe('Empty for mails whose link is a key.'),
  bodyHtml: z.string(),
  messageId: z.string(),
  answers: z.array(
    z.object({
      answer: z.string(),
      answeredOn: DAY,
      ...known({ byName: z.string(), untilOn: DAY, reason: z.string() }),
    }),
  ),
});
export const NOTICE_QUEUED = z.object({ noticeId: ID });

export const PEOPLE = z.object({
  rows: z.array(
    z.object({
      personId: ID,
      role: z.enum(['owner', 'shop', 'hand', 'viewer']),
      name: z.string(),
      email: z.string(),
      ...known({ cdl: CDL, leftOn: DAY, bouncedAt: INSTANT, bounceNote: z.string() }),
    }),
  ),
});

export const YARD = z.object({
  id: ID,
  name: z.string(),
  timeZone: z.string(),
  place: z.string().nullable(),
  demo: z.boolean(),
  quietFromHour: COUNT,
  quietToHour: COUNT,
  planHour: COUNT,
  policy: POLICY,
});
export const REBUILT = z.object({ rebuilt: COUNT.describe('Trailers whose results were built anew.') });

export const HISTORY = page(
  z.object({
    id: ID,
    at: INSTANT,
    who: z.string(),
    door: z.string(),
    action: z.string(),
    subject: z.string(),
    subjectId: ID.nullable(),
    trailerId: ID.nullable(),
    detail: z.record(z.string(), z.unknown()),
  }),
);
