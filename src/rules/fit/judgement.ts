import type { Fit, FitReason, FitRemedy, Verdict } from './fit-answer.js';

/** What one part of a fit finds: reasons, worst first, what would make it yes, and the verdict they ask for. */
export interface Judgement {
  readonly verdict: Verdict;
  readonly reasons: readonly FitReason[];
  readonly remedies: readonly FitRemedy[];
}

export const NOTHING_AGAINST: Judgement = { verdict: 'go', reasons: [], remedies: [] };

/** Worst first. A missing fact may hide a `no-go`, and a weighing may turn into one, so both stand before what is known to be mendable. */
const WORST_FIRST: readonly Verdict[] = ['no-go', 'cannot-say', 'weigh-first', 'go-after', 'go'];

export function worstVerdict(verdicts: readonly Verdict[]): Fit['verdict'] {
  return WORST_FIRST.find((verdict) => verdicts.includes(verdict)) ?? 'go';
}
