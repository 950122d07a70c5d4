import type { CivilDate } from '../calendar/civil-date.js';
import type { MeasuredQuantity } from '../facts/check.js';
import type { Newtons } from '../units/force.js';
import type { Kilograms } from '../units/mass.js';

/**
 * What would clear a flag. A flag lists one or more of these and any one of them is enough. Pages and mails word them.
 * A flag that rests on trips clears by itself once its trips are old, by a correction, and by nothing else: what was
 * done is done.
 */
export type Clearance =
  /** No further trip shows the same; it is gone on this day, when the last that did is too old to speak of the present. */
  | { readonly kind: 'no-more-until'; readonly clearsOn: CivilDate }
  /** This many trips in a row that stay within what the flag watches. */
  | { readonly kind: 'lighter-trips'; readonly trips: number; readonly atMostKg: Kilograms }
  /** A fact entered wrong is corrected: a trip, the build sheet, a machine. Said where a slip of the pen is likely. */
  | { readonly kind: 'correct'; readonly fact: 'trip' | 'build-sheet' | 'machine' | 'part' | 'reading' | 'job' }
  /** These wheels get other tires. */
  | { readonly kind: 'replace-tires'; readonly positions: readonly string[] }
  /** These tires are found at the pressure wanted on the next check that reads it. */
  | { readonly kind: 'inflate-tires'; readonly positions: readonly string[] }
  /** These boards are replaced, and a probing passed and recorded since; or a new deck is recorded. Null: a board nobody numbered. */
  | { readonly kind: 'replace-boards'; readonly boards: readonly (string | null)[] }
  /** This check is passed and recorded. */
  | { readonly kind: 'pass-check'; readonly checkKindId: string; readonly code: string }
  /** The paper or decal is put on the trailer and seen there at the next record of the check. */
  | { readonly kind: 'carry-proof'; readonly checkKindId: string; readonly code: string; readonly what: string }
  /** The repair is recorded, or a named person lifts the hold. */
  | { readonly kind: 'lift-hold'; readonly holdId: string }
  /** The machine is hauled, or weighed, at no more than this. */
  | { readonly kind: 'machine-at-most'; readonly machineId: string; readonly massKg: Kilograms }
  /** The trailer no longer carries this machine: other machines are its usual work, and no job names it. */
  | { readonly kind: 'other-trailer'; readonly machineId: string | null }
  /** Other equipment: a build sheet whose weakest rating leaves this much for cargo. */
  | { readonly kind: 'payload-of-at-least'; readonly payloadKg: Kilograms }
  /** A part that bears at least this. */
  | { readonly kind: 'part-of-at-least'; readonly part: StrongerPart; readonly ratingN: Newtons }
  /** Stabilizers or a knee brace under the tail, recorded on the build sheet. */
  | { readonly kind: 'rear-support' }
  /** A later reading within the limit: after a new part, a charge or an adjustment, or because this one was wrong. */
  | { readonly kind: 'measure-again'; readonly quantity: MeasuredQuantity }
  /** A repair or replacement of this part, recorded. */
  | { readonly kind: 'replace-part'; readonly part: StrongerPart; readonly position: string | null };

/** What a shop can put a stronger or a new one of. */
export const STRONGER_PARTS = [
  'jack',
  'axle',
  'tire',
  'coupler',
  'frame',
  'plank',
  'ramp',
  'tie-down',
  'hub-bearings',
  'brake-lining',
  'tow-hitch',
] as const;
export type StrongerPart = (typeof STRONGER_PARTS)[number];
