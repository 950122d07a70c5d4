import type { FitCase } from './fit-answer.js';
import { type Judgement, NOTHING_AGAINST } from './judgement.js';

/** An open hold keeps the trailer in, whatever the load. A failed safety check is left to the checks. */
export function judgeHolds({ trailer }: FitCase): Judgement {
  const holds = trailer.openHolds;
  if (holds.length === 0) return NOTHING_AGAINST;
  return {
    verdict: 'no-go',
    reasons: holds.map((hold) => ({ kind: 'hold', reason: hold.reason })),
    remedies: [{ kind: 'lift-hold' }],
  };
}
