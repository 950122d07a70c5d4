import type { Assessment } from '../assess.js';
import type { CivilDate } from '../calendar/civil-date.js';
import type { CheckKind } from '../facts/check.js';
import type { Trailer } from '../facts/trailer.js';
import type { Job } from '../facts/use.js';
import type { Fit } from '../fit/fit-answer.js';
import type { Flag } from '../flags/flag.js';
import type { Due } from '../inspection/due.js';

/** One of the yard's people, as far as letters care. */
export interface Reader {
  readonly personId: string;
  readonly name: string;
  readonly role: 'owner' | 'shop' | 'hand' | 'viewer';
  readonly state: 'active' | 'left';
  /** False from a bounce until the address is mended. */
  readonly reachable: boolean;
}

export interface TrailerToday {
  readonly trailer: Trailer;
  readonly assessment: Assessment;
  readonly checkKinds: readonly CheckKind[];
  /** Booked jobs from `asOf` on, each with its fit. */
  readonly jobs: readonly { readonly job: Job; readonly fit: Fit }[];
}

/** What somebody answered about an item: put off until a day, or handed on. */
export interface Answer {
  readonly itemKey: string;
  readonly personId: string;
  readonly answer: 'later' | 'not-mine';
  readonly until: CivilDate | null;
}

/** One thing to tell one person. The key says it once: the same item is not told again under the same key. */
export type LetterItem =
  | {
      readonly kind: 'gate-brief';
      readonly key: string;
      readonly trailerId: string;
      readonly jobId: string;
      readonly fit: Fit;
      readonly dueWhileAway: readonly Due[];
    }
  | {
      readonly kind: 'due-soon' | 'overdue';
      readonly key: string;
      readonly trailerId: string;
      readonly due: Due;
      readonly code: string;
      readonly together: readonly string[];
      readonly unowned: boolean;
    }
  | { readonly kind: 'stop-flag'; readonly key: string; readonly trailerId: string; readonly flag: Flag }
  | {
      readonly kind: 'address-failed';
      readonly key: string;
      readonly personId: string;
      readonly personName: string;
      readonly items: readonly string[];
    };

/** One mail to one person. At most one `day` letter a person a day; a `stop` letter goes at once. */
export interface Letter {
  readonly personId: string;
  readonly kind: 'day' | 'stop';
  /** Unique within the yard: planning the same day again makes the same key. */
  readonly key: string;
  readonly items: readonly LetterItem[];
}

export interface LetterInput {
  readonly asOf: CivilDate;
  readonly readers: readonly Reader[];
  readonly trailers: readonly TrailerToday[];
  readonly answers: readonly Answer[];
  /** Keys of items already told, with the day. */
  readonly told: ReadonlyMap<string, CivilDate>;
}

/** An item and who hears of it. */
export interface Addressed {
  readonly personId: string;
  readonly item: LetterItem;
}
