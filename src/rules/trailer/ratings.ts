import type { BuildSheet } from '../facts/build-sheet.js';
import type { Part } from '../facts/part.js';
import type { Limit } from '../load/limit.js';
import type { Kilograms } from '../units/mass.js';

/** Every limit of a build with its origin, and what it leaves for cargo. */
export interface Ratings {
  readonly limits: readonly Limit[];
  /** The limit that leaves least for cargo; null while none can be worked out. */
  readonly governing: Limit | null;
  readonly payloadKg: Kilograms | null;
  /** Sum of the plate's axle ratings, shown beside the plate because people mistake it for the plate. */
  readonly axleSumKg: Kilograms | null;
  readonly trailerClass: TrailerClass | null;
}

export type TrailerClass = 'light' | 'medium' | 'heavy' | 'gooseneck-deck-over' | 'not-an-equipment-trailer';

export function ratings(_build: BuildSheet, _tires: readonly Part[]): Ratings {
  throw new Error('written next');
}
