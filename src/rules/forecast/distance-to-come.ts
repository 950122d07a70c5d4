import { latest } from '../calendar/civil-date.js';
import { dayNumber } from '../calendar/day-number.js';
import type { Job, MeterReading, Trip } from '../facts/use.js';
import { type Kilometres, miles } from '../units/distance.js';
import type { DistanceTravelled } from './distance-travelled.js';
import { learnUseRate } from './use-rate.js';
import { backgroundWindows, evenEdges, meterEdges } from './use-windows.js';
import { bookedDays, ONLY_BOOKED, type Reached, type Usual, Walk } from './walk.js';

/**
 * Where a trailer's distance will stand on days to come: booked jobs on their days, and between them the background,
 * its usual use outside booked jobs, at a rate that is known with its spread.
 *
 * How far the ranges hold, on simulated trailers with fixed seeds (`calibration.test.ts`): over all kinds of use
 * together 79 of 100 limits fall between the 10 % and the 90 % date. The range is somewhat wide for steady and weekend use
 * (88 to 89) and for use with booked jobs (92). It is too narrow where use comes in bursts of weeks (71) and where it
 * follows the seasons (67), since what was learned in summer lags behind the winter. For use that is rare, drifts or
 * changes it holds 76 to 79. The median is off by a third less than average miles of the last 90 days, and by about as
 * much as average miles since records began, which is the better of the two as long as use does not change.
 */
