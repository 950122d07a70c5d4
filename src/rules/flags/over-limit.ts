import type { Trip } from '../facts/use.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { type RodeOffLevel, rodeOffLevelBy } from '../load/attitude.js';
import type { Comparison, LimitKind } from '../load/limit.js';
import type { Flag, FlagRule, TripOver } from './flag.js';
import { clearedByTime, type FlagContext } from './flag-context.js';

/** Which rule speaks for which limit. The tow vehicle's own ratings are the fit's business: it may be another one tomorrow. */
const RULE_OF: Readonly<Partial<Record<LimitKind, FlagRule>>> = {
  plate: 'over-plate',
  'axle-group': 'over-axle-group',
  axle: 'over-axle',
  tire: 'over-tire',
  coupler: 'over-coupler',
  'coupler-tongue': 'over-coupler',
  'legal-axles': 'over-law',
};

/**
 * Recent trips that passed a rating of the build and tires of their day. Severity `limit`: a plate, axle, tire or
 * coupler rating, or what the law lets axles carry. Sources: the ratings themselves; tires 49 CFR 393.75(g); axles
 * 23 CFR 658.17.
 */
export function overLimitFlags({ trailer, recentTrips }: FlagContext): readonly Flag[] {
  const overs = new Map<FlagRule, { readonly trip: Trip; readonly over: TripOver }[]>();
  for (const trip of recentTrips) {
    const worst = new Map<FlagRule, Comparison>();
    for (const comparison of trailer.judge(trip)?.comparisons ?? []) {
      const rule = RULE_OF[comparison.limit.kind];
      if (rule === undefined || comparison.standing !== 'over') continue;
      const before = worst.get(rule);
      if (before === undefined || shareOver(comparison) > shareOver(before)) worst.set(rule, comparison);
    }
    for (const [rule, comparison] of worst) {
      const trips = overs.get(rule);
      const one = { trip, over: { tripId: trip.id, on: trip.startedOn, comparison } };
      if (trips === undefined) overs.set(rule, [one]);
      else trips.push(one);
    }
  }
  return [...overs].map(([rule, trips]) => ({
    key: rule,
    rule,
    severity: 'limit',
    since: trips[0]?.over.on ?? null,
    evidence: {
      kind: 'over-limit',
      worst: worstOf(trips.map((one) => one.over)),
      trips: trips.map((one) => one.over),
      attitude: trips.every((one) => rodeOffLevel(trailer, one.trip, one.over)) ? attitudeOf(trailer, trips) : null,
    },
    clears: clearedByTime(trips.map((one) => one.trip)),
  }));
}

/** Whether one torsion axle took what the axles together could have carried. */
function rodeOffLevel(trailer: TrailerOn, trip: Trip, { comparison }: TripOver): boolean {
  const { kind } = comparison.limit;
  if ((kind !== 'axle' && kind !== 'tire') || trailer.limitsOn(trip.startedOn)?.sharing !== 'separate') return false;
  const group = trailer.judge(trip)?.comparisons.find(({ limit }) => limit.kind === 'axle-group');
  return group !== undefined && group.standing !== 'over';
}

/** How the worst of these trips rode: by the heights where they were measured, else by which end carried more. */
function attitudeOf(
  trailer: TrailerOn,
  trips: readonly { readonly trip: Trip; readonly over: TripOver }[],
): RodeOffLevel | null {
  const worst = worstOf(trips.map((one) => one.over));
  const trip = trips.find((one) => one.over === worst)?.trip;
  const check = trip === undefined ? null : trailer.judge(trip);
  return check === null ? null : rodeOffLevelBy(check);
}

function worstOf(trips: readonly TripOver[]): TripOver {
  return trips.reduce((worst, next) => (shareOver(next.comparison) > shareOver(worst.comparison) ? next : worst));
}

function shareOver(comparison: Comparison): number {
  return comparison.loadN / comparison.limit.limitN;
}
