import type { FitCase } from './fit-answer.js';
import type { Judgement } from './judgement.js';

/**
 * What could not be worked out. Without the gross weight or the plate there is no answer; what else is missing is said
 * beside the answer, since the plate was still checked.
 */
export function judgeUnknowns({ trailer, check }: FitCase): Judgement {
  const noBuild = trailer.build === null ? [{ lacks: 'build-sheet', stops: 'everything' }] : [];
  const unknowns = [...noBuild, ...check.unknowns];
  const noAnswer = unknowns.some(({ stops }) => stops === 'gross' || stops === 'plate-check' || stops === 'everything');
  return {
    verdict: noAnswer ? 'cannot-say' : 'go',
    reasons: unknowns.map(({ lacks, stops }) => ({ kind: 'unknown', lacks, stops })),
    remedies: [],
  };
}
