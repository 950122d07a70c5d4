import { createHash } from 'node:crypto';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { buildOn } from '../../rules/facts/build-on.js';
import type { CheckKind, CheckRecord } from '../../rules/facts/check.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import type { SeenSheet } from '../input/check-input.js';

/** What became different between opening a sheet and its arrival. The sheet is kept all the same. */
export type ChangedSince =
  | { readonly kind: 'renumbered'; readonly from: string; readonly to: string }
  | { readonly kind: 'gone'; readonly status: 'sold' | 'scrapped' }
  | { readonly kind: 'build-changed' }
  | { readonly kind: 'sheet-changed' }
  | { readonly kind: 'held'; readonly holdId: string; readonly reason: string; readonly openedOn: CivilDate }
  | {
      readonly kind: 'checked';
      readonly checkRecordId: string;
      readonly doneOn: CivilDate;
      readonly outcome: CheckRecord['outcome'];
    };

/** What a sheet shows at this moment. */
export function seenSheet(facts: TrailerFacts, kind: CheckKind, today: CivilDate): SeenSheet {
  const records = facts.checkRecords.filter((record) => record.checkKindId === kind.id);
  const lastDoneOn = records.reduce<CivilDate | null>(
    (last, { doneOn }) => (last === null || doneOn > last ? doneOn : last),
    null,
  );
  return {
    yardNumber: facts.trailer.yardNumber,
    buildSheetId: buildOn(facts.builds, today)?.id ?? null,
    linesMark: createHash('sha256').update(JSON.stringify(kind.lines)).digest('hex').slice(0, 16),
    openHoldIds: facts.holds.filter((hold) => hold.liftedOn === null).map((hold) => hold.id),
    lastDoneOn,
    lastRecordIds: records.filter((record) => record.doneOn === lastDoneOn).map((record) => record.id),
  };
}

/** Compares what was seen with what is; empty when nothing is known of what was seen. */
export function changedSince(
  seen: SeenSheet | null,
  facts: TrailerFacts,
  kind: CheckKind,
  today: CivilDate,
): readonly ChangedSince[] {
  if (seen === null) return [];
  const now = seenSheet(facts, kind, today);
  const { status } = facts.trailer;
  const changed: ChangedSince[] = [];
  if (now.yardNumber !== seen.yardNumber)
    changed.push({ kind: 'renumbered', from: seen.yardNumber, to: now.yardNumber });
  if (status !== 'in-service') changed.push({ kind: 'gone', status });
  if (now.buildSheetId !== seen.buildSheetId) changed.push({ kind: 'build-changed' });
  if (now.linesMark !== seen.linesMark) changed.push({ kind: 'sheet-changed' });
  for (const { id, reason, openedOn, liftedOn } of facts.holds) {
    if (liftedOn === null && !seen.openHoldIds.includes(id))
      changed.push({ kind: 'held', holdId: id, reason, openedOn });
  }
  for (const { id, checkKindId, doneOn, outcome } of facts.checkRecords) {
    const isNew =
      checkKindId === kind.id &&
      (seen.lastDoneOn === null || doneOn >= seen.lastDoneOn) &&
      !seen.lastRecordIds.includes(id);
    if (isNew) changed.push({ kind: 'checked', checkRecordId: id, doneOn, outcome });
  }
  return changed;
}
