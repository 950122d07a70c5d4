import type { CivilDate } from '../calendar/civil-date.js';
import type { Flag } from './flag.js';

/** The last days of all trips that flags of getting a machine on, and holding it there, rest on. */
export function loadingTripDays(flags: readonly Flag[]): readonly CivilDate[] {
  return flags.flatMap(({ evidence }) => {
    switch (evidence.kind) {
      case 'jack-load':
      case 'over-ramp':
      case 'rear-lift':
      case 'too-wide':
      case 'too-long':
      case 'tie-downs-short':
        return evidence.trips.map((trip) => trip.endedOn);
      default:
        return [];
    }
  });
}
