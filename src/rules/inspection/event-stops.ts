import { type Kilometres, km } from '../units/distance.js';

/** Looks wanted at distances after an event, such as a wheel's nuts 10, 25 and 50 miles after it was off. */
export interface EventStops {
  /** Distances after the event that were driven past with no record of the look. One record settles them all. */
  readonly missedKm: readonly Kilometres[];
  /** How far to drive from where it stands until each of the others. */
  readonly aheadKm: readonly Kilometres[];
}

/** `open`: distances no record covers, in order. `drivenKm`: since the event, as far as is known. */
export function eventStops(open: readonly Kilometres[], drivenKm: Kilometres): EventStops {
  return {
    missedKm: open.filter((at) => at <= drivenKm + NOISE_KM),
    aheadKm: open.filter((at) => at > drivenKm + NOISE_KM).map((at) => km(at - drivenKm)),
  };
}

/** A tenth of a millimetre, for sums of fractions. */
const NOISE_KM = 1e-7;
