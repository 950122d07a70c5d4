import type { Trip } from '../facts/use.js';
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
};

/**
 * Recent trips that passed a rating of the build and tires of their day. Severity `limit`: a plate, axle, tire or
 * coupler rating. Sources: the ratings themselves; tires 49 CFR 393.75(g).
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
    evidence: { kind: 'over-limit', worst: worstOf(trips.map((one) => one.over)), trips: trips.map((one) => one.over) },
    clears: clearedByTime(trips.map((one) => one.trip)),
  }));
}

function worstOf(trips: readonly TripOver[]): TripOver {
  return trips.reduce((worst, next) => (shareOver(next.comparison) > shareOver(worst.comparison) ? next : worst));
}

function shareOver(comparison: Comparison): number {
  return comparison.loadN / comparison.limit.limitN;
}
