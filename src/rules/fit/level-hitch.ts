import { balancePointOf } from '../load/balance-point.js';
import { carriedBy } from '../load/carried.js';
import { reliefOf, whenLevel } from '../load/level.js';
import type { Comparison } from '../load/limit.js';
import { exceeds } from '../units/compare.js';
import { massHeldUpBy, type Newtons, newtons, weightOf } from '../units/force.js';
import type { Kilograms } from '../units/mass.js';
import type { FitCase, FitRemedy } from './fit-answer.js';
import { isSettledByLevel } from './open-axles.js';

type Level = Extract<FitRemedy, { kind: 'level' }>;
type Unload = Extract<FitRemedy, { kind: 'unload' }>;

/**
 * For torsion axles of which one, or its tires, carries too much, or may, while together they carry what they may: the
 * hitch is brought to the height at which the deck is level, and each axle weighed again. With the axles' places known it says
 * what tongue and axles will come to; a nose brought down takes load off the hitch, so its share is looked at again.
 * Null when something else is over, or when level would not do.
 */
export function levelHitch({ check, limits, input }: FitCase): Level | null {
  const over = check.comparisons.filter(({ standing }) => standing === 'over');
  const onOneAxle =
    over.some(({ limit }) => limit.kind === 'axle' || limit.kind === 'tire') || check.unknowns.some(isSettledByLevel);
  const onAll = over.some(({ limit }) => limit.kind === 'axle-group' || limit.kind === 'plate');
  if (limits.sharing !== 'separate' || !onOneAxle || onAll || check.axleGroupN === null) return null;
  const level = whenLevel(limits, carriedBy(limits, input.load));
  const evenN = newtons(check.axleGroupN / limits.axles.length);
  const axleN = level?.axleN ?? limits.axles.map(() => evenN);
  if (!allHold(axleN, limits.axles)) return null;
  const tongueN = level?.tongueN ?? null;
  return {
    kind: 'level',
    hitchHeightM: limits.torsion?.levelHeightM ?? null,
    axleN: level === null ? null : axleN,
    tongueN,
    tongueShare: tongueN === null || check.grossKg === null ? null : tongueN / weightOf(check.grossKg),
    tongueShareWanted: limits.band.low,
  };
}

/** Each axle within its rating and, its wheels pressing alike, within its tires'. */
function allHold(axleN: readonly Newtons[], axles: FitCase['limits']['axles']): boolean {
  return axles.every(({ rated, wheels, tires }, index) => {
    const loadN = axleN[index] as Newtons;
    const axleHolds = rated === null || !exceeds(loadN, rated.limitN);
    return axleHolds && tires.every((tire) => !exceeds(loadN / wheels, tire.limitN));
  });
}

/** The second choice: how much to take off the deck, at the load's balance point, for the axle that is over to be within its rating as the trailer stands. */
export function unload({ check, limits, input }: FitCase): Unload {
  const balancePointM = balancePointOf(input.load);
  const over = check.comparisons.filter(({ standing }) => standing === 'over');
  let leastKg: number | null = balancePointM === null ? null : 0;
  for (const comparison of over) {
    const axle = axleOf(comparison, limits.axles);
    if (axle === null || balancePointM === null) continue;
    const relief = reliefOf(limits, axle.index, balancePointM);
    if (relief === null || !(relief > 0)) leastKg = null;
    if (leastKg === null || relief === null) break;
    leastKg = Math.max(leastKg, massHeldUpBy(newtons(-comparison.marginN * axle.of)) / relief);
  }
  return { kind: 'unload', leastKg: leastKg === null || leastKg === 0 ? null : (leastKg as Kilograms) };
}

/** Which axle a comparison speaks of, and how many of what it compares make up the axle. */
function axleOf({ limit }: Comparison, axles: FitCase['limits']['axles']): { index: number; of: number } | null {
  if (limit.kind === 'axle') return { index: axles.findIndex((axle) => axle.rated === limit), of: 1 };
  if (limit.kind !== 'tire') return null;
  const index = axles.findIndex((axle) => axle.tires.includes(limit));
  return index < 0 ? null : { index, of: axles[index]?.wheels ?? 1 };
}
