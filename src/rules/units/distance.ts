import type { Quantity } from './quantity.js';

/** Distance along the road. Kept apart from lengths of the trailer, which are metres. */
export type Kilometres = Quantity<'km'>;

/** International mile, exact by definition. Source: NIST Handbook 44 (2024), appendix C. */
const KM_PER_MILE = 1.609344;

export function km(value: number): Kilometres {
  return value as Kilometres;
}

export function miles(value: number): Kilometres {
  return (value * KM_PER_MILE) as Kilometres;
}

export function toMiles(distance: Kilometres): number {
  return distance / KM_PER_MILE;
}
