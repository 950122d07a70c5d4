import { tiresPastAge } from '../flags/tire-age.js';
import type { FitCase } from './fit-answer.js';
import { type Judgement, NOTHING_AGAINST } from './judgement.js';

/** Tires past the yard's own age limit are replaced first. A spare past it is said, and keeps nobody in. */
export function judgeTireAge({ trailer }: FitCase): Judgement {
  const positions = tiresPastAge(trailer).map((tire) => tire.position);
  if (positions.length === 0) return NOTHING_AGAINST;
  return {
    verdict: positions.some((position) => position !== 'spare') ? 'go-after' : 'go',
    reasons: [{ kind: 'tires-past-age', positions }],
    remedies: [{ kind: 'replace-tires', positions }],
  };
}
