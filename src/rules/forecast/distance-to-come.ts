import { latest } from '../calendar/civil-date.js';
import { dayNumber } from '../calendar/day-number.js';
import type { Job, MeterReading, Trip } from '../facts/use.js';
import type { Kilometres } from '../units/distance.js';
import type { DistanceTravelled } from './distance-travelled.js';

/**
 * Where a trailer's distance will stand on days to come: booked jobs on their days, and between them the background,
 * its usual use outside booked jobs.
 */
export interface DistanceToCome {
  /** Background use on a day without a booked job; null when nothing is known to learn it from. */
  readonly kmPerDay: number | null;
  /** Last day whose distance is known; the walk starts the day after. */
  readonly from: number;
  /** Next day on which standing still would change the background; null when it no longer can. */
  readonly changesOn: number | null;
  /**
   * First day by whose end `distance` has been driven, counted from the end of `from` or of `since` if that is later,
   * within ten years; null when never.
   */
  dayReaching(distance: Kilometres, since: number): Reached | null;
  /** The same by booked jobs alone, without the background: for distances so short that a day's usual use is no answer. */
  dayReachingByJobs(distance: Kilometres, since: number): Reached | null;
}

interface Reached {
  readonly day: number;
  /** The booked job that crosses the distance, where one does. */
  readonly job: Job | null;
}

export interface DistanceToComeInput {
  /** Known by `asOf`, in the order of time. */
  readonly readings: readonly MeterReading[];
  readonly trips: readonly Trip[];
  readonly travelled: DistanceTravelled;
  /** Booked, in the order of their start. */
  readonly jobs: readonly Job[];
  readonly asOf: number;
  /** First day the trailer is known to have been in use at all; null when unknown. */
  readonly inUseSince: number | null;
  readonly windowDays: number;
}

/**
 * A trailer known only by its trips is taken to stand when none is logged: after each such run of days its background
 * is learned again from a window that ends there. In steps, so that an answer holds for more than one day. Our choice.
 */
const STEP_DAYS = 30;

/** Use is never learned from fewer days than this when only trips are known: one haul is no habit. Our choice. */
const LEAST_DAYS = 30;

const HORIZON_DAYS = 3652;

/**
 * Background: distance in the policy's window up to the last day known, without the hauls that came from booked jobs
 * (those are booked again when they come) and without their days, over the days left. With a meter the walk goes on
 * from the last reading at that rate, logged or not.
 */
export function distanceToCome(input: DistanceToComeInput): DistanceToCome {
  const { readings, trips, asOf } = input;
  const lastReading = readings.at(-1);
  const lastTrip = latest(trips.map((trip) => trip.endedOn));
  const lastTripEnd = lastTrip === null ? Number.NEGATIVE_INFINITY : dayNumber(lastTrip);
  const metered = lastReading !== undefined && readings.length > 1 && dayNumber(lastReading.takenOn) >= lastTripEnd;
  const lastKnown = metered ? dayNumber(lastReading.takenOn) : lastTripEnd;
  if (!Number.isFinite(lastKnown)) {
    const firstJob = input.jobs[0];
    const from = firstJob === undefined ? asOf : Math.min(asOf, dayNumber(firstJob.startsOn) - 1);
    return new Walk(input.jobs, from, null, null);
  }

  const mostSteps = metered ? 0 : Math.ceil(input.windowDays / STEP_DAYS) + 1;
  const steps = Math.min(Math.floor((asOf - lastKnown) / STEP_DAYS), mostSteps);
  const from = lastKnown + steps * STEP_DAYS;
  const changesOn = steps < mostSteps ? from + STEP_DAYS : null;
  return new Walk(unlogged(input.jobs, trips), from, backgroundKmPerDay(input, from, metered), changesOn);
}

