import type { TowVehicle } from '../facts/use.js';
import { exceeds } from '../units/compare.js';
import { type Kilograms, kg, lb } from '../units/mass.js';

/** From here up a vehicle or combination in interstate commerce is a commercial motor vehicle. Source: 49 CFR 390.5. */
export const COMMERCIAL_KG = lb(10_001);

/** Combinations from here up may need a commercial licence. Source: 49 CFR 383.91(a)(1), (2). */
export const CDL_KG = lb(26_001);

/** With more than this in tow the licence is of group A, with this or less of group B. Source: 49 CFR 383.91(a)(1), (2). */
const CDL_A_TOWED_OVER_KG = lb(10_000);

/** What a tow vehicle and its trailer come to together, against the federal thresholds. State rules may be stricter. */
export interface Combination {
  /** The towed unit: the greater of its rating and its actual mass. */
  readonly towedKg: Kilograms | null;
  readonly combinationKg: Kilograms | null;
  /** Whether commercial rules would apply in interstate commerce; null while it cannot be said. */
  readonly commercial: boolean | null;
  /** The licence group the weights ask for; null while it cannot be said. */
  readonly cdl: 'A' | 'B' | 'none' | null;
}

export interface CombinationInput {
  readonly towVehicle: Pick<TowVehicle, 'gvwrKg' | 'massKg' | 'gcwrKg'> | null;
  readonly trailerGvwrKg: Kilograms | null;
  /** Gross mass as hauled. */
  readonly trailerGrossKg: Kilograms | null;
}

/**
 * Ratings and actual masses both count, whichever is greater, unit by unit; and so does the maker's rating of the
 * combination. Source: 49 CFR 390.5 and 383.5, "gross combination weight rating" (79 FR 15245, 2014), the rule that
 * actual weight counts for both tests being from memory, unverified. Registered weight does not set these thresholds
 * (FMCSA guidance on 383.91). What is unknown leaves an answer open unless the known part alone settles it.
 */
export function combination({ towVehicle, trailerGvwrKg, trailerGrossKg }: CombinationInput): Combination {
  const towedKg = greater(trailerGvwrKg, trailerGrossKg);
  const towingKg = greater(towVehicle?.gvwrKg ?? null, towVehicle?.massKg ?? null);
  const sumKg = towedKg === null || towingKg === null ? null : kg(towedKg + towingKg);
  const combinationKg = towVehicle === null ? null : greater(sumKg, sumKg === null ? null : towVehicle.gcwrKg);
  const atLeastKg = kg(Math.max(towVehicle?.gcwrKg ?? 0, (towedKg ?? 0) + (towingKg ?? 0)));
  return {
    towedKg,
    combinationKg,
    commercial: reaches(atLeastKg, COMMERCIAL_KG) ? true : combinationKg === null ? null : false,
    cdl: licence(towedKg, towingKg, atLeastKg, combinationKg !== null),
  };
}

function licence(
  towedKg: Kilograms | null,
  towingKg: Kilograms | null,
  atLeastKg: Kilograms,
  complete: boolean,
): Combination['cdl'] {
  const groupA = towedKg !== null && exceeds(towedKg, CDL_A_TOWED_OVER_KG) && reaches(atLeastKg, CDL_KG);
  if (groupA) return 'A';
  if (!complete) return null;
  return towingKg !== null && reaches(towingKg, CDL_KG) ? 'B' : 'none';
}

function reaches(massKg: Kilograms, thresholdKg: Kilograms): boolean {
  return !exceeds(thresholdKg, massKg);
}

function greater(a: Kilograms | null, b: Kilograms | null): Kilograms | null {
  if (a === null || b === null) return a ?? b;
  return a > b ? a : b;
}
