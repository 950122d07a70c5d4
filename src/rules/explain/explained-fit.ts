import type { CivilDate } from '../calendar/civil-date.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import { type Fit, type FitInput, fit } from '../fit/fit.js';
import { haulLimits } from '../fit/haul-limits.js';
import { trailerOn } from '../history/trailer-on.js';
import { explainPlanks } from './explain-deck.js';
import { explainLoad } from './explain-load.js';
import type { Working } from './working.js';

/** The answer for a haul, and how its sums were worked out. */
export interface ExplainedFit extends Fit {
  readonly workings: readonly Working[];
}

/** `fit`, explained. For the one answer a person reads; lists of answers go without. */
export function explainedFit(facts: TrailerFacts, input: FitInput, asOf: CivilDate): ExplainedFit {
  const trailer = trailerOn(facts, asOf);
  const limits = haulLimits(trailer, input);
  return {
    ...fit(facts, input, asOf),
    workings: [...explainLoad({ limits, load: input.load, policy: facts.policy }), ...explainPlanks(trailer, input)],
  };
}
