import { type Newtons, newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';

/**
 * What the tongue jacks carry together once the coupler is off the ball, N: the moment of the tongue weight about the
 * middle of the axle group, over the shorter arm of the jack:
 *
 *     J = T x_c / (x_c − x_j)
 *
 * never less than the tongue weight, and half again as much with a jack a third of the way to the axles.
 * A negative tongue pulls the jack off the ground: the trailer tips onto its tail. Source: plane statics.
 * Throws RangeError for a jack not ahead of the axles, or axles not behind the coupler.
 */
export function jackLoad(tongueN: Newtons, jackM: Metres, axleCentreM: Metres): Newtons {
  if (!(axleCentreM > 0)) throw new RangeError(`axles ${axleCentreM} m behind the coupler: must be above 0`);
  if (!(jackM < axleCentreM)) {
    throw new RangeError(`a jack ${jackM} m behind the coupler: must stand ahead of the axles at ${axleCentreM} m`);
  }
  return newtons((tongueN * axleCentreM) / (axleCentreM - jackM));
}
