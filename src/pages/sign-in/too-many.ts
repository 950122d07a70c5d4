import type { FieldProblem } from '../../use-cases/outcome.js';

/** Said at the form when one address has tried too often. */
export function tooManyTries(field: string, waitSeconds: number): FieldProblem {
  const minutes = Math.max(1, Math.ceil(waitSeconds / 60));
  const wait = minutes === 1 ? 'a minute' : `${minutes} minutes`;
  return { field, message: `There were too many tries from where you are. Wait ${wait}, then try again.` };
}
