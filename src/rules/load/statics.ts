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
  /** From the trailer's middle line; right is positive. Left out, it sits in the middle. */
  readonly offCentreM?: Metres;
}

/** Any number of weights as the one force and moments they come to. The empty trailer is one of them. */
export interface Resultant {
  readonly weightN: Newtons;
  /** About the coupler, N·m: Σ w_i x_i. */
  readonly momentNm: number;
}

export function resultant(weights: readonly PlacedWeight[]): Resultant {
  let weightN = 0;
  let momentNm = 0;
  for (const { massKg, fromCouplerM } of weights) {
    weightN += massKg * STANDARD_GRAVITY;
    momentNm += massKg * STANDARD_GRAVITY * fromCouplerM;
  }
  return { weightN: newtons(weightN), momentNm };
}

/** Moment of the weights about the trailer's middle line, N·m; right is positive. A ball takes none of it: the axles do. */
export function rollMoment(weights: readonly PlacedWeight[]): number {
  let momentNm = 0;
  for (const { massKg, offCentreM } of weights) momentNm += massKg * STANDARD_GRAVITY * (offCentreM ?? 0);
  return momentNm;
}

/**
 * What the wheels of one axle carry, left and right, N: F/2 ∓ R/b, R being the roll moment that this axle takes (right
 * positive) and b its track. With the axle's own load off centre by y that is F/2 (1 ± 2y/b). Never below zero: past
 * that the wheel is off the ground and the other carries all. Throws RangeError for a track that is not above 0.
 */
export function wheelPair(axleN: Newtons, rollNm: number, trackM: Metres): { leftN: Newtons; rightN: Newtons } {
  if (!(trackM > 0)) throw new RangeError(`a track of ${trackM} m: must be above 0`);
  const rightN = Math.min(axleN, Math.max(0, axleN / 2 + rollNm / trackM));
  return { leftN: newtons(axleN - rightN), rightN: newtons(rightN) };
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
