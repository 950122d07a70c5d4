import type { Load } from '../facts/load.js';
import { type Metres, metres } from '../units/length.js';

/**
 * Where the cargo's balance point sits, rearward from the coupler. When every item that weighs anything has its own
 * place it follows from them, Σ m_i x_i / Σ m_i; else it is what was entered for the whole; null when neither is known.
 */
export function balancePointOf({ cargo, balancePointM }: Load): Metres | null {
  let massKg = 0;
  let momentKgM = 0;
  for (const item of cargo) {
    if (!(item.massKg > 0)) continue;
    if (item.fromCouplerM === null) return balancePointM;
    massKg += item.massKg;
    momentKgM += item.massKg * item.fromCouplerM;
  }
  return massKg > 0 ? metres(momentKgM / massKg) : balancePointM;
}
