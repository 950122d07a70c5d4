import { lbf } from './force.js';
import { inch } from './length.js';
import type { Quantity } from './quantity.js';

/** Gauge pressure unless the name says absolute. */
export type Kilopascals = Quantity<'kPa'>;

/** One pound-force on one square inch, from the exact pound, inch and standard gravity. */
const KPA_PER_PSI = lbf(1) / inch(1) ** 2 / 1000;

export function kPa(value: number): Kilopascals {
  return value as Kilopascals;
}

export function psi(value: number): Kilopascals {
  return (value * KPA_PER_PSI) as Kilopascals;
}

export function toPsi(pressure: Kilopascals): number {
  return pressure / KPA_PER_PSI;
}
