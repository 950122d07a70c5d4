import type { MoveScreen } from '../../use-cases/show/show-move.js';
import { remedyWords, verdictSentence } from './fit-words.js';
import type { Names } from './flag-words.js';
import { clashWords } from './ranking-words.js';

type Answer = MoveScreen['answer'];

/** The answer in the few words there is room for while a job is dragged: verdict, clash, what to do first. */
export function moveInShort(answer: Answer, names: Names): readonly string[] {
  const [first] = answer.fit.remedies;
  return [
    verdictSentence(answer.fit),
    answer.clashes.length > 0 ? clashWords(answer.clashes) : null,
    first === undefined ? null : `First: ${remedyWords(first, names)}`,
  ].filter((words) => words !== null);
}
