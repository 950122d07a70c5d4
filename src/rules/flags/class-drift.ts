import type { Trip } from '../facts/use.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { classForGross, type TrailerClass } from '../trailer/trailer-class.js';
import { exceeds } from '../units/compare.js';
import { type Kilograms, kg } from '../units/mass.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';
import { machineOf, mostCommon } from './usual-machine.js';

/** Of the last ten trips, more than this share above 90 % of payload is a habit. Job card section 5 (a proposal, no source). */
const HEAVY_SHARE = 0.3;
const NEARLY_FULL = 0.9;

interface LoadedTrip {
  readonly trip: Trip;
  /** Cargo over the payload of the build of its day. */
  readonly share: number;
  readonly grossKg: Kilograms;
}

/**
 * Loads that look like those of the next class up: more than 3 of the last 10 trips above 90 % of payload, or any above
 * all of it. One overload is `limit`, a run of heavy loads `watch`. Names since when, and the machine behind it.
 */
export function classDriftFlags({ trailer }: FlagContext): readonly Flag[] {
  const payloadKg = trailer.ratingsOn(trailer.asOf)?.payloadKg ?? null;
  const loaded = lastLoadedTrips(trailer);
  const heavy = loaded.filter((one) => exceeds(one.share, NEARLY_FULL));
  const over = heavy.filter((one) => exceeds(one.share, 1));
  const isHabit = heavy.length > HEAVY_SHARE * trailer.facts.policy.driftTrips;
  const first = heavy[0];
  if (payloadKg === null || first === undefined || (!isHabit && over.length === 0)) return [];

  const ownClass = trailer.ratingsOn(trailer.asOf)?.trailerClass ?? null;
  return [
    {
      key: 'class-drift',
      rule: 'class-drift',
      severity: over.length > 0 ? 'limit' : 'watch',
      since: first.trip.startedOn,
      evidence: {
        kind: 'class-drift',
        trips: loaded.length,
        over90: heavy.length,
        over100: over.length,
        payloadKg,
        ownClass,
        looksLike: looksLike(heavy, ownClass),
        tripIds: heavy.map((one) => one.trip.id),
        machineId: mostCommon(heavy.map((one) => machineOf(one.trip))),
      },
      clears: [
        {
          kind: 'lighter-trips',
          trips: lighterTripsToClear(loaded, trailer.facts.policy.driftTrips),
          atMostKg: kg(payloadKg * NEARLY_FULL),
        },
        { kind: 'other-trailer', machineId: mostCommon(heavy.map((one) => machineOf(one.trip))) },
      ],
    },
  ];
}

/** How many trips within 90 % of payload, one after the other, push enough heavy ones out of the last `window`. */
function lighterTripsToClear(loaded: readonly LoadedTrip[], window: number): number {
  for (let trips = 1; trips < window; trips++) {
    const left = loaded.slice(-(window - trips));
    const heavy = left.filter((one) => exceeds(one.share, NEARLY_FULL));
    if (heavy.length <= HEAVY_SHARE * window && !heavy.some((one) => exceeds(one.share, 1))) return trips;
  }
  return window;
}

function lastLoadedTrips(trailer: TrailerOn): readonly LoadedTrip[] {
  const loaded: LoadedTrip[] = [];
  for (let i = trailer.trips.length - 1; i >= 0 && loaded.length < trailer.facts.policy.driftTrips; i--) {
    const trip = trailer.trips[i] as Trip;
    const payloadKg = trailer.ratingsOn(trip.startedOn)?.payloadKg ?? null;
    const check = trailer.judge(trip);
    if (check === null || check.cargoKg === null || check.grossKg === null || payloadKg === null) continue;
    if (payloadKg > 0) loaded.push({ trip, share: check.cargoKg / payloadKg, grossKg: check.grossKg });
  }
  return loaded.reverse();
}

const CLASS_ORDER: readonly TrailerClass[] = [
  'not-an-equipment-trailer',
  'light',
  'medium',
  'heavy',
  'gooseneck-deck-over',
];

/**
 * The class whose usual axles carry the heaviest of these loads, and at least the next one up: loads that fill their
 * own class belong to the one above, where they would leave room.
 */
function looksLike(heavy: readonly LoadedTrip[], ownClass: TrailerClass | null): TrailerClass | null {
  const heaviest = heavy.reduce((most, one) => (one.grossKg > most.grossKg ? one : most));
  const needed = classForGross(heaviest.grossKg);
  if (needed === null || ownClass === null) return needed;
  const nextUp = CLASS_ORDER[CLASS_ORDER.indexOf(ownClass) + 1] ?? ownClass;
  return CLASS_ORDER.indexOf(needed) > CLASS_ORDER.indexOf(nextUp) ? needed : nextUp;
}
