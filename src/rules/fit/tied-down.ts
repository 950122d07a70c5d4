import { machinesAboard } from '../load/aboard.js';
import { needOf, tiedDown } from '../load/tied-down.js';
import { kg } from '../units/mass.js';
import type { FitCase } from './fit-answer.js';
import { type Judgement, NOTHING_AGAINST } from './judgement.js';

/**
 * What holds the load down against 49 CFR 393.106, 393.110 and 393.130. Too little is `go-after`: more or stronger
 * tie-downs mend it. Some that nobody rated are told beside the answer. While nobody said what will hold a machine, what it needs is said beside the answer.
 */
export function judgeTiedDown({ trailer, input, check }: FitCase): Judgement {
  const { machines } = trailer.facts;
  const tied = tiedDown(input.load, machines, check.cargoKg);
  if (tied === null) {
    const isMachine = machinesAboard(input.load, machines).length > 0;
    const need = input.load.tieDowns === null && isMachine ? needOf(input.load, machines, check.cargoKg) : null;
    return need === null
      ? NOTHING_AGAINST
      : { verdict: 'go', reasons: [{ kind: 'tie-downs-unsaid', need }], remedies: [] };
  }
  if (tied.standing === 'enough') return NOTHING_AGAINST;
  const reasons = [{ kind: 'tie-downs' as const, tied }];
  if (tied.standing === 'unrated') return { verdict: 'go', reasons, remedies: [] };
  return {
    verdict: 'go-after',
    reasons,
    remedies: [
      {
        kind: 'tie-down',
        count: Math.max(0, tied.need.count - tied.count),
        workingLoadKg: kg(Math.max(0, tied.need.workingLoadKg - tied.workingLoadKg)),
      },
    ],
  };
}
