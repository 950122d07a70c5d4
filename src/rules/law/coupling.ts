import { exceeds } from '../units/compare.js';
import { type Kilograms, kg, lb } from '../units/mass.js';

/** A class of light-service coupling by the trailer's rating, and the least its parts may break at. */
export interface CouplingClass {
  readonly number: 1 | 2 | 3 | 4;
  /** Each safety chain. Breaking strength, never working load. */
  readonly chainBreakKg: Kilograms;
  /** The coupler, pulled. */
  readonly couplerBreakKg: Kilograms;
}

/**
 * Classes 1 to 3 by greatest gross trailer mass, with the strengths of each; class 4 goes to 10,000 lb, its strengths by
 * the trailer's own rating. Source: SAE J684 as copied in Maryland COMAR 11.13.08.10; chains from a public glossary,
 * sizes.com/home/trailer_hitches.htm. The standard itself was not read. It binds by State law, not by federal rule.
 */
const CLASSES = [
  { number: 1, upToKg: lb(2_000), chainBreakKg: lb(2_000), couplerBreakKg: lb(6_000) },
  { number: 2, upToKg: lb(3_500), chainBreakKg: lb(3_500), couplerBreakKg: lb(10_500) },
  { number: 3, upToKg: lb(5_000), chainBreakKg: lb(5_000), couplerBreakKg: lb(15_000) },
] as const;
const CLASS_4_UP_TO_KG = lb(10_000);
const CLASS_4_COUPLER_TIMES = 3;

/** The class of coupling a trailer's rating asks for; null above 10,000 lb, where the standard ends. */
export function couplingClass(gvwrKg: Kilograms): CouplingClass | null {
  const light = CLASSES.find(({ upToKg }) => !exceeds(gvwrKg, upToKg));
  if (light !== undefined) {
    return { number: light.number, chainBreakKg: light.chainBreakKg, couplerBreakKg: light.couplerBreakKg };
  }
  if (exceeds(gvwrKg, CLASS_4_UP_TO_KG)) return null;
  return { number: 4, chainBreakKg: gvwrKg, couplerBreakKg: kg(CLASS_4_COUPLER_TIMES * gvwrKg) };
}

/**
 * Whether the safety device of a full trailer or dolly is strong enough: ultimate strength no less than the gross towed.
 * Source: 49 CFR 393.70(d)(3). A trailer that rests its tongue on the truck is a semitrailer there; State law asks alike.
 */
export function safetyDeviceHolds(ultimateKg: Kilograms, grossKg: Kilograms): boolean {
  return !exceeds(grossKg, ultimateKg);
}
