import type { CivilDate } from '../calendar/civil-date.js';
import type { Kilograms } from '../units/mass.js';
import type { Kilopascals } from '../units/pressure.js';

export const PART_KINDS = [
  'tire',
  'hub-bearings',
  'brake-set',
  'deck',
  'coupler',
  'jack',
  'battery',
  'lamp-set',
] as const;
export type PartKind = (typeof PART_KINDS)[number];

/**
 * A dated thing fitted to the trailer.
 * Position of a tire: axle counted from the front, side, and for duals inner or outer: `1L`, `2R`, `1LI`, `1LO`; or `spare`.
 * Hub bearings and brake sets use axle and side; the rest have no position.
 */
export interface Part {
  readonly id: string;
  readonly kind: PartKind;
  readonly position: string | null;
  readonly fittedOn: CivilDate | null;
  readonly removedOn: CivilDate | null;
  /** Why it came off. Only what was worn out or broke has told how long such a part lasts. */
  readonly removedFor: 'worn-out' | 'damaged' | 'precaution' | 'moved' | null;
  readonly tire: TireMarks | null;
  readonly bearings: BearingNumbers | null;
  /** What it cost, fitted, in cents of the yard's currency. */
  readonly costCents: number | null;
}

/** Industry numbers of the two bearings of one hub, as stamped on their cones. */
export interface BearingNumbers {
  readonly inner: string | null;
  readonly outer: string | null;
}

/** What is marked on a tire's sidewall. */
export interface TireMarks {
  readonly size: string | null;
  readonly kind: 'ST' | 'LT' | 'passenger' | 'truck' | null;
  readonly loadIndexSingle: number | null;
  readonly loadIndexDual: number | null;
  readonly maxLoadSingleKg: Kilograms | null;
  readonly maxLoadDualKg: Kilograms | null;
  readonly loadRange: string | null;
  /** Letter beside the load index. */
  readonly speedSymbol: string | null;
  /** Cold pressure at which the maximum load holds. */
  readonly maxColdPressureKpa: Kilopascals | null;
  /** Week and year, four digits, as in 49 CFR 574.5; kept as read from the sidewall. */
  readonly dateCode: string | null;
}
