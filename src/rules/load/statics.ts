import { type Newtons, newtons, STANDARD_GRAVITY } from '../units/force.js';
import { type Metres, metres } from '../units/length.js';
import { type Kilograms, kg } from '../units/mass.js';

/**
 * Statics of a trailer on level ground whose axles share their load: equalized springs with equal arms, or one axle.
 * Places are measured rearward from the coupler. Moments about the axle group's middle x_c:
 *
 *     T = Σ w_i (x_c − x_i) / x_c        the axles carry W − T
 *
 * A weight behind the axles counts against the tongue; a negative tongue lifts the tow vehicle.
 * Source: plane statics; no approximation but the rigid frame. Not valid for several torsion axles, whose shares
 * depend on hitch height.
 */
export interface PlacedWeight {
  readonly massKg: Kilograms;
  readonly fromCouplerM: Metres;
}

/** What the coupler carries of these weights, N. Throws RangeError for axles not behind the coupler. */
export function tongueWeight(weights: readonly PlacedWeight[], axleCentreM: Metres): Newtons {
  let tongueN = 0;
  for (const weight of weights) tongueN += tongueFrom(weight.massKg, weight.fromCouplerM, axleCentreM);
  return newtons(tongueN);
}

/** What one weight puts on the coupler, N: w (x_c − x) / x_c; negative behind the axles. Throws RangeError for axles not behind the coupler. */
export function tongueFrom(massKg: Kilograms, fromCouplerM: Metres, axleCentreM: Metres): Newtons {
  requireBehindCoupler(axleCentreM);
  return newtons((massKg * STANDARD_GRAVITY * (axleCentreM - fromCouplerM)) / axleCentreM);
}

/** What the axles carry together, N: all that the coupler does not. */
export function axleGroupLoad(weights: readonly PlacedWeight[], axleCentreM: Metres): Newtons {
  let massKg = 0;
  for (const weight of weights) massKg += weight.massKg;
  return newtons(massKg * STANDARD_GRAVITY - tongueWeight(weights, axleCentreM));
}

/** The middle of an axle group that shares its load equally; null when an axle's place is unknown, when there is none, or when it does not lie behind the coupler. */
export function axleGroupCentre(axlePlaces: readonly (Metres | null)[]): Metres | null {
  let sum = 0;
  for (const place of axlePlaces) {
    if (place === null) return null;
    sum += place;
  }
  return sum > 0 ? metres(sum / axlePlaces.length) : null;
}

/** How far forward a mass must move to bring the tongue from one weight to another; negative is rearward. d = ΔT · x_c / w. */
export function forwardMove(massKg: Kilograms, fromN: Newtons, toN: Newtons, axleCentreM: Metres): Metres {
  requireBehindCoupler(axleCentreM);
  if (!(massKg > 0)) throw new RangeError(`a mass of ${massKg} kg cannot be moved; it must be above 0`);
  return metres(((toN - fromN) * axleCentreM) / (massKg * STANDARD_GRAVITY));
}

/** What the tongue gains when a mass moves forward; a loss when `forwardM` is negative. */
export function tongueChange(massKg: Kilograms, forwardM: Metres, axleCentreM: Metres): Newtons {
  requireBehindCoupler(axleCentreM);
  return newtons((massKg * STANDARD_GRAVITY * forwardM) / axleCentreM);
}

/**
 * Where a mass must sit for the tongue to carry a given share (0 to 1) of the whole.
 * Null when it weighs nothing, so that no place of it would do.
 */
export function placeForTongueShare(
  share: number,
  massKg: Kilograms,
  others: readonly PlacedWeight[],
  axleCentreM: Metres,
): Metres | null {
  if (!(massKg > 0)) return null;
  const othersKg = kg(others.reduce((sum, weight) => sum + weight.massKg, 0));
  const wantedN = share * (massKg + othersKg) * STANDARD_GRAVITY;
  const fromMassN = newtons(wantedN - tongueWeight(others, axleCentreM));
  return metres(axleCentreM - forwardMove(massKg, newtons(0), fromMassN, axleCentreM));
}

function requireBehindCoupler(axleCentreM: Metres): void {
  if (!(axleCentreM > 0)) throw new RangeError(`axles ${axleCentreM} m behind the coupler: must be above 0`);
}
