import type { CivilDate } from '../calendar/civil-date.js';
import type { Trip } from '../facts/use.js';

/** A trip a flag rests on, as its evidence names it; it grows old counted from its last day. */
export interface TripSeen {
  readonly tripId: string;
  readonly endedOn: CivilDate;
}

export function tripsSeen(trips: readonly Trip[]): readonly TripSeen[] {
  return trips.map(({ id, endedOn }) => ({ tripId: id, endedOn }));
}
