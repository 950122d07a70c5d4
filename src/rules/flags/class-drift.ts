import type { TrailerOn } from '../history/trailer-on.js';
import type { Comparison, LimitKind } from '../load/limit.js';
import type { LoadCheck } from '../load/load-check.js';
import { classForGross, grossOfClass, type TrailerClass } from '../trailer/trailer-class.js';
import { exceeds } from '../units/compare.js';
import { type Kilograms, kg } from '../units/mass.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';
import { damageOf, type LoadedTrip, loadsOfQuarter, loadTrend, ninetiethShare } from './loads-of-quarter.js';
import { machineOf, mostCommon } from './usual-machine.js';

/** Of the last ten trips, more than this share above 90 % of payload is a habit. Job card section 5 (a proposal, no source). */
const HEAVY_SHARE = 0.3;

/** What a trailer of a class is meant to carry in daily use, as a share of its payload. The same proposal. */
const NEARLY_FULL = 0.9;

/**
 * Loads that look like those of the next class up: more than 3 of the last 10 trips above 90 % of payload, or any above
 * all of it. One overload is `limit`, a run of heavy loads `watch`.
 *
 * Says since when, by which machine and on which trips; how heavy the loads of the quarter are and whether they grow;
 * how fast they use up its parts against what its class is meant for, and what the class above would suffer from them;
 * which limit gives first, and which would have to be higher.
 */
export function classDriftFlags({ trailer }: Pick<FlagContext, 'trailer'>): readonly Flag[] {
  const payloadKg = trailer.ratingsOn(trailer.asOf)?.payloadKg ?? null;
  const { driftTrips } = trailer.facts.policy;
  const loads = loadsOfQuarter(trailer, driftTrips);
  const last = loads.slice(-driftTrips);
  const heavy = loads.filter(isHeavy);
  const [first] = heavy;
  const severity = verdictOn(last, driftTrips);
  if (payloadKg === null || first === undefined || severity === null) return [];

  const evidence = driftOf(loads, payloadKg, trailer);
  return [
    {
      key: 'class-drift',
      rule: 'class-drift',
      severity,
      since: first.trip.startedOn,
      evidence,
      clears: [
        { kind: 'lighter-trips', trips: lighterTripsToClear(last, driftTrips), atMostKg: kg(payloadKg * NEARLY_FULL) },
        { kind: 'other-trailer', machineId: evidence.machineId },
        { kind: 'payload-of-at-least', payloadKg: kg(heaviestOf(heavy).cargoKg / NEARLY_FULL) },
      ],
    },
  ];
}

type Drift = Extract<Flag['evidence'], { kind: 'class-drift' }>;

/** What the loads of a quarter, a heavy one at least among them, come to. */
function driftOf(loads: readonly LoadedTrip[], payloadKg: Kilograms, trailer: TrailerOn): Drift {
  const heavy = loads.filter(isHeavy);
  const heaviest = heaviestOf(heavy);
  const ownClass = trailer.ratingsOn(trailer.asOf)?.trailerClass ?? null;
  const looksLike = classOf(heaviest, ownClass);
  const tight = tightest(trailer.judge(heaviest.trip));
  return {
    kind: 'class-drift',
    from: (loads[0] as LoadedTrip).trip.startedOn,
    to: (loads.at(-1) as LoadedTrip).trip.endedOn,
    trips: loads.length,
    over90: heavy.length,
    over100: heavy.filter(isOver).length,
    share90th: ninetiethShare(loads),
    trend: loadTrend(loads),
    damage: damageOf(loads, NEARLY_FULL, looksLike === null ? null : grossOfClass(looksLike)),
    payloadKg,
    ownClass,
    looksLike,
    weakest: tight[0] ?? null,
    wantsMore: tight.filter((one) => one.standing === 'over'),
    tripIds: heavy.map((one) => one.trip.id),
    machineId: mostCommon(heavy.map((one) => machineOf(one.trip))),
  };
}

/** Of one load at least. */
function heaviestOf(loads: readonly LoadedTrip[]): LoadedTrip {
  return loads.reduce((most, one) => (one.grossKg > most.grossKg ? one : most));
}

function isHeavy(one: LoadedTrip): boolean {
  return exceeds(one.share, NEARLY_FULL);
}

function isOver(one: LoadedTrip): boolean {
  return exceeds(one.share, 1);
}

/** Null where the last loads are no drift. */
function verdictOn(last: readonly LoadedTrip[], window: number): 'limit' | 'watch' | null {
  if (last.some(isOver)) return 'limit';
  return last.filter(isHeavy).length > HEAVY_SHARE * window ? 'watch' : null;
}

/** How many trips within 90 % of payload, one after the other, push enough heavy ones out of the last `window`. */
function lighterTripsToClear(last: readonly LoadedTrip[], window: number): number {
  for (let trips = 1; trips < window; trips++) {
    if (verdictOn(last.slice(-(window - trips)), window) === null) return trips;
  }
  return window;
}

/** What stands on the ground, whose load is only a bound while the tongue is not known. */
const ON_THE_GROUND: readonly LimitKind[] = ['axle-group', 'axle', 'tire'];

/** The comparison of each kind of limit that leaves least, the tightest first. A bound proves no limit tight. */
function tightest(check: LoadCheck | null): readonly Comparison[] {
  const byKind = new Map<string, Comparison>();
  const isBound = check?.method === 'bound' || check?.method === 'range';
  for (const one of check?.comparisons ?? []) {
    if (isBound && ON_THE_GROUND.includes(one.limit.kind)) continue;
    const before = byKind.get(one.limit.kind);
    if (before === undefined || fullness(one) > fullness(before)) byKind.set(one.limit.kind, one);
  }
  return [...byKind.values()].sort((a, b) => fullness(b) - fullness(a));
}

function fullness({ loadN, limit }: Comparison): number {
  return loadN / limit.limitN;
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
function classOf(heaviest: LoadedTrip, ownClass: TrailerClass | null): TrailerClass | null {
  const needed = classForGross(heaviest.grossKg);
  if (needed === null || ownClass === null) return needed;
  const nextUp = CLASS_ORDER[CLASS_ORDER.indexOf(ownClass) + 1] ?? ownClass;
  return CLASS_ORDER.indexOf(needed) > CLASS_ORDER.indexOf(nextUp) ? needed : nextUp;
}
