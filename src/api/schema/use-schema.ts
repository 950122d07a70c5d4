import { z } from 'zod';
import { PLAUSIBLE_USE } from '../../rules/facts/plausible.js';
import { ROADS } from '../../rules/facts/use.js';
import { TEXT } from '../../use-cases/input/given.js';
import { LOAD, LOAD_BODY, TOW_VEHICLE } from './load-schema.js';
import { DAY, ID, known, maybe, quantity, text } from './values.js';

const R = PLAUSIBLE_USE;

const TRIP_DAYS = { startedOn: DAY, endedOn: DAY };
const TRIP_OPTIONAL = {
  distanceKm: quantity(R.tripDistance),
  machineId: ID,
  roads: z.array(z.enum(ROADS)).describe('What it went through; null when nobody said, which is not the same as none.'),
};

export const TRIP = z
  .object({
    id: ID,
    ...TRIP_DAYS,
    ...known(TRIP_OPTIONAL),
    load: LOAD,
    jobId: ID.nullable().describe('The job this trip finished.'),
  })
  .meta({ id: 'Trip' });

const TRIP_TOLD = maybe({ ...TRIP_OPTIONAL, load: LOAD_BODY, note: text(TEXT.page, 'A note.') });
export const TRIP_BODY = z.strictObject({ ...TRIP_DAYS, ...TRIP_TOLD }).meta({ id: 'TripBody' });
/** Sent twice with the same id and content, it is recorded once. */
const SENDING = maybe({ sendId: ID });
export const RECORD_TRIP_BODY = TRIP_BODY.extend(SENDING).meta({ id: 'RecordTripBody' });
export const FINISH_JOB_BODY = z
  .strictObject({ startedOn: DAY.optional(), endedOn: DAY.optional(), ...TRIP_TOLD })
  .meta({ id: 'FinishJobBody', description: 'What is left out was as booked.' });

export const REASON_BODY = z.strictObject({ reason: text(TEXT.line, 'Why, as others should read it.') });
export const MAYBE_REASON_BODY = z.strictObject({
  reason: text(TEXT.line, 'Why, as others should read it.').nullish(),
});
export const NOTHING_BODY = z.strictObject({});

const READING_KIND = z
  .enum(['read', 'rolled-over', 'replaced'])
  .describe('An ordinary reading; or the meter passed its last digit; or this is the first reading of a new meter.');
const READING_NEEDED = { takenOn: DAY, shownKm: quantity(R.shown) };
const READING_SPAN = { meterSpanKm: quantity(R.meterSpan) };

export const READING = z
  .object({ id: ID, ...READING_NEEDED, kind: READING_KIND, ...known(READING_SPAN) })
  .meta({ id: 'Reading' });

export const READING_BODY = z
  .strictObject({ ...READING_NEEDED, kind: READING_KIND.nullish(), ...maybe(READING_SPAN) })
  .meta({ id: 'ReadingBody' });

export const CDL = z.enum(['A', 'B', 'none']).describe('Commercial licence held; none is an answer, null is unknown.');
const DRIVER_NAME = { name: text(TEXT.name, "The driver's name.") };
const WORK = z.enum(['own', 'hire']);
const JOB_NEEDED = { name: text(TEXT.name, "The job's name."), startsOn: DAY, endsOn: DAY };
const JOB_KNOWN = {
  distanceKm: quantity(R.tripDistance),
  commercial: z.boolean().describe('Whether the haul is in commerce.'),
  machineId: ID,
  haulerPersonId: ID.describe('The person of the yard who hauls.'),
};

export const JOB = z
  .object({
    id: ID,
    ...JOB_NEEDED,
    state: z.enum(['booked', 'cancelled', 'done']),
    work: WORK,
    ...known({ ...JOB_KNOWN, towVehicle: TOW_VEHICLE, driver: z.object({ ...DRIVER_NAME, ...known({ cdl: CDL }) }) }),
    load: LOAD,
  })
  .meta({ id: 'Job' });

const JOB_KEPT = {
  trailerId: ID,
  customer: text(TEXT.name, 'Whom it is for.'),
  note: text(TEXT.page, 'A note.'),
};
export const KEPT_JOB = JOB.extend(known(JOB_KEPT)).meta({ id: 'KeptJob' });

const HAUL_TOLD = {
  ...JOB_KNOWN,
  work: WORK,
  load: LOAD_BODY,
  towVehicleId: ID,
  driver: z.strictObject({ ...DRIVER_NAME, ...maybe({ cdl: CDL }) }),
};
export const JOB_BODY = z
  .strictObject({ ...JOB_NEEDED, ...maybe({ ...JOB_KEPT, ...HAUL_TOLD }), ...SENDING })
  .meta({ id: 'JobBody' });

export const CHANGE_JOB_BODY = z
  .strictObject({
    name: JOB_NEEDED.name.optional(),
    startsOn: DAY.optional(),
    endsOn: DAY.optional(),
    ...maybe({ ...JOB_KEPT, ...HAUL_TOLD }),
  })
  .meta({ id: 'ChangeJobBody', description: 'Fields left out stay as they are; null makes a field unknown.' });

export const CHECK_FIT_BODY = z
  .strictObject({ trailerId: ID, startsOn: DAY, endsOn: DAY, ...maybe(HAUL_TOLD) })
  .meta({ id: 'CheckFitBody', description: 'A haul somebody thinks of. Nothing of it is kept.' });

export const RANKING_BODY = z
  .strictObject({
    jobId: ID.nullish().describe('A booked job, and then nothing else.'),
    startsOn: DAY.optional(),
    endsOn: DAY.optional(),
    ...maybe(HAUL_TOLD),
  })
  .meta({ id: 'RankingBody', description: 'A haul somebody thinks of, with its days; or a booked job.' });
