import { dayNumber } from '../calendar/day-number.js';
import type { Job, Trip } from '../facts/use.js';
import { tripDays } from './trip-days.js';
import { LEARN_DAYS, LEAST_DAYS, lastTripEnd, standing, unlogged } from './use-known.js';
import { learnUseRate } from './use-rate.js';
import { backgroundWindows, evenEdges } from './use-windows.js';
import { bookedDays, ONLY_BOOKED, type Reached, type Usual, Walk } from './walk.js';

/** How often a trailer will go out: booked jobs, and between them its usual trips. */
export interface TripsToCome {
  /** First day by whose end that many more trips have ended with this chance, as for distances. */
  dayReaching(trips: number, since: number, chance: number): Reached | null;
}

/** What was learned of how often it goes out. */
export interface TripRate {
  /** Last day known; null before the first trip. */
  readonly from: number | null;
  readonly usual: Usual;
  /** Next day on which standing still would change it; null when it no longer can. */
  readonly changesOn: number | null;
}

/** Before a trailer's own are known: trips at random, one at a time (Poisson). */
const ONE_TRIP = 1;

/** `trips` have ended by `asOf`, in the order of time. `memoryDays`: days after which a trip counts half. */
export function tripRate(trips: readonly Trip[], asOf: number, memoryDays: number): TripRate {
  const { first } = tripDays(trips);
  if (trips.length === 0) return { from: null, usual: ONLY_BOOKED, changesOn: null };
  const lastEnd = lastTripEnd(trips);
  const { days, changesOn } = standing(lastEnd, asOf);
  const from = lastEnd + days;
  const start = Math.max(from - LEARN_DAYS, Math.min((first[0] as number) - 1, from - LEAST_DAYS));
  const edges = evenEdges(from, start);
  const learn = (withJobs: boolean) => {
    const starts = withJobs ? first : first.filter((_, place) => trips[place]?.jobId === null);
    const used = (after: number, upTo: number) => countUpTo(starts, upTo) - countUpTo(starts, after);
    const windows = backgroundWindows(edges, withJobs ? [] : trips, used);
    return learnUseRate(windows, { haul: ONE_TRIP, memoryDays, overshoot: 0 });
  };
  const overall = learn(true);
  const background = trips.some((trip) => trip.jobId !== null) ? learn(false) : overall;
  return { from, usual: { background, overall }, changesOn };
}

/** A booked job is one trip, on its last day. */
export function tripsToCome({ from, usual }: TripRate, jobs: readonly Job[], trips: readonly Trip[]): TripsToCome {
  const booked = bookedDays(unlogged(jobs, trips), (job, day) => (day === dayNumber(job.endsOn) ? 1 : 0));
  const walk = new Walk(booked, from ?? (booked[0]?.day ?? 1) - 1, usual);
  return { dayReaching: (count, since, chance) => walk.reaching(count, since, chance) };
}

/** How many of the days, in order, are at most `day`. */
function countUpTo(days: Int32Array, day: number): number {
  let low = 0;
  let high = days.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((days[middle] as number) <= day) low = middle + 1;
    else high = middle;
  }
  return low;
}
