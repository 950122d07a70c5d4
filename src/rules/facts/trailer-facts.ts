import type { BuildSheet } from './build-sheet.js';
import type { CheckKind, CheckRecord, Hold } from './check.js';
import type { DeckLife } from './deck-life.js';
import type { Machine } from './load.js';
import type { Part } from './part.js';
import type { Trailer } from './trailer.js';
import type { Job, MeterReading, Trip } from './use.js';
import type { YardPolicy } from './yard-policy.js';

/**
 * All that people and meters have said about one trailer, as it stands: a fact that a later one corrected
 * is left out here and kept in the history. The order of the lists carries no meaning.
 */
export interface TrailerFacts {
  readonly trailer: Trailer;
  readonly builds: readonly BuildSheet[];
  readonly parts: readonly Part[];
  readonly trips: readonly Trip[];
  readonly readings: readonly MeterReading[];
  readonly jobs: readonly Job[];
  readonly checkKinds: readonly CheckKind[];
  readonly checkRecords: readonly CheckRecord[];
  readonly holds: readonly Hold[];
  /** Every machine that a trip or job names, and those that replaced them. */
  readonly machines: readonly Machine[];
  /**
   * Every deck of the yard whose life is known so far and whose material this trailer's has been, and its own. Trailers
   * of like decks share one list.
   */
  readonly decks: readonly DeckLife[];
  readonly policy: YardPolicy;
}
