import type { FitParking } from '../../rules/fit/fit.js';
import { type Metres, metres } from '../../rules/units/length.js';
import { inches } from './show.js';

/** Where the machine is best parked, in a phrase; between which places when it has room. */
export function parkingWords({ balancePointM, inside }: FitParking): string {
  const at = `balance point ${inches(rounded(balancePointM))} behind the coupler`;
  return inside === null
    ? `${at}, though no place keeps every limit`
    : `${at}; ${inches(rounded(inside.fromM, Math.ceil))} to ${inches(rounded(inside.toM, Math.floor))} keeps every limit that depends on it`;
}

/** To the half inch: nobody parks a machine closer. The ends of a range are rounded into it. */
function rounded(place: Metres, how: (halves: number) => number = Math.round): Metres {
  const HALF_INCH_M = 0.0127;
  return metres(how(place / HALF_INCH_M) * HALF_INCH_M);
}