export interface DistanceToCome {
  /** Background use on a day without a booked job; null when nothing is known to learn it from. */
  readonly kmPerDay: number | null;
  /** Last day whose distance is known; the walk starts the day after. */
  readonly from: number;
  /** Next day on which standing still would change the background; null when it no longer can. */
  readonly changesOn: number | null;
  /**
   * First day by whose end `distance` has been driven with this chance (0 to 1, both excluded), counted from the end of
   * `from` or of `since` if that is later, within ten years; null when never.
   */
  dayReaching(distance: Kilometres, since: number, chance: number): Reached | null;
  /** The same by booked jobs alone, without the background: for distances so short that a day's usual use is no answer. */
  dayReachingByJobs(distance: Kilometres, since: number): Reached | null;
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
 * A trailer known only by its trips is taken to stand when none is logged: its background is learned again, with the
 * days it stood, once it has stood this long. In steps, so that an answer holds for more than one day. Our choice.
 */
const STEPS = [7, 14, 30, 60, 90, 120, 180, 270, 365, 545, 730] as const;

/** Use is never learned from fewer days than this when only trips are known: one haul is no habit. Our choice. */
const LEAST_DAYS = 30;

/** Older use than this says nothing of today's. Two rounds of the seasons; our choice. */
const LEARN_DAYS = 730;

/** A local haul, out and back, before a trailer's own are known. Our assumption, no source; weighs as much as two hauls seen. */
const USUAL_HAUL = miles(40);
const USUAL_HAUL_WEIGHT = 2;

/**
 * Learned from the distance up to the last day known. The background is without the hauls that came from booked jobs
 * (those are booked again when they come) and without their days. With a meter the walk goes on from the last reading at that rate, logged
 * or not.
 */
export function distanceToCome(input: DistanceToComeInput): DistanceToCome {
  const { readings, trips, jobs, asOf, travelled } = input;
  const lastReading = readings.at(-1);
  const lastTrip = latest(trips.map((trip) => trip.endedOn));
  const lastTripEnd = lastTrip === null ? Number.NEGATIVE_INFINITY : dayNumber(lastTrip);
  const metered = lastReading !== undefined && readings.length > 1 && dayNumber(lastReading.takenOn) >= lastTripEnd;
  const lastKnown = metered ? dayNumber(lastReading.takenOn) : lastTripEnd;
  if (!Number.isFinite(lastKnown)) {
    const firstJob = jobs[0];
    const from = firstJob === undefined ? asOf : Math.min(asOf, dayNumber(firstJob.startsOn) - 1);
    return toCome(jobs, from, null, ONLY_BOOKED, null);
  }
  const stands = metered ? { days: 0, changesOn: null } : standing(lastKnown, asOf);
  const from = lastKnown + stands.days;
  const usual = travelled.known ? usualUse(input, from, metered) : ONLY_BOOKED;
  const kmPerDay = travelled.known ? (usual.background?.perDay ?? 0) : null;
  return toCome(unlogged(jobs, trips), from, stands.changesOn, usual, kmPerDay);
}

/** How many days it is taken to have stood, and from which day on that would be more. */
export function standing(
  lastKnown: number,
  asOf: number,
): { readonly days: number; readonly changesOn: number | null } {
  const stood = asOf - lastKnown;
  const next = STEPS.find((step) => step > stood);
  return {
    days: STEPS.findLast((step) => step <= stood) ?? 0,
    changesOn: next === undefined ? null : lastKnown + next,
  };
}

function toCome(
  jobs: readonly Job[],
  from: number,
  changesOn: number | null,
  usual: Usual,
  kmPerDay: number | null,
): DistanceToCome {
  const booked = bookedDays(jobs, ({ distanceKm }, _day, days) => (distanceKm === null ? null : distanceKm / days));
  const walk = new Walk(booked, from, usual);
  return {
    kmPerDay,
    from,
    changesOn,
    dayReaching: (distance, since, chance) => walk.reaching(distance, since, chance),
    dayReachingByJobs: (distance, since) => walk.reaching(distance, since, 0.5, ONLY_BOOKED),
  };
}

function usualUse(input: DistanceToComeInput, to: number, metered: boolean): Usual {
  const { travelled, trips, readings, windowDays } = input;
  const firstReading = readings[0];
  const firstTrip = trips[0];
  const firstDays = [
    firstReading === undefined ? null : dayNumber(firstReading.takenOn),
    firstTrip === undefined ? null : dayNumber(firstTrip.startedOn) - 1,
    metered || input.inUseSince === null ? null : Math.max(input.inUseSince, to - windowDays),
  ].filter((day) => day !== null);
  const since = Math.min(...firstDays, metered ? Number.POSITIVE_INFINITY : to - LEAST_DAYS);
  const start = Math.max(to - LEARN_DAYS, since);
  const edges = metered ? meterEdges(readings, to, start) : evenEdges(to, start);
  const used = (after: number, upTo: number) => travelled.between(after, upTo);
  const learn = (hauls: readonly Trip[], without: readonly Trip[]) =>
    learnUseRate(backgroundWindows(edges, without, used), {
      haul: usualHaul(hauls, start),
      memoryDays: windowDays,
      overshoot: 1 / 3,
    });
  const booked = trips.filter((trip) => trip.jobId !== null);
  if (booked.length === 0) {
    const rate = learn(trips, []);
    return { background: rate, overall: rate };
  }
  return {
    background: learn(
      trips.filter((trip) => trip.jobId === null),
      booked,
    ),
    overall: learn(trips, []),
  };
}

/**
 * Size of a haul as it counts for the spread, Σd²/Σd (variance over mean of a compound Poisson process), of the trips
 * since a day, drawn to the usual haul.
 */
function usualHaul(trips: readonly Trip[], since: number): number {
  let sum = 0;
  let squares = 0;
  let count = 0;
  for (let i = trips.length - 1; i >= 0; i--) {
    const trip = trips[i] as Trip;
    if (trip.distanceKm === null || trip.distanceKm <= 0) continue;
    if (dayNumber(trip.endedOn) <= since) continue;
    sum += trip.distanceKm;
    squares += trip.distanceKm ** 2;
    count++;
  }
  const own = sum > 0 ? squares / sum : 0;
  return (own * count + USUAL_HAUL * USUAL_HAUL_WEIGHT) / (count + USUAL_HAUL_WEIGHT);
}

/** A job already recorded as a trip is in the distance travelled. */
export function unlogged(jobs: readonly Job[], trips: readonly Trip[]): readonly Job[] {
  if (jobs.length === 0) return jobs;
  const logged = new Set<string>();
  for (const trip of trips) if (trip.jobId !== null) logged.add(trip.jobId);
  return jobs.filter((job) => !logged.has(job.id));
}
