import { exceeds } from '../units/compare.js';
import { type Kilograms, lb } from '../units/mass.js';

/** A trailer of no more than this gross may go unbraked if it is light beside its truck, too. Source: 49 CFR 393.42(b)(3). */
const UNBRAKED_GROSS_KG = lb(3_000);

/** Its axle load then may be no more than this share of the tow vehicle's axle loads. Source: 49 CFR 393.42(b)(3)-(4). */
const UNBRAKED_SHARE_OF_TOWING = 0.4;

/** Minutes for which a breakaway must hold the brakes on. Source: 49 CFR 393.43(d). */
const BREAKAWAY_HOLD_MINUTES = 15;

/** From this many axles on not every braked axle need be applied by the breakaway. Source: 49 CFR 393.43(d). */
const BREAKAWAY_SPARES_AN_AXLE_FROM = 3;

/** Actual weights, not ratings. */
export interface LightTrailer {
  readonly grossKg: Kilograms;
  /** What its axles carry; null when not known. */
  readonly axlesKg: Kilograms | null;
  /** What the tow vehicle's axles carry together; null when not known. */
  readonly towingAxlesKg: Kilograms | null;
}

/**
 * Whether every wheel of a trailer in commerce must have a brake; null while the light exception can neither be claimed
 * nor refused. Source: 49 CFR 393.42(a), (b)(3). State lines lie between 1,500 and 4,500 lb and are not in here.
 */
export function brakesRequired({ grossKg, axlesKg, towingAxlesKg }: LightTrailer): boolean | null {
  if (exceeds(grossKg, UNBRAKED_GROSS_KG)) return true;
  if (axlesKg === null || towingAxlesKg === null) return null;
  return exceeds(axlesKg, UNBRAKED_SHARE_OF_TOWING * towingAxlesKg);
}

/** Whether a trailer is above the weight at which it might go unbraked, whatever tows it. */
export function isPastUnbraked(grossKg: Kilograms): boolean {
  return exceeds(grossKg, UNBRAKED_GROSS_KG);
}

/**
 * Whether a breakaway does what is asked: the required brakes go on by themselves, all of them on one or two axles, and
 * stay on 15 minutes. On three or more axles it must put some on, not all. Source: 49 CFR 393.43(d).
 */
export function breakawayHolds(tried: {
  readonly axles: number;
  readonly heldMinutes: number;
  readonly allBrakesWentOn: boolean;
}): boolean {
  const enough = tried.allBrakesWentOn || tried.axles >= BREAKAWAY_SPARES_AN_AXLE_FROM;
  return enough && tried.heldMinutes >= BREAKAWAY_HOLD_MINUTES;
}
