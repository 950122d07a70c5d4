import type { Newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { Limit } from './limit.js';
import type { TongueBand } from './tongue-band.js';
import type { Torsion } from './torsion.js';

/**
 * Everything a build, its tires at their pressures and a tow vehicle bring to a load check, worked out once, so that
 * a thousand trips on one build cost a thousand comparisons and no more.
 */
export interface LoadLimits {
  readonly plate: Limit | null;
  /** What the axles' ratings allow together. */
  readonly axleGroup: Limit | null;
  /** From the front. */
  readonly axles: readonly AxleLimits[];
  /** Runs of consecutive axles that the law holds to less than their own ratings do, or whose ratings are unknown. */
  readonly legal: readonly LegalRun[];
  readonly coupler: Limit | null;
  readonly couplerTongue: Limit | null;
  readonly towHitch: Limit | null;
  readonly towHitchTongue: Limit | null;
  readonly sharing: AxleSharing;
  /** What torsion axles are split by; null for any other sharing. */
  readonly torsion: Torsion | null;
  /**
   * Where the axles carry what they carry, the trailer level: the middle of the group, or for torsion axles of known
   * and unlike rates nearer to the stiffer. Null when an axle's place is unknown.
   */
  readonly axleCentreM: Metres | null;
  readonly emptyKg: Kilograms | null;
  readonly emptyWeighed: boolean;
  readonly emptyTongueN: Newtons | null;
  readonly band: TongueBand;
  readonly hitchKnown: boolean;
  /** Ratings nobody gave, and which check each stops. */
  readonly ratingLacks: readonly RatingLack[];
}

export interface RatingLack {
  readonly lacks: 'gvwr' | 'axle-ratings' | 'tire-ratings' | 'tire-table-row' | 'coupler-rating';
  readonly stops: 'plate-check' | 'axle-check' | 'tire-check' | 'coupler-check';
  readonly subject?: string;
}

/** Consecutive axles, by their places from 0. */
export interface LegalRun {
  readonly first: number;
  readonly last: number;
  readonly limit: Limit;
}

export interface AxleLimits {
  readonly number: number;
  readonly wheels: number;
  /** Between the middles of the tires on the two sides. */
  readonly trackM: Metres | null;
  /** The lesser of the plate's rating and the axle maker's. */
  readonly rated: Limit | null;
  /** Each tire of the axle whose capacity is known. */
  readonly tires: readonly Limit[];
}

/**
 * How axles share what they carry. `equal`: equalized springs, or a single axle. `separate`: torsion axles, each its
 * own spring on a rigid frame, so the share depends on hitch height and road (`torsion.ts`). `unknown`: nobody said which.
 */
export type AxleSharing = 'equal' | 'separate' | 'unknown';
