import { daysAfter } from '../calendar/day-number.js';
import type { CheckKind } from '../facts/check.js';
import type { Due } from '../inspection/due.js';
import type { Flag, Severity } from './flag.js';
import type { FlagContext } from './flag-context.js';

/**
 * Checks past their last good day. `stop` when a safety check that stops every job failed and nothing was recorded
 * since; `limit` for other safety checks and those the law asks a paper for; `watch` for the rest.
 */
export function overdueCheckFlags({ trailer, due }: FlagContext): readonly Flag[] {
  const kinds = new Map(trailer.facts.checkKinds.map((kind) => [kind.id, kind]));
  return due.flatMap((item) => {
    const kind = kinds.get(item.checkKindId);
    if (kind === undefined || item.state !== 'overdue') return [];
    return [
      {
        key: `overdue-check:${item.code}`,
        rule: 'overdue-check' as const,
        severity: severityOf(kind, item),
        since: item.dueOn === null ? null : daysAfter(item.dueOn, 1),
        evidence: {
          kind: 'check-overdue' as const,
          checkKindId: item.checkKindId,
          code: item.code,
          dueOn: item.dueOn,
          safety: kind.safety,
        },
        clears: [{ kind: 'pass-check' as const, checkKindId: item.checkKindId, code: item.code }] as const,
      },
    ];
  });
}

function severityOf(kind: CheckKind, due: Due): Severity {
  if (due.failed && kind.safety && kind.blocks === 'all-jobs') return 'stop';
  return kind.safety || kind.proof !== null ? 'limit' : 'watch';
}
