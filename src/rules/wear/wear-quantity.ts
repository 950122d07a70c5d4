import type { MeasuredQuantity } from '../facts/check.js';
import type { PartKind } from '../facts/part.js';
import { inch } from '../units/length.js';

/** What is measured again and again on one part because it wears, drains or loosens. */
export const WEAR_QUANTITIES = [
  'tread-depth-mm',
  'lining-mm',
  'magnet-mm',
  'magnet-a',
  'battery-v',
  'end-play-mm',
  'chain-mm',
] as const satisfies readonly MeasuredQuantity[];
export type WearQuantity = (typeof WEAR_QUANTITIES)[number];

/** Where a part is done. `law` limits fail the annual inspection; `practice` only warns, since makers' numbers differ. */
export interface WearLimit {
  readonly value: number;
  /** `at`: exactly this is past it too; `past`: only beyond it. */
  readonly fails: 'at' | 'past';
  readonly worse: 'less' | 'more';
  readonly origin: 'law' | 'practice';
  readonly source: string;
}

export interface WearKind {
  /** The part whose replacement starts a new series; null where no such part is on record. */
  readonly part: PartKind | null;
  /** Which way the value goes as the part wears: −1 falls, 1 rises. */
  readonly direction: -1 | 1;
  /** What it wears with. */
  readonly by: 'distance' | 'days';
  /** Work sets it back without a new part (charging, adjusting), so a reading that is better starts a new series. */
  readonly canBeSetBack: boolean;
  /** Standard deviation of one reading around its trend: gauge, place and hand. Common practice, no source. */
  readonly gauge: number;
  /**
   * Usual wear per km and how far trailers stray from it, as a standard deviation; null where nothing is held. Common
   * practice, no source: it only stands in while readings are few, and is said to.
   */
  readonly usual: { readonly perKm: number; readonly spread: number } | null;
  /**
   * Practice's limit, or the share of the first reading that must be left where the size when new is all that counts.
   * Null where the law has one, and where makers mark it otherwise.
   */
  readonly practice:
    | { readonly value: number; readonly source: string }
    | { readonly shareOfFirst: number; readonly source: string }
    | null;
}

const MM_PER_M = 1000;
const PER_1000_KM = 1 / 1000;

/** How many readings the gauge's error is known as well as. Our choice: it keeps two lucky readings from looking exact. */
export const GAUGE_WORTH = 4;

export const WEAR_KINDS: Readonly<Record<WearQuantity, WearKind>> = {
  'tread-depth-mm': {
    part: 'tire',
    direction: -1,
    by: 'distance',
    canBeSetBack: false,
    gauge: 0.3,
    usual: { perKm: 0.12 * PER_1000_KM, spread: 0.06 * PER_1000_KM },
    // 49 CFR 393.75(c) and the annual inspection.
    practice: null,
  },
  'lining-mm': {
    part: 'brake-set',
    direction: -1,
    by: 'distance',
    canBeSetBack: false,
    gauge: 0.3,
    usual: { perKm: 0.08 * PER_1000_KM, spread: 0.04 * PER_1000_KM },
    // The annual inspection.
    practice: null,
  },
  'magnet-mm': {
    part: 'brake-set',
    direction: -1,
    by: 'distance',
    canBeSetBack: false,
    gauge: 0.3,
    usual: null,
    // No thickness holds for all: makers mark the face, and windings that show are past any mark.
    practice: null,
  },
  'magnet-a': {
    part: 'brake-set',
    direction: -1,
    by: 'distance',
    canBeSetBack: true,
    gauge: 0.1,
    usual: null,
    practice: {
      value: 2.5,
      source: "Common practice, no source: makers' figures for a sound magnet at 12 V run from 2.5 A (7 in) to 4.1 A.",
    },
  },
  'battery-v': {
    part: 'battery',
    direction: -1,
    by: 'days',
    canBeSetBack: true,
    gauge: 0.05,
    usual: null,
    practice: {
      value: 11.9,
      source:
        'Common practice, no source: below 11.9 V at rest it is flat. It must hold the brakes 15 minutes: 49 CFR 393.43(d).',
    },
  },
  'end-play-mm': {
    part: 'hub-bearings',
    direction: 1,
    by: 'distance',
    canBeSetBack: true,
    gauge: 0.03,
    usual: null,
    practice: {
      value: inch(0.01) * MM_PER_M,
      source: 'Common practice, no source: 0.001 to 0.010 in. The axle maker governs.',
    },
  },
  'chain-mm': {
    part: null,
    direction: -1,
    by: 'distance',
    canBeSetBack: false,
    gauge: 0.2,
    usual: null,
    practice: {
      shareOfFirst: 0.9,
      source:
        'Common practice, no source: a link worn by a tenth is done. The annual inspection is stricter: no wear that can be measured (Appendix A to Part 396 of 49 CFR, 2.e(3)(a)).',
    },
  },
};

/** Practice's limit for a series that began with this reading; null where practice has none. */
export function practiceLimit({ practice, direction }: WearKind, first: number): WearLimit | null {
  if (practice === null) return null;
  return {
    value: 'value' in practice ? practice.value : practice.shareOfFirst * first,
    fails: 'past',
    worse: direction < 0 ? 'less' : 'more',
    origin: 'practice',
    source: practice.source,
  };
}
