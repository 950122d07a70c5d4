import type { Kilopascals } from '../units/pressure.js';
import { kPa } from '../units/pressure.js';

/** Moisture content at which drying begins to strengthen wood, percent, where a species has none of its own. Wood Handbook, ch. 5; from memory, unverified. */
const DEFAULT_INTERSECTION_PERCENT = 25;

/** Moisture of the "12 %" column of published strengths. */
const DRY_PERCENT = 12;

/**
 * Strength of clear wood at a moisture content: exponential between the published green and 12 % values, flat at the
 * green value from the intersection point up.
 *
 *     P = P12 · (P12 / Pg)^((12 − M) / (Mp − 12))
 *
 * Source: USDA Forest Products Laboratory, Wood Handbook, ch. 5 (formula from memory, its worked example recomputed).
 * Valid from about 8 % up. Throws RangeError below: drier wood grows weaker again, and the law does not know it.
 */
export function strengthAtMoisture(
  dry: Kilopascals,
  green: Kilopascals,
  moisturePercent: number,
  intersectionPercent: number = DEFAULT_INTERSECTION_PERCENT,
): Kilopascals {
  if (!(moisturePercent >= 8)) throw new RangeError(`moisture of ${moisturePercent} %: the law holds from 8 % up`);
  if (moisturePercent >= intersectionPercent) return green;
  return kPa(dry * (dry / green) ** ((DRY_PERCENT - moisturePercent) / (intersectionPercent - DRY_PERCENT)));
}
