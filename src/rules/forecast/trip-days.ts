import { dayNumber } from '../calendar/day-number.js';
import type { Trip } from '../facts/use.js';

/** First and last day of each trip, as day numbers, in the order of the trips. */
interface TripDays {
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/** Lists of trips never change, so what was read off one holds as long as it does. */
const read = new WeakMap<readonly Trip[], TripDays>();

/** Read once for each list: dates are text, and sums over a thousand trips ask for their days again and again. */
export function tripDays(trips: readonly Trip[]): TripDays {
  const known = read.get(trips);
  if (known !== undefined) return known;
  const first = new Int32Array(trips.length);
  const last = new Int32Array(trips.length);
  for (let i = 0; i < trips.length; i++) {
    const { startedOn, endedOn } = trips[i] as Trip;
    first[i] = dayNumber(startedOn);
    last[i] = startedOn === endedOn ? (first[i] as number) : dayNumber(endedOn);
  }
  const days = { first, last };
  read.set(trips, days);
  return days;
}
