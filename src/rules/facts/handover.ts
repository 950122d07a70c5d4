import type { CivilDate } from '../calendar/civil-date.js';
import type { Metres } from '../units/length.js';
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

/** A hired trailer handed to its customer, or taken back. */
export interface Handover {
  readonly id: string;
  readonly trailerId: string;
  readonly jobId: string | null;
  readonly way: 'out' | 'back';
  readonly on: CivilDate;
  readonly customer: string;
  readonly byName: string;
  readonly seen: readonly Seen[];
}