function backgroundKmPerDay(input: DistanceToComeInput, to: number, metered: boolean): number | null {
  const { travelled, trips, readings, windowDays } = input;
  if (!travelled.known) return null;
  const firstReading = readings[0];
  const firstTrip = trips[0];
  const firstDays = [
    firstReading === undefined ? null : dayNumber(firstReading.takenOn),
    firstTrip === undefined ? null : dayNumber(firstTrip.startedOn) - 1,
    metered ? null : input.inUseSince,
  ].filter((day) => day !== null);
  const since = Math.min(...firstDays, metered ? Number.POSITIVE_INFINITY : to - LEAST_DAYS);
  const start = Math.max(to - windowDays, since);
  let distance: number = travelled.between(start, to);
  let days = to - start;
  for (const trip of trips) {
    if (trip.jobId === null) continue;
    const first = Math.max(dayNumber(trip.startedOn), start + 1);
    const last = Math.min(dayNumber(trip.endedOn), to);
    if (first > last) continue;
    distance -= travelled.between(first - 1, last);
    days -= last - first + 1;
  }
  return days > 0 ? Math.max(0, distance) / days : null;
}

/** A job already recorded as a trip is in the distance travelled. */
function unlogged(jobs: readonly Job[], trips: readonly Trip[]): readonly Job[] {
  if (jobs.length === 0) return jobs;
  const logged = new Set<string>();
  for (const trip of trips) if (trip.jobId !== null) logged.add(trip.jobId);
  return jobs.filter((job) => !logged.has(job.id));
}

class Walk implements DistanceToCome {
  /** Booked days with a known distance, in order; days on which two jobs overlap carry both. */
  private readonly bookedDays: readonly BookedDay[];

  constructor(
    jobs: readonly Job[],
    readonly from: number,
    readonly kmPerDay: number | null,
    readonly changesOn: number | null,
  ) {
    this.bookedDays = bookedDays(jobs, from);
  }

  dayReaching(distance: Kilometres, since: number): Reached | null {
    return this.reach(distance, since, this.kmPerDay ?? 0);
  }

  dayReachingByJobs(distance: Kilometres, since: number): Reached | null {
    return this.reach(distance, since, 0);
  }

  private reach(distance: Kilometres, since: number, rate: number): Reached | null {
    const start = Math.max(this.from, since);
    let driven = 0;
    let today = start;
    if (distance <= NOISE_KM) return { day: today, job: null };
    for (const booked of this.bookedDays) {
      if (booked.day <= start) continue;
      const idleDays = booked.day - today - 1;
      const reached = daysToDrive(distance - driven, rate);
      if (reached <= idleDays) return withinHorizon(start, today + reached);
      driven += idleDays * rate + booked.km;
      today = booked.day;
      if (driven >= distance - NOISE_KM) return { day: today, job: booked.job };
    }
    return withinHorizon(start, today + daysToDrive(distance - driven, rate));
  }
}

interface BookedDay {
  readonly day: number;
  readonly km: number;
  readonly job: Job;
}

function bookedDays(jobs: readonly Job[], from: number): readonly BookedDay[] {
  const byDay = new Map<number, BookedDay>();
  for (const job of jobs) {
    if (job.distanceKm === null) continue;
    const first = dayNumber(job.startsOn);
    const last = dayNumber(job.endsOn);
    const aDay = job.distanceKm / (last - first + 1);
    for (let day = Math.max(first, from + 1); day <= last; day++) {
      const other = byDay.get(day);
      byDay.set(day, other === undefined ? { day, km: aDay, job } : { ...other, km: other.km + aDay });
    }
  }
  return [...byDay.values()].sort((a, b) => a.day - b.day);
}

function daysToDrive(distance: number, rate: number): number {
  return rate > 0 ? Math.max(1, Math.ceil((distance - NOISE_KM) / rate)) : Number.POSITIVE_INFINITY;
}

function withinHorizon(from: number, day: number): Reached | null {
  return day - from <= HORIZON_DAYS ? { day, job: null } : null;
}

/** A tenth of a millimetre: sums of fractions must not miss a limit that was reached exactly. */
const NOISE_KM = 1e-7;
