import type { BuildSheet } from '../facts/build-sheet.js';
import type { Load } from '../facts/load.js';
import type { Part } from '../facts/part.js';
import type { TowVehicle } from '../facts/use.js';
import type { YardPolicy } from '../facts/yard-policy.js';
import type { Newtons } from '../units/force.js';
import type { Kilograms } from '../units/mass.js';
import type { Kilopascals } from '../units/pressure.js';
import type { Comparison } from './limit.js';

/** One load on one build, as it stands on level ground, held against every limit we can work out. */
export interface LoadCheck {
  readonly grossKg: Kilograms | null;
  readonly cargoKg: Kilograms | null;
  readonly tongueN: Newtons | null;
  /** Tongue weight over gross weight, 0 to 1. */
  readonly tongueShare: number | null;
  readonly axleGroupN: Newtons | null;
  readonly axleN: readonly Newtons[] | null;
  /** How the tongue and axle loads became known. */
  readonly method: 'scale' | 'statics' | 'bound' | null;
  readonly comparisons: readonly Comparison[];
  readonly tongueBand: {
    readonly low: number;
    readonly high: number | null;
    readonly standing: 'inside' | 'low' | 'high' | 'unknown';
  };
  /** What could not be worked out, and which fact it lacks. */
  readonly unknowns: readonly LoadUnknown[];
}

export interface LoadUnknown {
  readonly lacks:
    | 'gvwr'
    | 'empty-mass'
    | 'cargo-mass'
    | 'balance-point'
    | 'axle-places'
    | 'axle-ratings'
    | 'tire-ratings'
    | 'coupler-rating'
    | 'torsion-level';
  readonly stops:
    | 'gross'
    | 'tongue'
    | 'axle-loads'
    | 'tire-loads'
    | 'plate-check'
    | 'axle-check'
    | 'tire-check'
    | 'coupler-check';
}

export interface LoadCheckInput {
  readonly build: BuildSheet;
  readonly tires: readonly Part[];
  readonly load: Load;
  /** Cold pressure last found, by wheel position. Positions not listed are taken at the sidewall pressure, as the plate asks. */
  readonly coldPressures: ReadonlyMap<string, Kilopascals>;
  readonly towVehicle: TowVehicle | null;
  readonly policy: YardPolicy;
}

export function loadCheck(_input: LoadCheckInput): LoadCheck {
  throw new Error('written next');
}
