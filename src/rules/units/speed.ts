import { km, miles, toMiles } from './distance.js';
import type { Quantity } from './quantity.js';

export type KilometresPerHour = Quantity<'km/h'>;

export function kmPerHour(value: number): KilometresPerHour {
  return value as KilometresPerHour;
}

export function mph(value: number): KilometresPerHour {
  return kmPerHour(miles(value));
}

export function toMph(speed: KilometresPerHour): number {
  return toMiles(km(speed));
}
