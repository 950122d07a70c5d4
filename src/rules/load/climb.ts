import { type Newtons, newtons, weightOf } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import { tongueFrom } from './statics.js';

/** A machine climbing onto a hitched trailer. */
export interface Climb {
  readonly emptyTongueN: Newtons;
  readonly axleCentreM: Metres;
  readonly machineKg: Kilograms;
  /** Where the whole machine first presses on the trailer: the tail above a ramp, the pivot of a tilting deck. */
  readonly entersAtM: Metres;
  /** Where stabilizer jacks, a knee brace or blocks stand; null for none. */
  readonly supportAtM: Metres | null;
}

export interface ClimbLoads {
  /** On the hitch with nothing under the tail; negative pulls it up. */
  readonly tongueN: Newtons;
  /** How hard the hitch is pulled up with nothing under the tail; 0 when it is not. */
  readonly liftN: Newtons;
  /** What a support takes; null without one. */
  readonly support: {
    /** What it must take at the least to keep the hitch from being pulled up. */
    readonly leastN: Newtons;
    /** All it can be made to take: firm ground, springs that give, so that the axles carry none of the machine. */
    readonly mostN: Newtons;
  } | null;
}

/**
 * What the hitch feels while a machine stands at the end of the trailer, and what a support there takes.
 *
 * Without support it is the tongue of `load/statics.ts` with the machine at the tail. With one, hitch, axles and support
 * are three places for two equations: how much the support takes depends on springs, ground and how far it was screwed
 * down. So two bounds are given: S ≥ lift · x_c / (x_s − x_c) keeps the hitch from rising; S ≤ w x / x_s is all of the
 * machine's moment about the coupler. Source: plane statics.
 * Throws RangeError for axles not behind the coupler, or a support not behind the axles.
 */
export function climbLoads({ emptyTongueN, axleCentreM, machineKg, entersAtM, supportAtM }: Climb): ClimbLoads {
  const tongueN = newtons(emptyTongueN + tongueFrom(machineKg, entersAtM, axleCentreM));
  const liftN = newtons(Math.max(0, -tongueN));
  if (supportAtM === null) return { tongueN, liftN, support: null };
  if (!(supportAtM > axleCentreM)) {
    throw new RangeError(
      `a support ${supportAtM} m behind the coupler: must stand behind the axles at ${axleCentreM} m`,
    );
  }
  const leastN = newtons((liftN * axleCentreM) / (supportAtM - axleCentreM));
  const mostN = newtons((weightOf(machineKg) * entersAtM) / supportAtM);
  return { tongueN, liftN, support: { leastN, mostN: newtons(Math.max(leastN, mostN)) } };
}
