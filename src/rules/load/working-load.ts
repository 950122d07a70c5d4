import type { Metres } from '../units/length.js';
import { inch } from '../units/length.js';
import { type Kilograms, lb } from '../units/mass.js';

/**
 * Working load limits that count for a tie-down without a maker's mark, and for a chain whose mark names a grade.
 * Source: tables of 49 CFR 393.108 (text of 393.108(a) to (d); numbers from a public reprint of the section).
 * A marked value, higher or lower, replaces the table (393.108(b)).
 */
export const CHAIN_GRADES = ['grade30', 'grade43', 'grade70', 'grade80', 'grade100'] as const;
export type ChainGrade = (typeof CHAIN_GRADES)[number];

/** Nominal sizes as stamped, in inches. */
export const CHAIN_SIZES = ['1/4', '5/16', '3/8', '7/16', '1/2', '5/8'] as const;
export type ChainSize = (typeof CHAIN_SIZES)[number];

/** Pounds. At 5/16 in grade 80 stands below grade 70: a higher grade is not always the stronger chain. */
const CHAIN_LB: Readonly<Record<ChainGrade, Readonly<Record<ChainSize, number | null>>>> = {
  grade30: { '1/4': 1_300, '5/16': 1_900, '3/8': 2_650, '7/16': 3_700, '1/2': 4_500, '5/8': 6_900 },
  grade43: { '1/4': 2_600, '5/16': 3_900, '3/8': 5_400, '7/16': 7_200, '1/2': 9_200, '5/8': 13_000 },
  grade70: { '1/4': 3_150, '5/16': 4_700, '3/8': 6_600, '7/16': 8_750, '1/2': 11_300, '5/8': 15_800 },
  grade80: { '1/4': 3_500, '5/16': 4_500, '3/8': 7_100, '7/16': null, '1/2': 12_000, '5/8': 18_100 },
  grade100: { '1/4': 4_300, '5/16': 5_700, '3/8': 8_800, '7/16': null, '1/2': 15_000, '5/8': 22_600 },
};

/** Unmarked chain counts as grade 30 proof coil. Source: 49 CFR 393.108(d). */
const UNMARKED_CHAIN: ChainGrade = 'grade30';

/** What a chain may hold; a grade of null is unmarked. Null where the table has no row. */
export function chainWorkingLoad(size: ChainSize, grade: ChainGrade | null): Kilograms | null {
  const pounds = CHAIN_LB[grade ?? UNMARKED_CHAIN][size];
  return pounds === null ? null : lb(pounds);
}

/** Unmarked synthetic webbing by its width. */
const WEBBING: readonly { readonly widthM: Metres; readonly holdsKg: Kilograms }[] = [
  { widthM: inch(4), holdsKg: lb(4_000) },
  { widthM: inch(3), holdsKg: lb(3_000) },
  { widthM: inch(2), holdsKg: lb(2_000) },
  { widthM: inch(1.75), holdsKg: lb(1_750) },
];

/** Tape measures err by less than this, m; a width between two rows takes the narrower one. */
const WIDTH_ROUNDING_M = 0.001;

/** What an unmarked web strap of this width may hold; null for one narrower than the table. */
export function webbingWorkingLoad(widthM: Metres): Kilograms | null {
  return WEBBING.find((row) => widthM >= row.widthM - WIDTH_ROUNDING_M)?.holdsKg ?? null;
}

/** Nominal sizes of wire rope, 6 × 37 fibre core, in inches, and the pounds they may hold. */
const WIRE_ROPE_LB = {
  '1/4': 1_400,
  '5/16': 2_100,
  '3/8': 3_000,
  '7/16': 4_100,
  '1/2': 5_300,
  '5/8': 8_300,
  '3/4': 10_900,
} as const;
export type WireRopeSize = keyof typeof WIRE_ROPE_LB;
export const WIRE_ROPE_SIZES = Object.keys(WIRE_ROPE_LB) as readonly WireRopeSize[];

export function wireRopeWorkingLoad(size: WireRopeSize): Kilograms {
  return lb(WIRE_ROPE_LB[size]);
}

/**
 * What a tie-down may hold as a whole: the least of its parts, tensioner and anchor point included. Null while the limit
 * of one of them is unknown. Source: 49 CFR 393.108(a).
 */
export function weakestOf(partsKg: readonly (Kilograms | null)[]): Kilograms | null {
  let least: Kilograms | null = null;
  for (const part of partsKg) {
    if (part === null) return null;
    if (least === null || part < least) least = part;
  }
  return least;
}
