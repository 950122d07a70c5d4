import type { Job, Trip } from '../facts/use.js';
import { type Kilometres, miles } from '../units/distance.js';
import type { DistanceTravelled } from './distance-travelled.js';
import { tripDays } from './trip-days.js';
import type { UseKnown } from './use-known.js';
import { learnUseRate } from './use-rate.js';
import { backgroundWindows } from './use-windows.js';
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

/** A local haul, out and back, before a trailer's own are known. Our assumption, no source; weighs as much as two hauls seen. */
const USUAL_HAUL = miles(40);
const USUAL_HAUL_WEIGHT = 2;

/**
 * Learned from the distance up to the last day known. The background is without the hauls that came from booked jobs
 * (those are booked again when they come) and without their days. `travelled` may count some miles more than once.
 */
export function distanceToCome(known: UseKnown, travelled: DistanceTravelled): DistanceToCome {
  const usual = travelled.known ? usualUse(known, travelled) : ONLY_BOOKED;
  const walk = new Walk(bookedDays(known.jobs, kmADay), known.from, usual);
  return {
    kmPerDay: travelled.known && known.edges !== null ? (usual.background?.perDay ?? 0) : null,
    from: known.from,
    changesOn: known.changesOn,
    dayReaching: (distance, since, chance) => walk.reaching(distance, since, chance),
    dayReachingByJobs: (distance, since) => walk.reaching(distance, since, 0.5, ONLY_BOOKED),
  };
}

function kmADay(job: Job, _day: number, days: number): number | null {
  return job.distanceKm === null ? null : job.distanceKm / days;
}

function usualUse({ edges, trips, memoryDays }: UseKnown, travelled: DistanceTravelled): Usual {
  if (edges === null) return ONLY_BOOKED;
  const since = edges.at(-1) as number;
  const used = (after: number, upTo: number) => travelled.between(after, upTo);
  const learn = (withJobs: boolean) =>
    learnUseRate(backgroundWindows(edges, withJobs ? [] : trips, used), {
      haul: usualHaul(trips, since, withJobs),
      memoryDays,
      overshoot: 1 / 3,
    });
  const overall = learn(true);
  return { background: trips.some((trip) => trip.jobId !== null) ? learn(false) : overall, overall };
}

/**
 * Size of a haul as it counts for the spread, Σd²/Σd (variance over mean of a compound Poisson process), of the trips
 * that ended after a day, drawn to the usual haul.
 */
function usualHaul(trips: readonly Trip[], since: number, withJobs: boolean): number {
  const { last } = tripDays(trips);
  let sum = 0;
  let squares = 0;
  let count = 0;
  for (let i = trips.length - 1; i >= 0; i--) {
    if ((last[i] as number) <= since) continue;
    const { distanceKm, jobId } = trips[i] as Trip;
    if (distanceKm === null || distanceKm <= 0 || (jobId !== null && !withJobs)) continue;
    sum += distanceKm;
    squares += distanceKm ** 2;
    count++;
  }
  const own = sum > 0 ? squares / sum : 0;
  return (own * count + USUAL_HAUL * USUAL_HAUL_WEIGHT) / (count + USUAL_HAUL_WEIGHT);
}
