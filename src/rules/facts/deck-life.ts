import type { CivilDate } from '../calendar/civil-date.js';
import type { DECK_MATERIALS, WOODS } from './build-sheet.js';

/** How long one deck of the yard has lasted: from its laying to its end, or to today while it lies. */
export interface DeckLife {
  readonly partId: string;
  readonly trailerId: string;
  readonly laidOn: CivilDate;
  /** Null while it still lies. */
  readonly endedOn: CivilDate | null;
  /** Worn out or broken: the end of its life. False where it came off for another reason, or its trailer was sold. */
  readonly wornOut: boolean;
  readonly material: (typeof DECK_MATERIALS)[number] | null;
  readonly wood: (typeof WOODS)[number] | null;
  readonly treated: boolean | null;
  readonly stored: 'open' | 'cover' | null;
}
