import type { BuildSheet } from '../facts/build-sheet.js';
import { jackLoad } from '../load/jack-load.js';
import { exceeds } from '../units/compare.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';

/** What the tongue jacks would carry with the trailer unhitched, against what they may lift and hold. */
export interface JackCheck {
  /** All of them together. */
  readonly loadN: Newtons;
  /** Where the jacks stand is unknown: they carry at least the tongue weight, and more the nearer they stand to the axles. */
  readonly isLeast: boolean;
  /** How many share it; null when unknown. Jacks side by side are taken to share equally. */
  readonly count: number | null;
  readonly liftN: Newtons | null;
  readonly supportN: Newtons | null;
  /** `lift`: it cannot be raised off the ball. `support`: not even held. */
  readonly short: 'lift' | 'support' | null;
}

/**
 * Null while neither capacity is known. With the number of jacks unknown one is taken, which has to be there, and nothing
 * is called short that two might carry.
 */
export function checkJacks(
  { jacks }: Pick<BuildSheet, 'jacks'>,
  tongueN: Newtons,
  axleCentreM: Metres | null,
): JackCheck | null {
  const { count, liftKg, supportKg, fromCouplerM } = jacks;
  if (liftKg === null && supportKg === null) return null;
  if (count === 0) return null;
  const placed = fromCouplerM !== null && axleCentreM !== null && fromCouplerM < axleCentreM;
  const loadN = placed ? jackLoad(tongueN, fromCouplerM, axleCentreM) : tongueN;
  const together = (oneKg: Kilograms | null) => (oneKg === null ? null : newtons(weightOf(oneKg) * (count ?? 1)));
  const liftN = together(liftKg);
  const supportN = together(supportKg);
  const isPast = (capacityN: Newtons | null) => count !== null && capacityN !== null && exceeds(loadN, capacityN);
  return {
    loadN,
    isLeast: !placed,
    count,
    liftN,
    supportN,
    short: isPast(supportN) ? 'support' : isPast(liftN) ? 'lift' : null,
  };
}
