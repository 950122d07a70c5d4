import type { CivilDate } from '../calendar/civil-date.js';
import type { PartKind } from '../facts/part.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';

/** What money went on. */
export type Purpose =
  | { readonly kind: 'check'; readonly checkKindId: string; readonly code: string }
  | { readonly kind: 'part'; readonly part: PartKind };

/** Spent on one check, or on one kind of part, so far. */
export interface SpentOn {
  readonly purpose: Purpose;
  readonly totalCents: number;
  /** How often a cost was entered, and how often it was not. */
  readonly priced: number;
  readonly unpriced: number;
  /** Of those with a cost; null without one. */
  readonly meanCents: number | null;
  /** Standard deviation of one, as a sample; null with fewer than two. */
  readonly deviationCents: number | null;
}

/** Checks passed or failed and parts fitted by `asOf`, the dearest first. */
export function spentOn(facts: TrailerFacts, asOf: CivilDate): readonly SpentOn[] {
  const purposes = new Map<string, { readonly purpose: Purpose; readonly costs: (number | null)[] }>();
  const add = (key: string, purpose: Purpose, cents: number | null) => {
    const known = purposes.get(key) ?? { purpose, costs: [] };
    known.costs.push(cents);
    purposes.set(key, known);
  };
  const codes = new Map(facts.checkKinds.map(({ id, code }) => [id, code]));
  for (const { checkKindId, doneOn, costCents } of facts.checkRecords) {
    const code = codes.get(checkKindId);
    if (code === undefined || doneOn > asOf) continue;
    add(`check ${checkKindId}`, { kind: 'check', checkKindId, code }, costCents);
  }
  for (const { kind: part, fittedOn, costCents } of facts.parts) {
    if (fittedOn !== null && fittedOn > asOf) continue;
    add(`part ${part}`, { kind: 'part', part }, costCents);
  }
  return [...purposes]
    .map(([key, { purpose, costs }]) => ({ key, spent: summed(purpose, costs) }))
    .sort((a, b) => b.spent.totalCents - a.spent.totalCents || (a.key < b.key ? -1 : 1))
    .map(({ spent }) => spent);
}

function summed(purpose: Purpose, costs: readonly (number | null)[]): SpentOn {
  const known = costs.filter((cents) => cents !== null);
  const totalCents = known.reduce((sum, cents) => sum + cents, 0);
  const mean = known.length === 0 ? null : totalCents / known.length;
  const squares = mean === null ? 0 : known.reduce((sum, cents) => sum + (cents - mean) ** 2, 0);
  return {
    purpose,
    totalCents,
    priced: known.length,
    unpriced: costs.length - known.length,
    meanCents: mean,
    deviationCents: known.length < 2 ? null : Math.sqrt(squares / (known.length - 1)),
  };
}
