import type { FitRemedy } from './fit-answer.js';

/** Several parts may ask for a scale; one weighing serves them all. */
export function weighedOnce(remedies: readonly FitRemedy[]): readonly FitRemedy[] {
  const first = remedies.findIndex(({ kind }) => kind === 'weigh');
  return remedies.filter(({ kind }, index) => kind !== 'weigh' || index === first);
}
