import type { CivilDate } from '../calendar/civil-date.js';
import type { PlankStress } from '../deck/plank-check.js';
import type { MeasuredQuantity } from '../facts/check.js';
import type { FoundBoard } from '../inspection/soft-boards.js';
import type { ReachedOn } from '../inspection/wear-trends.js';
import type { RodeOffLevel } from '../load/attitude.js';
import type { Comparison } from '../load/limit.js';
import type { ShareHeld } from '../load/load-check.js';
import type { TieDownCheck } from '../load/tie-downs.js';
import type { TireMismatch } from '../tire/tire-mismatch.js';
import type { JackCheck } from '../trailer/jacks.js';
import type { TooLong, TooWide } from '../trailer/machine-room.js';
import type { TrailerClass } from '../trailer/ratings.js';
import type { Newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { WearLimit, WearQuantity } from '../wear/wear-quantity.js';
import type { Clearance } from './clearance.js';
import type { LoadTrend, PartDamage } from './loads-of-quarter.js';
import type { TripSeen } from './trips-seen.js';

/** A rule's verdict that use or condition is past a limit, with its evidence. Pages and mails write the sentence. */
export interface Flag {
  /** Stays the same while the same thing is wrong, so that people are told once: rule and subject. */
  readonly key: string;
  readonly rule: FlagRule;
  readonly severity: Severity;
  readonly since: CivilDate | null;
  readonly evidence: FlagEvidence;
  /** What would clear it: any one of these is enough. */
  readonly clears: readonly [Clearance, ...Clearance[]];
}

/** `stop`: do not load. `limit`: over a rating or a law. `watch`: heading there. */
export type Severity = 'stop' | 'limit' | 'watch';

export const FLAG_RULES = [
  'over-plate',
  'over-axle-group',
  'over-axle',
  'over-tire',
  'over-coupler',
  'over-law',
  'tongue-share',
  'jack-load',
  'ramp-support',
  'too-wide',
  'too-long',
  'tie-downs-short',
  'deck-plank',
  'soft-deck',
  'tire-age',
  'tire-pressure',
  'tire-mismatch',
  'licence-line',
  'worn-past-limit',
  'battery-flat',
  'wearing',
  'overdue-check',
  'missing-proof',
  'class-drift',
  'outgrown',
  'lowered',
  'on-hold',
] as const;
export type FlagRule = (typeof FLAG_RULES)[number];

type FlagEvidence =
  /** Trips that passed a rating: the worst, and how many. */
  | {
      readonly kind: 'over-limit';
      readonly worst: TripOver;
      readonly trips: readonly TripOver[];
      /** Torsion axles of which one took too much while together they could have carried it: how the worst trip rode. */
      readonly attitude: RodeOffLevel | null;
    }
  | {
      readonly kind: 'tongue-share';
      readonly share: ShareHeld['share'];
      readonly bound: ShareHeld['bound'];
      readonly low: number;
      readonly high: number | null;
      readonly tripIds: readonly string[];
    }
  /** A machine that presses a plank past its strength: where it presses hardest, and on which hauls. */
  | {
      readonly kind: 'deck-plank';
      readonly machineId: string;
      readonly stress: PlankStress;
      /** Past the average strength of faultless wood, shared evenly. */
      readonly breaks: boolean;
      readonly trips: readonly { readonly tripId: string; readonly endedOn: CivilDate }[];
      readonly jobIds: readonly string[];
    }
  /** Boards that sank, or took the probe, too deep: the deepest first. */
  | {
      readonly kind: 'soft-deck';
      readonly boards: readonly FoundBoard[];
      readonly boardCount: number | null;
      /** Deeper than this a board is replaced; up to it, it is marked. */
      readonly replaceM: Metres;
      /** Booked hauls that would put a machine on them. */
      readonly jobIds: readonly string[];
      readonly machineIds: readonly string[];
    }
  | {
      readonly kind: 'tires-past-age';
      readonly limitYears: number;
      readonly tires: readonly {
        readonly position: string;
        readonly dateCode: string;
        readonly madeFrom: CivilDate;
        readonly years: number;
        readonly months: number;
      }[];
    }
  | {
      readonly kind: 'tires-soft';
      readonly tires: readonly {
        readonly position: string;
        readonly foundKpa: number;
        readonly wantedKpa: number;
        /** What it may carry at the pressure found, kg; null where no published row says. */
        readonly carriesKg: Kilograms | null;
        /** The most it has carried since it was found so, kg; null while no trip tells. */
        readonly carriedKg: Kilograms | null;
      }[];
    }
  /** Parts last measured past the annual inspection's limit; values and limit in the unit of the quantity. */
  | {
      readonly kind: 'worn-past-limit';
      readonly quantity: MeasuredQuantity;
      readonly limit: number;
      /** Whether exactly the limit still passes. */
      readonly passesAtLimit: boolean;
      readonly source: string;
      readonly parts: readonly { readonly position: string | null; readonly value: number; readonly on: CivilDate }[];
    }
  /** Parts whose measured trend comes to its limit soon, or that are past a limit of practice. */
  | { readonly kind: 'wearing'; readonly quantity: WearQuantity; readonly parts: readonly WearingPart[] }
  /** The breakaway battery at rest, V, and the voltage below which it is flat. */
  | { readonly kind: 'battery-flat'; readonly volts: number; readonly limit: number }
  /** Tires of one axle that are no set, and in what. */
  | { readonly kind: 'tires-mismatched'; readonly axle: number; readonly mismatches: readonly TireMismatch[] }
  /** Jobs on which trailer and this tow vehicle pass a licence weight. Points to the rules; asserts nothing. */
  | {
      readonly kind: 'licence-line';
      readonly towVehicle: string;
      readonly group: 'A' | 'B';
      readonly combinationKg: Kilograms;
      readonly thresholdKg: Kilograms;
      readonly jobIds: readonly string[];
    }
  | {
      readonly kind: 'check-overdue';
      readonly checkKindId: string;
      readonly code: string;
      /** Last good day. Days over are counted from it on the day of reading, so that a kept flag does not go stale. */
      readonly dueOn: CivilDate | null;
      readonly safety: boolean;
    }
  | { readonly kind: 'proof-missing'; readonly checkKindId: string; readonly code: string; readonly what: string }
  | {
      readonly kind: 'class-drift';
      /** The quarter looked back on, by its first and last load. */
      readonly from: CivilDate;
      readonly to: CivilDate;
      readonly trips: number;
      readonly over90: number;
      readonly over100: number;
      /** Share of payload that nine loads in ten keep below. */
      readonly share90th: number;
      readonly trend: LoadTrend | null;
      /** Null while no trip has a distance. */
      readonly damage: readonly PartDamage[] | null;
      readonly payloadKg: Kilograms;
      readonly ownClass: TrailerClass | null;
      /** The class whose payload these loads need. */
      readonly looksLike: TrailerClass | null;
      /** The limit of which the heaviest load took the greatest share. */
      readonly weakest: Comparison | null;
      /** Every kind of limit that it went over, furthest first: each would have to be higher. */
      readonly wantsMore: readonly Comparison[];
      readonly tripIds: readonly string[];
      readonly machineId: string | null;
    }
  | {
      readonly kind: 'outgrown';
      readonly machineId: string;
      readonly machineKg: Kilograms;
      readonly payloadKg: Kilograms;
      readonly overKg: Kilograms;
      readonly replacedMachineId: string | null;
    }
  /** The jacks against what would come onto them unhitched, empty or as loaded on these trips. */
  | {
      readonly kind: 'jack-load';
      readonly when: 'empty' | 'loaded';
      readonly check: JackCheck;
      readonly trips: readonly TripSeen[];
    }
  | {
      readonly kind: 'over-ramp';
      readonly machineId: string;
      readonly machineKg: Kilograms;
      readonly ratingKg: Kilograms;
      readonly overKg: Kilograms;
      readonly trips: readonly TripSeen[];
    }
  /** The heaviest machine at the tail pulls the hitch up, and nothing holds the tail. */
  | {
      readonly kind: 'rear-lift';
      readonly machineId: string;
      readonly machineKg: Kilograms;
      readonly liftN: Newtons;
      readonly trips: readonly TripSeen[];
    }
  | ({ readonly kind: 'too-wide'; readonly machineId: string; readonly trips: readonly TripSeen[] } & TooWide)
  | ({ readonly kind: 'too-long'; readonly machineId: string; readonly trips: readonly TripSeen[] } & TooLong)
  /** The worst of these trips, its day and what held its load. */
  | {
      readonly kind: 'tie-downs-short';
      readonly on: CivilDate;
      readonly tied: TieDownCheck;
      readonly trips: readonly TripSeen[];
    }
  /** Tires that leave less payload than those before them. */
  | {
      readonly kind: 'lowered';
      readonly on: CivilDate;
      readonly positions: readonly string[];
      readonly beforeKg: Kilograms;
      readonly nowKg: Kilograms;
    }
  | { readonly kind: 'hold'; readonly holdId: string; readonly reason: string };

export interface TripOver {
  readonly tripId: string;
  readonly on: CivilDate;
  readonly comparison: Comparison;
}

/** One part near its limit, or past one that is only practice. */
export interface WearingPart {
  readonly position: string | null;
  /** The newest reading, in the unit of its quantity, as is the limit. */
  readonly value: number;
  readonly on: CivilDate;
  readonly limit: WearLimit;
  /** Days by which the limit is reached with a chance of 10, 50 and 90 %; null where it is past. */
  readonly reachedOn: ReachedOn | null;
  readonly leansOnUsualWear: boolean;
  /** The next job, where the limit may come before its end. */
  readonly jobId: string | null;
}
