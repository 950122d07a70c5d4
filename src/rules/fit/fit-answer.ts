import type { CivilDate } from '../calendar/civil-date.js';
import type { DeckLack, PlankCheck, PlankStress } from '../deck/plank-check.js';
import type { EdgeKind } from '../envelope/boundary.js';
import type { Load } from '../facts/load.js';
import type { Driver, TowVehicle } from '../facts/use.js';
import type { TrailerOn } from '../history/trailer-on.js';
import type { Due } from '../inspection/due.js';
import type { FoundBoard } from '../inspection/soft-boards.js';
import type { RodeOffLevel } from '../load/attitude.js';
import type { Comparison } from '../load/limit.js';
import type { LoadCheck, ShareHeld } from '../load/load-check.js';
import type { LoadLimits } from '../load/load-limits.js';
import type { TieDownCheck, TieDownNeed } from '../load/tie-downs.js';
import type { RearSupport } from '../trailer/loading.js';
import type { TooLong, TooWide } from '../trailer/machine-room.js';
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
  /** Where the machine is best parked; null while a fact for it is missing, or without a machine. */
  readonly parking: FitParking | null;
}

/** The best place for the machine, and how much it leaves. Places rearward from the coupler. */
export interface FitParking {
  readonly machineId: string;
  readonly balancePointM: Metres;
  /** Where its front then stands, driven on forwards; null while its own balance point is unknown. */
  readonly frontM: Metres | null;
  /** From where to where every limit that depends on the place holds; null when none does. */
  readonly inside: { readonly fromM: Metres; readonly toM: Metres } | null;
  /** The limit with least left there, as a share of it, of those that depend on the place; negative when passed. */
  readonly tightest: { readonly kind: EdgeKind; readonly subject: string | null; readonly shareLeft: number };
  /** False while nobody said where the deck lies. */
  readonly deckKnown: boolean;
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
  | ({ readonly kind: 'tongue-share'; readonly low: number; readonly high: number | null } & ShareHeld)
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
  /** Deck or cargo wider than the road allows without a permit. */
  | { readonly kind: 'wider-than-law'; readonly widthM: Metres; readonly limitM: Metres }
  /** A machine wider than what lies between the fenders, or than a deck without any. */
  | ({ readonly kind: 'too-wide'; readonly machineId: string } & TooWide)
  | ({ readonly kind: 'too-long'; readonly machineId: string } & TooLong)
  | {
      readonly kind: 'ramp-rating';
      readonly machineId: string;
      readonly machineKg: Kilograms;
      readonly ratingKg: Kilograms;
      readonly marginKg: Kilograms;
      readonly standing: 'near' | 'over';
    }
  /** The machine at the tail pulls the hitch up; the bounds of what a support takes, where there is one. */
  | {
      readonly kind: 'rear-lift';
      readonly machineId: string;
      readonly machineKg: Kilograms;
      readonly liftN: Newtons;
      readonly support: RearSupport;
      readonly supportLeastN: Newtons | null;
      readonly supportMostN: Newtons | null;
    }
  /** The machine touches where ramp and deck meet; `isMost`: a dovetail makes it less. */
  | {
      readonly kind: 'hangs-up';
      readonly machineId: string;
      readonly neededM: Metres;
      readonly clearanceM: Metres;
      readonly isMost: boolean;
    }
  /** Driven on as far as it goes, the machine's balance point is still this far behind the pivot (0 or negative). */
  | { readonly kind: 'tilt-stays-up'; readonly machineId: string; readonly shortM: Metres }
  | { readonly kind: 'tie-downs'; readonly tied: TieDownCheck }
  | { readonly kind: 'tie-downs-unsaid'; readonly need: TieDownNeed }
  /** A machine that presses the planks past their strength, climbing or parked; `doubtful`: past an unverified one or a bound. */
  | {
      readonly kind: 'deck-plank';
      readonly machine: string;
      readonly standing: Extract<PlankCheck['standing'], 'breaks' | 'over' | 'doubtful'>;
      readonly stress: PlankStress;
    }
  /** Why this machine cannot be held against the planks. */
  | { readonly kind: 'deck-unknown'; readonly machine: string; readonly lacks: readonly DeckLack[] }
  /** Boards that probing found soft: whatever a forecast says, no machine goes onto them. */
  | {
      readonly kind: 'soft-deck';
      readonly boards: readonly FoundBoard[];
      readonly boardCount: number | null;
      readonly replaceM: Metres;
    }
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
  /** Fold in what sticks out, or measure the machine as hauled: it must come to no more than this. */
  | { readonly kind: 'fold-in'; readonly machineId: string; readonly lengthM: Metres }
  /** Block or prop the tail before the machine drives on. */
  | { readonly kind: 'prop-tail' }
  /** Make the slope less: longer ramps, the trailer's tail toward rising ground, planks at the crest. */
  | { readonly kind: 'flatten-ramp' }
  /** So many more tie-downs, and so much more counted working load. */
  | { readonly kind: 'tie-down'; readonly count: number; readonly workingLoadKg: Kilograms }
  /** Something stiff across the boards, so that this many share what one wheel, track or pad presses with. */
  | { readonly kind: 'spread-load'; readonly boards: number }
  | { readonly kind: 'replace-boards'; readonly boards: readonly (string | null)[] }
  | { readonly kind: 'weigh' }
  | { readonly kind: 'another-driver' }
  /** A permit of the state for what the law limits. */
  | { readonly kind: 'permit' }
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
  readonly input: FitInput;
  readonly asOf: CivilDate;
  readonly limits: LoadLimits;
  readonly check: LoadCheck;
}
