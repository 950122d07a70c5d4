import type { Problem } from '../use-cases/outcome.js';

const STATUS: Readonly<Record<Problem['kind'], number>> = {
  invalid: 422,
  'not-found': 404,
  'not-allowed': 403,
  conflict: 409,
};

/** The HTTP status that tells a client the same as the problem does. */
export function problemStatus(problem: Problem): number {
  return STATUS[problem.kind];
}
