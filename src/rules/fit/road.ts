import { carriedBy } from '../load/carried.js';
import { liftOff, overRoad } from '../load/road.js';
import { exceeds } from '../units/compare.js';
import { newtons, weightOf } from '../units/force.js';
import { inch, metres } from '../units/length.js';
import type { FitCase, FitReason, RoadReason } from './fit-answer.js';
import { type Judgement, NOTHING_AGAINST } from './judgement.js';

/** The bump and the dip asked about: a driveway apron, a rail crossing, a washed-out edge. Our choice, no source. */
const UNEVEN_M = inch(3);

/**
 * Torsion axles: what a dip or a crest does with this load. It decides nothing: ratings are for standing loads, and these
 * are met in passing. Said where an axle then carries more than it is rated for, or another leaves the ground.
 */
export function judgeRoad(fitCase: FitCase): Judgement {
  const reasons: FitReason[] = [];
  for (const way of ['bump', 'dip'] as const) {
    const found = roadReason(fitCase, way);
    if (found !== null && (found.liftsAtM !== null || (found.ratedN !== null && exceeds(found.mostN, found.ratedN)))) {
      reasons.push({ kind: 'road', ...found });
    }
  }
  return reasons.length === 0 ? NOTHING_AGAINST : { verdict: 'go', reasons, remedies: [] };
}

function roadReason({ limits, input }: FitCase, way: 'bump' | 'dip'): RoadReason | null {
  const rates = limits.torsion?.rates ?? null;
  const { momentNm, grossKg, attitude } = carriedBy(limits, input.load);
  if (rates === null || momentNm === null || !(momentNm > 0)) return null;
  const on = { weightN: grossKg === null ? newtons(0) : weightOf(grossKg), momentNm };
  const raisedM = attitude?.raisedM ?? metres(0);
  const over = overRoad(rates.stiffest, on, raisedM, metres(way === 'bump' ? UNEVEN_M : -UNEVEN_M));
  const lift = liftOff(rates.stiffest, on, raisedM, way);
  const lifts = lift !== null && lift.byM <= UNEVEN_M ? lift : null;
  return {
    way,
    heightM: UNEVEN_M,
    mostN: over.mostN,
    axle: over.carriedBy,
    ratedN: limits.axles[over.carriedBy - 1]?.rated?.limitN ?? null,
    liftsAtM: lifts?.byM ?? null,
    lifts: lifts?.lifts ?? null,
    ratesAssumed: !rates.known,
  };
}
