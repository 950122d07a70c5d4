import type { CivilDate } from './calendar/civil-date.js';
import type { TrailerFacts } from './facts/trailer-facts.js';
import type { Flag } from './flags/flag.js';
import type { Due } from './inspection/due.js';
import type { Contradiction } from './trailer/contradictions.js';
import type { Ratings } from './trailer/ratings.js';
import type { Kilometres } from './units/distance.js';

/** What the facts of one trailer come to on one day. */
export interface Assessment {
  readonly asOf: CivilDate;
  /** `ready`, `due` (work wanted before or during its next job), `down` (held or stopped), `gone` (sold or scrapped). */
  readonly readiness: 'ready' | 'due' | 'down' | 'gone';
  readonly ratings: Ratings | null;
  readonly contradictions: readonly Contradiction[];
  readonly due: readonly Due[];
  readonly flags: readonly Flag[];
  readonly use: {
    readonly totalKm: Kilometres | null;
    readonly kmPerDay: number | null;
    readonly trips: number;
    readonly lastTripOn: CivilDate | null;
  };
  /** Facts nobody has given, and what each keeps us from working out. */
  readonly unknowns: readonly { readonly lacks: string; readonly stops: string }[];
  /** The first day on which any of this would read differently with no new fact; null when never. */
  readonly wakeOn: CivilDate | null;
}

/**
 * The heart of Axlebook: from the facts of one trailer to what they come to on one day.
 * Pure: the same facts and day give the same answer, in a server, a browser or a test; the order of lists does not matter.
 */
export function assess(_facts: TrailerFacts, _asOf: CivilDate): Assessment {
  throw new Error('written next');
}
