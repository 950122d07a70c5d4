import { type Metres, metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';

/** A deck that turns about a pivot under the weight of the machine, its latch open. */
export interface TiltDeck {
  readonly pivotM: Metres;
  /** The tilting part's own mass and where its balance point lies; null when nobody has said. */
  readonly own: { readonly massKg: Kilograms; readonly fromCouplerM: Metres } | null;
}

/** Where a machine's balance point stands, rearward from the coupler, when the deck turns under it. */
export interface TippingPoint {
  readonly fromCouplerM: Metres;
  /**
   * The deck's own weight is unknown: its front part holds the deck down until the machine is somewhat behind the
   * pivot, and lets it come down only when the machine is no less far ahead. The pivot itself is then all that can be said.
   */
  readonly deckWeightUnknown: boolean;
}

/**
 * The deck turns when the machine's moment about the pivot outweighs the deck's own:
 *
 *     w (x − x_p) = W_d (x_p − x_d)        x = x_p + W_d (x_p − x_d) / w
 *
 * Behind that the tail goes down, ahead of it the deck lies down. Friction and the damping cylinder are left out: they
 * slow it, and shift the point both ways. Source: plane statics. Throws RangeError for a machine of no weight.
 */
export function tippingPoint({ pivotM, own }: TiltDeck, machineKg: Kilograms): TippingPoint {
  if (!(machineKg > 0)) throw new RangeError(`a machine of ${machineKg} kg: must weigh more than 0`);
  if (own === null) return { fromCouplerM: pivotM, deckWeightUnknown: true };
  const shift = (own.massKg * (pivotM - own.fromCouplerM)) / machineKg;
  return { fromCouplerM: metres(pivotM + shift), deckWeightUnknown: false };
}

/**
 * How much of the way the machine has between the pivot and the foremost place its balance point can reach, m. Not above
 * 0: it cannot drive far enough for the deck to lie down under it.
 */
export function roomAheadOfPivot(
  deckFrontM: Metres,
  machineBalancePointM: Metres,
  tipping: Pick<TippingPoint, 'fromCouplerM'>,
): Metres {
  return metres(tipping.fromCouplerM - (deckFrontM + machineBalancePointM));
}
