import type { CivilDate } from '../calendar/civil-date.js';
import type { Part, PartKind } from './part.js';

/**
 * The parts of one kind that were on the trailer on a day.
 * A part with no fitting day was always there; on the day it is taken off it no longer counts.
 */
export function partsOn(parts: readonly Part[], kind: PartKind, on: CivilDate): readonly Part[] {
  return parts.filter(
    (part) =>
      part.kind === kind &&
      (part.fittedOn === null || part.fittedOn <= on) &&
      (part.removedOn === null || part.removedOn > on),
  );
}
