import { type Newtons, toLbf } from '../units/force.js';
import { DAMAGE_EXPONENT } from './trip-damage.js';

/** The standard axle of the AASHO road test, kip. */
const STANDARD_KIP = 18;

export interface Pavement {
  /** Structural number, 1 to 6. */
  readonly structuralNumber: number;
  /** Serviceability at which it counts as worn out, 1.5 to 3. */
  readonly terminalServiceability: number;
}

/** A usual road of flexible pavement. Source: the published worked example (SN 3, p_t 2.5). */
export const USUAL_PAVEMENT: Pavement = { structuralNumber: 3, terminalServiceability: 2.5 };

/**
 * Standard 18 kip axles that one pass of this axle group equals on flexible pavement (AASHTO 1993):
 *
 *     W_x / W_18 = ((18 + 1) / (L_x + L_2))^4.79 · 10^(G/β_x) / 10^(G/β_18) · L_2^4.33
 *     G = log10((4.2 − p_t) / (4.2 − 1.5))    β = 0.40 + 0.081 (L_x + L_2)^3.23 / ((SN + 1)^5.19 · L_2^3.23)
 *
 * and the factor is W_18 / W_x; L in kips, L_2 = 1 for one axle and 2 for a tandem group. Only for comparing loads with
 * each other: it says what a road suffers and nothing about the trailer. Load above 0, else RangeError.
 */
export function axleEquivalents(loadN: Newtons, axles: 1 | 2, pavement: Pavement = USUAL_PAVEMENT): number {
  if (!(loadN > 0)) throw new RangeError(`an axle that carries ${loadN} N is no load`);
  const kip = toLbf(loadN) / 1000;
  const { structuralNumber, terminalServiceability } = pavement;
  const loss = Math.log10((4.2 - terminalServiceability) / (4.2 - 1.5));
  const beta = (weight: number, group: number): number =>
    0.4 + (0.081 * (weight + group) ** 3.23) / ((structuralNumber + 1) ** 5.19 * group ** 3.23);
  const passes =
    ((STANDARD_KIP + 1) / (kip + axles)) ** 4.79 *
    10 ** (loss / beta(kip, axles) - loss / beta(STANDARD_KIP, 1)) *
    axles ** 4.33;
  return 1 / passes;
}

/** The same by the rule of thumb, for a single axle: (load / 18 kip)^4. */
export function fourthPowerEquivalents(loadN: Newtons): number {
  return (toLbf(loadN) / 1000 / STANDARD_KIP) ** DAMAGE_EXPONENT.road;
}
