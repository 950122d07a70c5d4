import type { Kilometres } from '../units/distance.js';

/**
 * How steeply load tells on each part: damage grows as (load / rated)^m.
 * Bearing 10/3: ISO 281, roller bearings. Weld 3: EN 1993-1-9, ranges above the bend; 5 below it, which this leaves
 * aside and so overstates small loads. Leaf spring 4 to 5, taken as 4.5: from memory, unverified. Road 4: the rule of
 * thumb from the AASHO road test.
 */
export const DAMAGE_EXPONENT = { bearing: 10 / 3, weld: 3, spring: 4.5, road: 4 } as const;
export type DamagedPart = keyof typeof DAMAGE_EXPONENT;

/**
 * Kilometres at the rated load that hurt a part as much as these at this load: km · (load / rated)^m.
 * Load and rating in one unit, the rating above 0 and the load from 0 on, else RangeError. Only for comparing use with
 * use: it takes the dead weight for the range of stress, which no road keeps to.
 */
export function ratedKm(distance: Kilometres, load: number, rated: number, part: DamagedPart): Kilometres {
  return (distance * loadFactor(load, rated, part)) as Kilometres;
}

/** (load / rated)^m. */
export function loadFactor(load: number, rated: number, part: DamagedPart): number {
  if (!(rated > 0) || !(load >= 0))
    throw new RangeError(`a load of ${load} on a rating of ${rated} cannot be compared`);
  return (load / rated) ** DAMAGE_EXPONENT[part];
}
