import { inch, type Metres } from '../units/length.js';
import { type Kilopascals, psi } from '../units/pressure.js';

/**
 * How much more a board carries for a short time than for ten years, by how long the full load stands on it in all,
 * added up over the deck's life. Not for stiffness. Source: NDS 2018, table 2.3.2.
 */
export const LOAD_DURATION = {
  permanent: 0.9,
  'ten-years': 1.0,
  'two-months': 1.15,
  'seven-days': 1.25,
  'ten-minutes': 1.6,
  impact: 2.0,
} as const;
export type LoadDuration = keyof typeof LOAD_DURATION;

/** Wood over 19 % moisture. Source: NDS 2018 supplement, table 4A. */
const WET_BENDING = 0.85;
const WET_SHEAR = 0.97;
const WET_ELASTICITY = 0.9;
/** At and below this bending value times size factor wet wood is as strong as dry. Source: same table. */
const WET_THRESHOLD = psi(1_150);

/**
 * Wet factor of bending: 0.85, but 1.0 where the reference value times the size factor is 1,150 psi or less.
 * `bending`: reference value times size factor.
 */
export function wetBendingFactor(bending: Kilopascals): number {
  // A billionth of slack: 1,150 psi to kPa and back is not exact.
  return bending <= WET_THRESHOLD * (1 + 1e-9) ? 1 : WET_BENDING;
}

export const WET_SHEAR_FACTOR = WET_SHEAR;
export const WET_ELASTICITY_FACTOR = WET_ELASTICITY;

/** Dressed widths of nominal 4, 6, 8, 10, 12 in boards. Source: American Softwood Lumber Standard PS 20. */
const DRESSED = {
  four: inch(3.5),
  five: inch(4.5),
  six: inch(5.5),
  eight: inch(7.25),
  ten: inch(9.25),
  twelve: inch(11.25),
};
const ROUNDING = 1e-6;

/**
 * A board laid flat is stronger than its published edgewise value says. Source: NDS 2018 supplement, table 4A
 * (boards of nominal 2 or 3 in; nominal 4 in, from dressed 3-1/2 in on, gain less, and its 10 in row is from memory).
 * A width between two rows takes the lower one.
 */
export function flatUseFactor(width: Metres, thickness: Metres): number {
  const reaches = (row: Metres) => width + ROUNDING >= row;
  if (thickness + ROUNDING >= DRESSED.four) {
    return reaches(DRESSED.ten) ? 1.1 : reaches(DRESSED.five) ? 1.05 : 1.0;
  }
  if (reaches(DRESSED.ten)) return 1.2;
  if (reaches(DRESSED.six)) return 1.15;
  return reaches(DRESSED.four) ? 1.1 : 1.0;
}

/**
 * Size factor of bending, Select Structural to No. 3, nominal 2 or 3 in thick. A width between two rows takes the wider,
 * weaker one. Southern pine has none since 2012: its values are published by width. Source: NDS 2018 supplement, table 4A.
 */
export function sizeFactor(width: Metres): number {
  const fits = (row: Metres) => width <= row + ROUNDING;
  if (fits(DRESSED.four)) return 1.5;
  if (fits(DRESSED.five)) return 1.4;
  if (fits(DRESSED.six)) return 1.3;
  if (fits(DRESSED.eight)) return 1.2;
  if (fits(DRESSED.ten)) return 1.1;
  return fits(DRESSED.twelve) ? 1.0 : 0.9;
}

// The repetitive member factor, 1.15, is for boards that share load through something stiff (NDS 4.3.9, from memory). Boards
// side by side on crossmembers do not, so a deck is never given it.

/** Preservative cuts: Douglas-fir, hem-fir and spruce-pine-fir are incised to take it. Source: NDS 4.3.8, from memory, unverified. */
export const INCISED_BENDING = 0.8;
export const INCISED_ELASTICITY = 0.95;
