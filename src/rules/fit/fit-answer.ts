import type { CivilDate } from '../calendar/civil-date.js';
import type { Load } from '../facts/load.js';
import type { Driver, TowVehicle } from '../facts/use.js';
import type { TrailerOn } from '../history/trailer-on.js';
import type { Due } from '../inspection/due.js';
import type { UseSoFar } from '../inspection/use-so-far.js';
import type { RodeOffLevel } from '../load/attitude.js';
import type { Comparison } from '../load/limit.js';
import type { LoadCheck } from '../load/load-check.js';
import type { LoadLimits } from '../load/load-limits.js';
import type { Newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { Kilopascals } from '../units/pressure.js';

/** The answer for machine + trailer + job. */
export interface Fit {
  readonly verdict: Verdict;
  readonly loadCheck: LoadCheck;
  /** Each reason the answer is not plain `go`, worst first. */
  readonly reasons: readonly FitReason[];
  /** What would make it yes, in the order to try it. */
  readonly remedies: readonly FitRemedy[];
}

/**
 * `no-go`: not this trailer. `cannot-say`: a fact is missing. `weigh-first`: too near a limit to go unmeasured.
 * `go-after`: fix first. Of several the one named first here is the answer; the reasons keep all of them.
 */
export type Verdict = 'go' | 'go-after' | 'weigh-first' | 'no-go' | 'cannot-say';

/** What a bump or dip does to torsion axles. Met in passing, so it warns and decides nothing. */
export interface RoadReason {
  readonly way: 'bump' | 'dip';
  readonly heightM: Metres;
  /** The most one axle carries there, which one, counted from the front, and what it is rated for. */
  readonly mostN: Newtons;
  readonly axle: number;
  readonly ratedN: Newtons | null;
  /** The least height at which an axle leaves the ground, and which; null when it takes more than `heightM`. */
  readonly liftsAtM: Metres | null;
  readonly lifts: number | null;
  /** True where the axles' stiffness is only taken to be the most it may be. */
  readonly ratesAssumed: boolean;
}

export type FitReason =
  | { readonly kind: 'over' | 'near'; readonly comparison: Comparison }
  /** Torsion axles: how the trailer rides, and by how much the hitch is off level, where heights were measured. */
  | ({ readonly kind: 'attitude' } & RodeOffLevel)
  /** Torsion axles: a bump or dip of this height puts more on one axle than it is rated for, or lifts another. */
  | ({ readonly kind: 'road' } & RoadReason)
  | { readonly kind: 'tongue-share'; readonly share: number; readonly low: number; readonly high: number | null }
  | { readonly kind: 'hold'; readonly reason: string }
  | { readonly kind: 'due'; readonly due: Due; readonly when: 'before' | 'during' }
  | { readonly kind: 'never-proven'; readonly checkKindId: string; readonly what: string }
  | { readonly kind: 'tires-past-age'; readonly positions: readonly string[] }
  | {
      readonly kind: 'licence';
      readonly threshold: 'cdl-a' | 'cdl-b';
      readonly combinationKg: Kilograms;
      readonly thresholdKg: Kilograms;
      readonly driverHolds: 'A' | 'B' | 'none' | null;
    }
  | { readonly kind: 'commercial-rules'; readonly combinationKg: Kilograms; readonly thresholdKg: Kilograms }
  | { readonly kind: 'ball-size'; readonly couplerM: Metres; readonly ballM: Metres }
  | { readonly kind: 'unknown'; readonly lacks: string; readonly stops: string };

export type FitRemedy =
  /**
   * Leave off, swap or wash these cargo items, all those before it included. `overKg` is by how much the limit nearest
   * or furthest past is still passed; negative when inside.
   */
  | {
      readonly kind: 'lighten';
      readonly items: readonly string[];
      readonly grossKg: Kilograms;
      readonly overKg: Kilograms;
      readonly standing: 'inside' | 'near' | 'over';
    }
  /** Move the load; forward is positive. `forwardToM` is the most it may move before the band or a hitch rating stops it. */
  | {
      readonly kind: 'move-load';
      readonly forwardFromM: Metres;
      readonly forwardToM: Metres;
      readonly tongueFromN: Newtons;
      readonly tongueToN: Newtons;
    }
  | {
      readonly kind: 'inflate';
      readonly positions: readonly string[];
      readonly toKpa: Kilopascals;
      readonly askedByPlateKpa: Kilopascals | null;
      readonly carriesN: Newtons;
    }
  | { readonly kind: 'do-check'; readonly checkKindId: string; readonly code: string; readonly by: CivilDate | null }
  | { readonly kind: 'replace-tires'; readonly positions: readonly string[] }
  /**
   * Torsion axles: bring the hitch to the height at which the deck is level, then weigh each axle again. What tongue and
   * axles then come to, and the share the tongue should not fall below; null where a place or weight is unknown.
   */
  | {
      readonly kind: 'level';
      readonly hitchHeightM: Metres | null;
      readonly axleN: readonly Newtons[] | null;
      readonly tongueN: Newtons | null;
      readonly tongueShare: number | null;
      readonly tongueShareWanted: number;
    }
  /** Take at least this much off where the load sits, the hitch staying as it is; null while nobody can say how much. */
  | { readonly kind: 'unload'; readonly leastKg: Kilograms | null }
  | { readonly kind: 'weigh' }
  | { readonly kind: 'another-driver' }
  | { readonly kind: 'lift-hold' };

export interface FitInput {
  readonly load: Load;
  readonly startsOn: CivilDate;
  readonly endsOn: CivilDate;
  readonly commercial: boolean | null;
  readonly towVehicle: TowVehicle | null;
  readonly driver: Driver | null;
}

/** What every part of a fit looks at. */
export interface FitCase {
  readonly trailer: TrailerOn;
  readonly use: UseSoFar;
  readonly input: FitInput;
  readonly asOf: CivilDate;
  readonly limits: LoadLimits;
  readonly check: LoadCheck;
}
