import { type CivilDate, day } from '../calendar/civil-date.js';
import { exceeds } from '../units/compare.js';
import { inch, type Metres } from '../units/length.js';
import { type Kilograms, lb } from '../units/mass.js';

/** Trailers from here up are in the rules for reflective tape and rear guards. Source: 49 CFR 393.13(a), 393.86. */
const HEAVY_FROM_KG = lb(10_001);

/** Tape is for trailers at least this wide. Source: 49 CFR 393.13(a). */
const TAPED_FROM_WIDTH_M = inch(80);

/** Built from this day on a trailer bears its maker's tape (49 CFR 571.108, from memory); before it tape was to be put on later. Source: 49 CFR 393.13(a). */
const TAPED_BY_MAKER_FROM = day('1993-12-01');

/** Built from this day on a trailer has the rear guard of Appendix A 15.a, before it that of 15.b. */
const REAR_GUARD_FROM = day('1998-01-26');

export interface MarkedTrailer {
  readonly builtOn: CivilDate;
  readonly gvwrKg: Kilograms;
}

/** Whether red and white tape had to be added to an older trailer. Source: 49 CFR 393.13(a). */
export function tapeRetrofitRequired({ builtOn, gvwrKg }: MarkedTrailer, widthM: Metres): boolean {
  return builtOn < TAPED_BY_MAKER_FROM && !exceeds(TAPED_FROM_WIDTH_M, widthM) && !exceeds(HEAVY_FROM_KG, gvwrKg);
}

/** A rear impact guard as found. Height is of its lower edge above the ground, empty; the bar's own depth is measured upright. */
export interface RearGuard {
  readonly groundM: Metres;
  /** How far its ends lie inside the trailer's sides. */
  readonly insideM: Metres;
  /** How far it lies ahead of the trailer's rear. */
  readonly aheadM: Metres;
  readonly barM: Metres;
}

const GUARD_LIMITS = {
  now: { groundM: inch(22), insideM: inch(4), aheadM: inch(12), barM: inch(4) },
  /** Built 1953 to 25 January 1998. */
  older: { groundM: inch(30), insideM: inch(18), aheadM: inch(24), barM: inch(0) },
} as const;

/**
 * Whether a trailer needs the rear guard of 1998, exemptions aside: those for low chassis, special purpose, wheels back
 * and poles (49 CFR 393.86(a)(1), from memory) take most equipment trailers out. Source: Appendix A to Part 396, 15.a.
 */
export function rearGuardRequired({ builtOn, gvwrKg }: MarkedTrailer): boolean {
  return builtOn >= REAR_GUARD_FROM && !exceeds(HEAVY_FROM_KG, gvwrKg);
}

/** Whether a guard passes the annual inspection; a measure that is null is not judged. Source: Appendix A to Part 396, 15.a, 15.b. */
export function rearGuardPasses(
  builtOn: CivilDate,
  guard: { readonly [measure in keyof RearGuard]: Metres | null },
): boolean {
  const limit = builtOn >= REAR_GUARD_FROM ? GUARD_LIMITS.now : GUARD_LIMITS.older;
  const over = (measure: 'groundM' | 'insideM' | 'aheadM') => {
    const found = guard[measure];
    return found !== null && exceeds(found, limit[measure]);
  };
  const thin = guard.barM !== null && exceeds(limit.barM, guard.barM);
  return !(over('groundM') || over('insideM') || over('aheadM') || thin);
}
