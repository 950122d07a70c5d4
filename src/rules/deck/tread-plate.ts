import type { Metres } from '../units/length.js';
import { type Kilopascals, psi } from '../units/pressure.js';
import { bendingStress, momentAtMiddle, type PatchLoad } from './plank-bending.js';

/** Least yield strength of common structural plate, 36 ksi. Source: ASTM A36, from memory, unverified; plate of other steels differs. */
export const PLATE_YIELD: Kilopascals = psi(36_000);

/**
 * Bending stress in a strip of tread plate as wide as what stands on it. Thickness of the base only: the raised pattern
 * carries nothing. A strip is on the safe side: past yield a plate dents, then hangs like a net and carries more, so
 * this never blocks a trip.
 */
export function plateStress(load: PatchLoad, stripM: Metres, baseThicknessM: Metres): Kilopascals {
  return bendingStress(momentAtMiddle(load), stripM, baseThicknessM, 0 as Metres);
}
