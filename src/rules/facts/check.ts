import type { CivilDate } from '../calendar/civil-date.js';
import type { Kilometres } from '../units/distance.js';

export const CHECK_EVENTS = [
  'wheel-off',
  'brakes-new',
  'overloaded',
  'submerged',
  'salted',
  /** Over salt since it was last done: due at half its days or months. */
  'salt-half-time',
  'idle',
  'idle-half-year',
] as const;
export type CheckEvent = (typeof CHECK_EVENTS)[number];

/** What makes a check fall due. A check with several is due at whichever comes first. */
export type Trigger =
  | { readonly kind: 'days'; readonly every: number }
  | { readonly kind: 'months'; readonly every: number; readonly toMonthEnd: boolean }
  | { readonly kind: 'distance'; readonly everyKm: Kilometres }
  | { readonly kind: 'trips'; readonly every: number }
  /** At each distance after the event; an empty list means at once, before the next trip. */
  | { readonly kind: 'event'; readonly event: CheckEvent; readonly atKm: readonly Kilometres[] }
  | { readonly kind: 'fixed-date'; readonly date: 'registration' | 'insurance' };

/** Which builds a check is for. Every condition that is set must hold; an unknown in the build counts as "it may". */
export interface AppliesTo {
  readonly bodies: readonly string[] | null;
  readonly suspensions: readonly string[] | null;
  readonly brakes: readonly string[] | null;
  readonly hitches: readonly string[] | null;
  readonly deckMaterials: readonly string[] | null;
  readonly lubricants: readonly string[] | null;
  readonly ramps: readonly string[] | null;
}

/** A kind of inspection or service, as this yard has set it. */
export interface CheckKind {
  readonly id: string;
  /** Short stable name, such as `hub-repack`. */
  readonly code: string;
  readonly name: string;
  readonly triggers: readonly Trigger[];
  readonly appliesTo: AppliesTo;
  /** Someone can be hurt if it is left out: it cannot be put off past the next job. */
  readonly safety: boolean;
  /** Which jobs an overdue check stops. */
  readonly blocks: 'all-jobs' | 'commercial-jobs' | 'none';
  /** Paper that must ride with the trailer, and how many months it is kept. */
  readonly proof: { readonly what: string; readonly keepMonths: number } | null;
  readonly work: CheckWork;
  /** Days before the due date at which the person is first told. */
  readonly leadDays: number;
  readonly ownerPersonId: string | null;
  readonly backupPersonId: string | null;
  /** Where the interval comes from, as shown to people. */
  readonly source: string;
  readonly lines: readonly SheetLine[];
}

export interface CheckWork {
  readonly hours: number;
  readonly place: 'shop' | 'yard' | 'road';
  readonly parts: readonly string[];
  /** Checks that share a visit, such as everything behind the same hub. */
  readonly bundle: string | null;
  /** Further work done on the same visit. */
  readonly together: readonly string[];
}

export interface SheetLine {
  readonly code: string;
  readonly text: string;
  readonly kind: 'tick' | 'measure' | 'photo';
  readonly quantity: MeasuredQuantity | null;
  readonly safety: boolean;
}

export const MEASURED_QUANTITIES = [
  'cold-pressure-kpa',
  'tread-depth-mm',
  'lining-mm',
  'magnet-mm',
  'magnet-a',
  'chain-mm',
  'end-play-mm',
  'battery-v',
  'torque-nm',
  'temperature-c',
  'probe-depth-mm',
  /** How far a board sinks under a person's weight. */
  'board-sag-mm',
] as const;
export type MeasuredQuantity = (typeof MEASURED_QUANTITIES)[number];

/** One check done. */
export interface CheckRecord {
  readonly id: string;
  readonly checkKindId: string;
  readonly doneOn: CivilDate;
  readonly outcome: 'pass' | 'fail';
  readonly byPersonId: string | null;
  readonly lines: readonly CheckedLine[];
  /** Who passed it, where the law cares: a State program's pass runs to the end of its month. */
  readonly inspectedBy: 'own' | 'state' | null;
  /** Whether the proof was seen on the trailer; null when nobody looked. */
  readonly proofOnTrailer: boolean | null;
  /** What it cost, in cents of the yard's currency. */
  readonly costCents: number | null;
}

export interface CheckedLine {
  readonly code: string;
  readonly result: 'ok' | 'bad' | null;
  readonly position: string | null;
  readonly measured: { readonly quantity: MeasuredQuantity; readonly value: number } | null;
}

/** The trailer must not go out. Only a recorded repair or a named person lifts it. */
export interface Hold {
  readonly id: string;
  readonly openedOn: CivilDate;
  readonly reason: string;
  readonly openedByName: string;
  readonly liftedOn: CivilDate | null;
}
