import { dayNumber } from '../calendar/day-number.js';
import type { Job, MeterReading, Trip } from '../facts/use.js';
import { tripDays } from './trip-days.js';
import { type Edges, evenEdges, meterEdges } from './use-windows.js';

interface UseFacts {
  /** Known by `asOf`, in the order of time. */
  readonly readings: readonly MeterReading[];
  readonly trips: readonly Trip[];
  /** Booked, in the order of their start. */
  readonly jobs: readonly Job[];
  readonly asOf: number;
  /** First day the trailer is known to have been in use at all; null when unknown. */
  readonly inUseSince: number | null;
  readonly windowDays: number;
}

/** Up to when use is known, and the stretches of days it is learned from. The same for every way of counting distance. */
export interface UseKnown {
  readonly trips: readonly Trip[];
  /** Booked and not yet recorded as trips. */
  readonly jobs: readonly Job[];
  /** Last day whose use is known. */
  readonly from: number;
  /** Next day on which standing still would change what is learned; null when it no longer can. */
  readonly changesOn: number | null;
  /** Null when nothing is known to learn from. */
  readonly edges: Edges | null;
  readonly memoryDays: number;
}

/**
 * A trailer known only by its trips is taken to stand when none is logged: its use is learned again, with the days it
 * stood, once it has stood this long. In steps, so that an answer holds for more than one day. Our choice.
 */
const STEPS = [7, 14, 30, 60, 90, 120, 180, 270, 365, 545, 730] as const;

/** Use is never learned from fewer days than this when only trips are known: one haul is no habit. Our choice. */
export const LEAST_DAYS = 30;

/** Older use than this says nothing of today's. Two rounds of the seasons; our choice. */
export const LEARN_DAYS = 730;

/** With a meter use is known to its last reading, and goes on from there, logged or not; without, to the last trip's end. */
export function useKnown(facts: UseFacts): UseKnown {
  const { readings, trips, jobs, asOf, windowDays: memoryDays } = facts;
  const lastReading = readings.at(-1);
  const lastEnd = lastTripEnd(trips);
  const metered = lastReading !== undefined && readings.length > 1 && dayNumber(lastReading.takenOn) >= lastEnd;
  const lastKnown = metered ? dayNumber(lastReading.takenOn) : lastEnd;
  if (!Number.isFinite(lastKnown)) {
    const from = jobs[0] === undefined ? asOf : Math.min(asOf, dayNumber(jobs[0].startsOn) - 1);
    return { trips, jobs, from, changesOn: null, edges: null, memoryDays };
  }
  const stands = metered ? { days: 0, changesOn: null } : standing(lastKnown, asOf);
  const from = lastKnown + stands.days;
  const start = Math.max(from - LEARN_DAYS, firstKnown(facts, from, metered));
  return {
    trips,
    jobs: unlogged(jobs, trips),
    from,
    changesOn: stands.changesOn,
    edges: metered ? meterEdges(readings, from, start) : evenEdges(from, start),
    memoryDays,
  };
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

function firstKnown({ readings, trips, inUseSince, windowDays }: UseFacts, to: number, metered: boolean): number {
  const firstDays = metered ? [] : [to - LEAST_DAYS];
  if (readings[0] !== undefined) firstDays.push(dayNumber(readings[0].takenOn));
  if (trips[0] !== undefined) firstDays.push(dayNumber(trips[0].startedOn) - 1);
  // Bought long before it was first written down, it need not have stood all the while.
  if (!metered && inUseSince !== null) firstDays.push(Math.max(inUseSince, to - windowDays));
  return Math.min(...firstDays);
}

/** Last day of the trip that ended last; minus infinity without trips. */
export function lastTripEnd(trips: readonly Trip[]): number {
  let last = Number.NEGATIVE_INFINITY;
  for (const day of tripDays(trips).last) if (day > last) last = day;
  return last;
}

/** A job already recorded as a trip is in what was used. */
export function unlogged(jobs: readonly Job[], trips: readonly Trip[]): readonly Job[] {
  if (jobs.length === 0) return jobs;
  const logged = new Set<string>();
  for (const trip of trips) if (trip.jobId !== null) logged.add(trip.jobId);
  return jobs.filter((job) => !logged.has(job.id));
}
