import type { Quantity } from './quantity.js';

export type Kilograms = Quantity<'kg'>;

/** International avoirdupois pound, exact by definition. Source: NIST Handbook 44 (2024), appendix C. */
const KG_PER_LB = 0.45359237;

export function kg(value: number): Kilograms {
  return value as Kilograms;
}

export function lb(value: number): Kilograms {
  return (value * KG_PER_LB) as Kilograms;
}

export function toLb(mass: Kilograms): number {
  return mass / KG_PER_LB;
}
