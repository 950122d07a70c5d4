import { exceeds } from '../units/compare.js';
import { feet, inch, type Metres, metres, toFeet } from '../units/length.js';
import { type Kilograms, kg, lb, toLb } from '../units/mass.js';

/** Gross of a vehicle or combination on the Interstate System, unless the formula gives less. Source: 23 CFR 658.17(b); 23 U.S.C. 127(a). */
export const INTERSTATE_GROSS_KG = lb(80_000);

/** One axle, or several no more than 40 in from first to last. Source: 23 CFR 658.17(c), 658.5. */
const SINGLE_KG = lb(20_000);
const SINGLE_WITHIN_M = inch(40);

/** Axles more than 40 and not more than 96 in from first to last, however many. Source: 23 CFR 658.17(d), 658.5. */
const TANDEM_KG = lb(34_000);
const TANDEM_WITHIN_M = inch(96);

/** Step to which the formula's answer is rounded. Source: 23 CFR 658.17(e). */
const STEP_LB = 500;

/** Two consecutive tandems may carry 34,000 lb each when this far from first to last axle. Source: 23 U.S.C. 127(a). */
const TWO_TANDEMS_FROM_M = feet(36);

/** What the law lets a run of consecutive axles carry, and by which of its rules. */
export interface AxleRunLimit {
  readonly rule: 'single' | 'tandem' | 'formula';
  readonly limitKg: Kilograms;
}

/**
 * The bridge formula, before rounding: W = 500 (L N / (N − 1) + 12 N + 36), W in lb, L in ft from the first to the last
 * of N axles. Source: 23 CFR 658.17(e). Throws RangeError for fewer than two axles or a length below 0.
 */
export function bridgeFormula(lengthM: Metres, axles: number): Kilograms {
  if (!(Number.isInteger(axles) && axles >= 2)) throw new RangeError(`${axles} axles: the formula is for two or more`);
  if (!(lengthM >= 0)) throw new RangeError(`${lengthM} m from first to last axle: must be 0 or more`);
  return lb(500 * ((toFeet(lengthM) * axles) / (axles - 1) + 12 * axles + 36));
}

/** The same to the nearest 500 lb; an exact half goes down, as the published table prints it (from memory, and the safe way). */
export function bridgeLimit(lengthM: Metres, axles: number): Kilograms {
  const steps = toLb(bridgeFormula(lengthM, axles)) / STEP_LB;
  return lb(Math.ceil(steps - 0.5 - 1e-9) * STEP_LB);
}

/**
 * What consecutive axles `lengthM` from first to last may carry on the Interstate System. Axles no more than 40 in apart
 * count as one single axle; up to 96 in as a tandem, be they three; beyond that the formula holds, and no more than the
 * gross. State roads and permits differ: check your state.
 */
export function axleRunLimit(lengthM: Metres, axles: number): AxleRunLimit {
  if (axles === 1 || !exceeds(lengthM, SINGLE_WITHIN_M)) return { rule: 'single', limitKg: SINGLE_KG };
  if (!exceeds(lengthM, TANDEM_WITHIN_M)) return { rule: 'tandem', limitKg: TANDEM_KG };
  return { rule: 'formula', limitKg: kg(Math.min(bridgeLimit(lengthM, axles), INTERSTATE_GROSS_KG)) };
}

/** What two consecutive tandems may carry together; null when they stand too close, so that only the formula holds. */
export function twoTandemsLimit(lengthM: Metres): Kilograms | null {
  return exceeds(TWO_TANDEMS_FROM_M, lengthM) ? null : kg(2 * TANDEM_KG);
}

/** A run of consecutive axles, counted from 0, and what the law lets it carry. */
export interface AxleRun extends AxleRunLimit {
  readonly first: number;
  readonly last: number;
}

/**
 * Every run of consecutive axles of one trailer, single axles included. `places` from the front; with one axle its
 * place does not matter. Null while a place is unknown, or when they are not in order: then no run can be measured.
 */
export function axleRuns(places: readonly (Metres | null)[]): readonly AxleRun[] | null {
  if (places.length === 1) return [{ first: 0, last: 0, ...axleRunLimit(metres(0), 1) }];
  const runs: AxleRun[] = [];
  for (let first = 0; first < places.length; first++) {
    for (let last = first; last < places.length; last++) {
      const from = places[first] ?? null;
      const to = places[last] ?? null;
      if (from === null || to === null || to < from) return null;
      runs.push({ first, last, ...axleRunLimit(metres(to - from), last - first + 1) });
    }
  }
  return runs;
}
