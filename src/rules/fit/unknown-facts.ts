import type { FitCase } from './fit-answer.js';
import type { Judgement } from './judgement.js';

/**
 * What could not be worked out. Without the gross weight or the plate there is no answer, nor for a tire found softer
 * than any published row reaches: what it still carries nobody can say. What else is missing is said beside the
 * answer, since the plate was still checked.
 */
export function judgeUnknowns({ trailer, check }: FitCase): Judgement {
  const noBuild = trailer.build === null ? [{ lacks: 'build-sheet', stops: 'everything' }] : [];
  const unknowns = [...noBuild, ...check.unknowns];
  const noAnswer = unknowns.some(
    ({ lacks, stops }) =>
      stops === 'gross' || stops === 'plate-check' || stops === 'everything' || lacks === 'tire-table-row',
  );
  return {
    verdict: noAnswer ? 'cannot-say' : 'go',
    reasons: unknowns.map(({ lacks, stops }) => ({ kind: 'unknown', lacks, stops })),
    remedies: [],
  };
}
