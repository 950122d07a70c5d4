import type { CivilDate } from '../calendar/civil-date.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { TireMarks } from './part.js';

/** What is looked at, in the same order, when a hired trailer goes out and when it comes back. */
export const SEEN_THINGS = [
  'tire',
  'wheel',
  'spare',
  'lamp',
  'plug',
  'coupler',
  'safety-chain',
  'breakaway',
  'jack',
  'deck',
  'fender',
  'frame',
  'ramp',
  'pin',
  'strap',
  'customer-ball',
] as const;
export type SeenThing = (typeof SEEN_THINGS)[number];

/** How it was found. `rubbed` is a mark that use leaves; `bent` and `broken` are not; `stiff` may be either. */
export const SEEN_CONDITIONS = ['sound', 'rubbed', 'worn', 'stiff', 'bent', 'broken', 'missing'] as const;
export type SeenCondition = (typeof SEEN_CONDITIONS)[number];

/** One thing as it was seen. A thing of which there are several has a position: a wheel position, `left`, `right`. */
export interface Seen {
  readonly thing: SeenThing;
  readonly position: string | null;
  readonly condition: SeenCondition;
  /** Of a tire: what its sidewall says. */
  readonly tire: TireMarks | null;
  /** Of a ball: its size as stamped. */
  readonly ballSizeM: Metres | null;
  readonly note: string | null;
  readonly photoIds: readonly string[];
}

/** A ball as it is stamped. */
export interface Ball {
  readonly sizeM: Metres | null;
  /** The heaviest trailer it may pull. */
  readonly ratingKg: Kilograms | null;
}

/** What plugging in at the counter worked: lamps and electric brakes, lamps alone, or nothing. */
export const PLUG_TRIALS = ['lamps-and-brakes', 'lamps-only', 'nothing'] as const;
export type PlugTrial = (typeof PLUG_TRIALS)[number];

/** What the customer came to tow with. */
export interface CustomerHitch {
  /** The customer's own. */
  readonly ball: Ball;
  /** The yard's ball, put on the customer's mount in place of that one; null where none was changed. */
  readonly swappedTo: Ball | null;
  /** Null where nobody plugged it in. */
  readonly plug: PlugTrial | null;
}

/** Drawn with a finger, typed, or both: never neither. */
export interface Signature {
  readonly name: string | null;
  /** Empty where it was typed. */
  readonly strokes: readonly Stroke[];
}

/** One stroke of a finger: x, y, x, y, … in thousandths of the pad's width, y downward. */
export interface Stroke {
  readonly points: readonly number[];
}

/** A hired trailer handed to its customer, or taken back. */
export interface Handover {
  readonly id: string;
  readonly trailerId: string;
  readonly jobId: string | null;
  readonly way: 'out' | 'back';
  /** Of a return: the way out that it ends. */
  readonly outId: string | null;
  readonly on: CivilDate;
  readonly customer: string;
  readonly byName: string;
  readonly seen: readonly Seen[];
  /** Of a way out; null on the return, and where nobody looked. */
  readonly hitch: CustomerHitch | null;
  /** The customer's. */
  readonly signature: Signature | null;
}
