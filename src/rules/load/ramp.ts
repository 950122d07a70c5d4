import { type Metres, metres } from '../units/length.js';

/**
 * Geometry of driving up a ramp or a lowered deck. Angles in radians. Source of each: plane trigonometry on straight
 * ramps and firm wheels; tires, tracks and springs that give need more clearance than this says.
 */

/** Slope of a straight ramp: asin(height / length). Throws RangeError for one that does not reach the ground from there. */
export function rampAngle(heightM: Metres, rampLengthM: Metres): number {
  if (!(rampLengthM > 0) || !(heightM >= 0) || heightM > rampLengthM) {
    throw new RangeError(`a ramp of ${rampLengthM} m for a height of ${heightM} m: it must be longer than high`);
  }
  return Math.asin(heightM / rampLengthM);
}

/** Least friction between machine and ramp for it to climb, or stand, on a slope: the tangent of its angle. */
export function frictionNeeded(angle: number): number {
  return Math.tan(angle);
}

/** The sharpest crest a machine passes without touching, between wheels or along a track: 2 atan(2 clearance / wheelbase). */
export function breakoverAngle(clearanceM: Metres, wheelbaseM: Metres): number {
  if (!(wheelbaseM > 0)) throw new RangeError(`a wheelbase of ${wheelbaseM} m: must be above 0`);
  return 2 * Math.atan((2 * clearanceM) / wheelbaseM);
}

/** What a crest asks under the middle of a wheelbase: (wheelbase / 2) tan(crest / 2). */
export function clearanceNeeded(wheelbaseM: Metres, crestAngle: number): Metres {
  return metres((wheelbaseM / 2) * Math.tan(crestAngle / 2));
}

/** The steepest slope whose foot an overhang passes without touching: atan(height / overhang). */
export function approachAngle(heightM: Metres, overhangM: Metres): number {
  if (!(overhangM > 0)) throw new RangeError(`an overhang of ${overhangM} m: must be above 0`);
  return Math.atan(heightM / overhangM);
}
