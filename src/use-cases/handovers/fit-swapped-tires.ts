import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Part, TireMarks } from '../../rules/facts/part.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { tireDifferences } from '../../rules/handover/changes.js';
import type { TakenBack } from '../../rules/handover/take-back.js';
import type { YardTx } from '../../store/database.js';
import type { PartStore } from '../../store/part-store.js';
import { type Caller, recordedBy } from '../caller.js';

/** A tire that came back in place of another. */
export interface SwappedTire {
  readonly position: string;
  readonly marks: TireMarks;
  /** The tire on file there; null where none was. */
  readonly onFile: Part | null;
}

/** Tires to be put on file: those swapped, unless the one found is on file already. */
export function tiresToFit({ parts }: TrailerFacts, { swappedTires }: TakenBack): readonly SwappedTire[] {
  return swappedTires
    .map(({ position, marks }) => ({
      position,
      marks,
      onFile:
        parts.find((part) => part.kind === 'tire' && part.position === position && part.removedOn === null) ?? null,
    }))
    .filter(({ onFile, marks }) => onFile === null || tireDifferences(onFile.tire, marks).length > 0);
}

/**
 * Takes each tire that went out off on the day of the return, and puts on what came back in its place, with the marks
 * that were read: what nobody read is not known of it. Returns the ids of the tires fitted.
 */
export async function fitSwappedTires(
  tx: YardTx,
  parts: PartStore,
  caller: Caller,
  trailerId: string,
  on: CivilDate,
  tires: readonly SwappedTire[],
): Promise<readonly string[]> {
  const fitted: string[] = [];
  for (const { position, marks, onFile } of tires) {
    if (onFile !== null) await parts.remove(tx, trailerId, onFile.id, { on, why: null });
    const part = { kind: 'tire' as const, position, fittedOn: on, tire: marks, bearings: null, costCents: null };
    fitted.push(await parts.insert(tx, trailerId, { ...part, removedOn: null, removedFor: null }, recordedBy(caller)));
  }
  return fitted;
}
