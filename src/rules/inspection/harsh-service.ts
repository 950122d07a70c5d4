import type { Trip } from '../facts/use.js';
import { overPlate } from '../history/over-plate.js';
import type { TrailerOn } from '../history/trailer-on.js';

/**
 * A mile over salt or gravel, or with a load over the plate, counts as this many toward a check by distance.
 *
 * Two, that is half the interval. Gravel: one magazine column asks for bearings at 3,000 miles where others say
 * 12,000, a quarter to half. Salt: brakes, plugs and U-bolts at half the interval; common practice, no source.
 * Overload: common practice, no source. Roads nobody spoke of count once and are listed as unknown, not as clean.
 */
export const HARSH_FACTOR = 2;

export function harshWeight(trailer: TrailerOn): (trip: Trip) => number {
  return (trip) => (isHarsh(trip, trailer) ? HARSH_FACTOR : 1);
}

function isHarsh(trip: Trip, trailer: TrailerOn): boolean {
  const roads = trip.roads;
  // Most trips name no road, and asking an empty list twice costs as much as all else here.
  if (roads !== null && roads.length > 0 && (roads.includes('salt') || roads.includes('gravel'))) return true;
  return overPlate(trip, trailer.buildOn(trip.startedOn));
}
