import type { Brakes } from '../facts/build-sheet.js';
import type { MeasuredQuantity } from '../facts/check.js';
import { inch } from '../units/length.js';

/**
 * A worn measure at which a part fails the annual inspection.
 * `at`: at this much and less (or more) it fails; `past`: only beyond it, exactly this passes.
 */
export interface WearLimit {
  readonly value: number;
  readonly fails: 'at' | 'past';
  /** Whether less is worse, as of a thickness, or more, as of play. */
  readonly worse: 'less' | 'more';
  readonly source: string;
}

const APPENDIX_A = 'Appendix A to Part 396 of 49 CFR';

const mm = (inches: number) => inch(inches) * 1000;

/** Tread of a trailer tire, mm, at any point of a major groove. Source also: 49 CFR 393.75(c); the number as in a public driver manual and Maryland COMAR 11.22.04.06. */
export const LEAST_TREAD: WearLimit = {
  value: mm(2 / 32),
  fails: 'past',
  worse: 'less',
  source: `${APPENDIX_A}, 10.b(8)`,
};

/** Lining at the middle of the shoe, mm, drums not on a steering axle. 49 CFR 393.47(d)(2) only forbids less than 1.6 mm: the annual inspection is the stricter. */
export const LEAST_LINING: Readonly<Record<'electric-or-hydraulic-drum' | 'air-drum' | 'air-disc', WearLimit>> = {
  'electric-or-hydraulic-drum': {
    value: mm(1 / 16),
    fails: 'at',
    worse: 'less',
    source: `${APPENDIX_A}, 1.a(6)(c)`,
  },
  'air-drum': { value: mm(1 / 4), fails: 'past', worse: 'less', source: `${APPENDIX_A}, 1.a(6)(c)` },
  'air-disc': { value: mm(1 / 8), fails: 'past', worse: 'less', source: `${APPENDIX_A}, 1.a(6)(c)` },
};

/** How much of a section may be gone, as a share. A chain link none: any wear that can be measured fails it. */
export const MOST_SECTION_LOST: Readonly<Record<'pintle-hook' | 'drawbar-eye' | 'chain-link', WearLimit>> = {
  'pintle-hook': { value: 0.2, fails: 'past', worse: 'more', source: `${APPENDIX_A}, 2.b(2)(c)` },
  'drawbar-eye': { value: 0.2, fails: 'past', worse: 'more', source: `${APPENDIX_A}, 2.c(2)` },
  'chain-link': { value: 0, fails: 'past', worse: 'more', source: `${APPENDIX_A}, 2.e(3)(a)` },
};

/** Play of coupling parts, mm. The numbers are from memory, unverified: shown, never held against a trailer. */
export const MOST_COUPLING_PLAY: Readonly<Record<'tongue-slider' | 'tongue-at-subframe', WearLimit>> = {
  'tongue-slider': { value: mm(1 / 4), fails: 'past', worse: 'more', source: `${APPENDIX_A}, 2.d(1), from memory` },
  'tongue-at-subframe': {
    value: mm(1 / 4),
    fails: 'at',
    worse: 'more',
    source: `${APPENDIX_A}, 2.d(2), from memory`,
  },
};

/** Share of its capacity under which a hydraulic reservoir fails. From memory, unverified. */
export const LEAST_BRAKE_FLUID: WearLimit = {
  value: 0.25,
  fails: 'past',
  worse: 'less',
  source: `${APPENDIX_A}, 1.j(1), from memory`,
};

/** Whether a measure passes its limit. */
export function passesWear(limit: WearLimit, measured: number): boolean {
  // A caliper reads no finer than a hundredth of a millimetre, and 1/16 in is 1.5875 mm: arithmetic noise decides nothing.
  const noise = Math.abs(limit.value) * 1e-9;
  const beyond = limit.worse === 'less' ? limit.value - measured : measured - limit.value;
  return limit.fails === 'at' ? beyond < -noise : beyond <= noise;
}

/**
 * The annual inspection's limit on what a check line measures, for brakes of this kind; null where the law names none
 * (magnets, play of bearings, batteries, deck boards: makers and common practice have those).
 */
export function lawOnMeasure(quantity: MeasuredQuantity, brakes: Brakes | null): WearLimit | null {
  if (quantity === 'tread-depth-mm') return LEAST_TREAD;
  if (quantity === 'lining-mm' && brakes !== 'none') return LEAST_LINING['electric-or-hydraulic-drum'];
  return null;
}
