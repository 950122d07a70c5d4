import type { Kilopascals } from '../units/pressure.js';

/**
 * The cold pressure at which a dual pair is taken: the lower of the two, since the softer tire lets its mate carry
 * the more. Null while neither is known; with one known, that one. Common practice, no source.
 */
export function pairPressure(inner: Kilopascals | null, outer: Kilopascals | null): Kilopascals | null {
  if (inner === null || outer === null) return inner ?? outer;
  return inner < outer ? inner : outer;
}
