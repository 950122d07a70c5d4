import type { CheckKind } from '../facts/check.js';
import type { Trip } from '../facts/use.js';
import { loadFactor } from '../fatigue/trip-damage.js';
import type { TripWeight } from '../forecast/distance-travelled.js';
import { evenLoads, knownAxleLoad } from '../history/axle-load.js';
import type { TrailerOn } from '../history/trailer-on.js';
import type { AxleLimits } from '../load/load-limits.js';

/**
 * What a mile counts for toward a check of the hub bearings, by the load on the axle that took most of its rating:
 * (load / rated)^(10/3), ISO 281, and never below 1. So a load can shorten the interval and none can lengthen it:
 * grease ages and seals leak under light loads too. 1 where no axle's load or rating is known.
 */
export function bearingWeight(trip: Trip, trailer: TrailerOn): number {
  const axles = trailer.limitsOn(trip.startedOn)?.axles ?? [];
  let weight = 1;
  for (const [index, { rated }] of axles.entries()) {
    const loadN = rated === null ? null : knownAxleLoad(trip, index, trailer);
    if (rated !== null && loadN !== null && loadN > rated.limitN) {
      weight = Math.max(weight, loadFactor(loadN, rated.limitN, 'bearing'));
    }
  }
  return weight;
}

/**
 * The same beside harsh service: whichever counts for more, since an overload already counts as harsh. Null when no
 * trip's load asks for more than that, and the count stays what it was.
 */
export function bearingWeights(trailer: TrailerOn, harsh: TripWeight): TripWeight | null {
  let heavier: Map<string, number> | null = null;
  const { axles, axleN, isBound } = evenLoads(trailer);
  for (let place = 0; place < trailer.trips.length; place++) {
    const trip = trailer.trips[place] as Trip;
    if (isBound[place] === 1) continue;
    const weight =
      axles[place] === 0
        ? bearingWeight(trip, trailer)
        : evenWeight(axleN[place] as number, trailer.limitsOn(trip.startedOn)?.axles ?? []);
    if (weight === 1 || weight <= harsh(trip)) continue;
    heavier ??= new Map();
    heavier.set(trip.id, weight);
  }
  const found = heavier;
  return found === null ? null : (trip) => found.get(trip.id) ?? harsh(trip);
}

/** Where all axles carry one load: the axle of the least rating decides. 1 for a load that is not known, NaN. */
function evenWeight(evenN: number, axles: readonly AxleLimits[]): number {
  let leastN = Number.POSITIVE_INFINITY;
  for (let index = 0; index < axles.length; index++) {
    const ratedN = axles[index]?.rated?.limitN;
    if (ratedN !== undefined && ratedN < leastN) leastN = ratedN;
  }
  return evenN > leastN ? loadFactor(evenN, leastN, 'bearing') : 1;
}

/** Whether a check is about hub bearings: it is for greased or for oiled hubs only. */
export function isOfBearings(kind: Pick<CheckKind, 'appliesTo'>): boolean {
  return kind.appliesTo.lubricants !== null;
}
