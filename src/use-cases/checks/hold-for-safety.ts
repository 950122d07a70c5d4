import type { CheckKind, CheckRecord } from '../../rules/facts/check.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import type { YardTx } from '../../store/database.js';
import type { HoldStore } from '../../store/hold-store.js';
import type { Caller } from '../caller.js';
import { badSafetyLines } from '../input/check-input.js';

/**
 * Holds the trailer for what a check found, if someone can be hurt by it: a bad line that keeps people safe, or such
 * a check failed as a whole. Null when there is nothing to hold for: it passed, or passed again since, or the trailer
 * is held for the very same already.
 */
export async function holdForSafety(
  tx: YardTx,
  holds: HoldStore,
  caller: Caller,
  facts: TrailerFacts,
  kind: CheckKind,
  record: Omit<CheckRecord, 'costCents'> & { readonly byName: string },
): Promise<string | null> {
  const bad = badSafetyLines(kind, record.lines);
  if (bad.length === 0 && !(kind.safety && record.outcome === 'fail')) return null;
  const passedSince = facts.checkRecords.some(
    (other) => other.checkKindId === kind.id && other.outcome === 'pass' && other.doneOn > record.doneOn,
  );
  if (passedSince) return null;
  // A line says how it should be ("latch closes"), so what was found bad must be said with it.
  const found = bad.map((line) => line.text).join('; ');
  const reason = found === '' ? `${kind.name} failed` : `${kind.name}, found bad: ${found}`;
  if (facts.holds.some((hold) => hold.liftedOn === null && hold.reason === reason)) return null;
  return holds.open(tx, facts.trailer.id, {
    openedOn: record.doneOn,
    reason,
    openedBy: record.byPersonId ?? caller.personId,
    openedByName: record.byName,
    checkRecordId: record.id,
    recordedAt: caller.now,
  });
}
