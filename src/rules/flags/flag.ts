import type { CivilDate } from '../calendar/civil-date.js';
import type { RodeOffLevel } from '../load/attitude.js';
import type { Comparison } from '../load/limit.js';
import type { TireMismatch } from '../tire/tire-mismatch.js';
import type { TrailerClass } from '../trailer/ratings.js';
import type { Kilograms } from '../units/mass.js';
import type { Clearance } from './clearance.js';

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
  'tire-age',
  'tire-pressure',
  'tire-mismatch',
  'licence-line',
  'overdue-check',
  'missing-proof',
  'class-drift',
  'outgrown',
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
      readonly share: number;
      readonly low: number;
      readonly high: number | null;
      readonly tripIds: readonly string[];
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
      readonly trips: number;
      readonly over90: number;
      readonly over100: number;
      readonly payloadKg: Kilograms;
      readonly ownClass: TrailerClass | null;
      /** The class whose payload these loads need. */
      readonly looksLike: TrailerClass | null;
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
  | { readonly kind: 'hold'; readonly holdId: string; readonly reason: string };

export interface TripOver {
  readonly tripId: string;
  readonly on: CivilDate;
  readonly comparison: Comparison;
}
