import type { Kilograms } from './mass.js';
import { lb, toLb } from './mass.js';
import type { Quantity } from './quantity.js';

export type Newtons = Quantity<'N'>;

/** Standard acceleration of gravity, m/s², exact by definition. Source: BIPM SI Brochure (9th ed.), CGPM 1901. */
export const STANDARD_GRAVITY = 9.80665;

export function newtons(value: number): Newtons {
  return value as Newtons;
}

/** Pound-force: the weight of one pound under standard gravity. */
export function lbf(value: number): Newtons {
  return weightOf(lb(value));
}

export function toLbf(force: Newtons): number {
  return toLb(massHeldUpBy(force));
}

/** The force with which a mass presses on what carries it, standing still. */
export function weightOf(mass: Kilograms): Newtons {
  return (mass * STANDARD_GRAVITY) as Newtons;
}

/** The mass that a force holds up, standing still: what a scale under it would show. */
export function massHeldUpBy(force: Newtons): Kilograms {
  return (force / STANDARD_GRAVITY) as Kilograms;
}
