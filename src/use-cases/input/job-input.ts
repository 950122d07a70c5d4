import { addMonths, type CivilDate } from '../../rules/calendar/civil-date.js';
import type { Driver, Job } from '../../rules/facts/use.js';
import { type Given, TEXT } from './given.js';
import type { Incoming } from './incoming.js';
import { readLoad } from './load-input.js';
import { readDistance } from './trip-input.js';

/** What a job is, apart from the vehicle that tows it, which is named by its id. */
export type JobPlan = Omit<Job, 'id' | 'state' | 'towVehicle'> & {
  readonly trailerId: string | null;
  readonly towVehicleId: string | null;
  readonly customer: string | null;
  readonly note: string | null;
};

export type JobInput = Incoming<Omit<JobPlan, 'work'> & { work: Job['work'] | null }>;

/** Nobody books further ahead; a day after that has a slipped digit. Our bound. */
const MONTHS_AHEAD = 36;

/** A haul to come: it may have begun, but not ended. One booked before may have ended by now, on `bookedUntil`. */
export function readJob(given: Given, today: CivilDate, bookedUntil: CivilDate = today): JobPlan {
  const earliest = bookedUntil < today ? bookedUntil : today;
  const latest = { notAfter: addMonths(today, MONTHS_AHEAD), notAfterIs: 'three years from today' };
  const startsOn = given.needDate('startsOn', 'the first day of the job', latest);
  const endsOn = given.needDate('endsOn', 'the last day of the job', {
    ...(startsOn > earliest
      ? { notBefore: startsOn, notBeforeIs: 'its first day' }
      : { notBefore: earliest, notBeforeIs: `${earliest}; a haul that is over is recorded as a trip` }),
    ...latest,
  });
  return {
    name: given.needText('name', "the job's name", TEXT.name),
    trailerId: given.id('trailerId', 'the trailer'),
    startsOn,
    endsOn,
    distanceKm: readDistance(given, startsOn, endsOn),
    work: given.choice('work', 'whose work it is', ['own', 'hire'] as const) ?? 'own',
    customer: given.text('customer', 'the customer', TEXT.name),
    commercial: given.flag('commercial', 'is the haul in commerce?'),
    machineId: given.id('machineId', 'the machine'),
    load: readLoad(given.object('load')),
    towVehicleId: given.id('towVehicleId', 'the tow vehicle'),
    driver: readDriver(given),
    haulerPersonId: given.id('haulerPersonId', 'who hauls'),
    note: given.text('note', 'the note', TEXT.page),
  };
}

function readDriver(given: Given): Driver | null {
  const driver = given.object('driver');
  if (!given.has('driver')) return null;
  return {
    name: driver.needText('name', "the driver's name", TEXT.name),
    cdl: driver.choice('cdl', 'the commercial licence held', ['A', 'B', 'none'] as const),
  };
}
