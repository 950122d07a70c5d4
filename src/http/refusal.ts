import type { Outcome, Problem } from '../use-cases/outcome.js';

/** Carries a use case's problem from a route to the filter that answers it with the right status and words. */
export class Refusal extends Error {
  override readonly name = 'Refusal';

  constructor(readonly problem: Problem) {
    super(problem.kind);
  }
}

/** The value of an outcome. Throws Refusal for a problem: for routes that have no form to show again. */
export function valueOrRefuse<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Refusal(outcome.problem);
}
