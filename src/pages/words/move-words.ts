import type { MoveScreen } from '../../use-cases/show/show-move.js';
import { showDates } from '../components/show-quantity.js';
import { remedyWords, verdictSentence } from './fit-words.js';
import type { Names } from './flag-words.js';

type Answer = MoveScreen['answer'];

/** The jobs it is out on already: `Out on Hollow Rd, Mon 2 Mar to Tue 3 Mar 2026, on some of the same days.` */
export function clashSentence({ clashes }: Pick<Answer, 'clashes'>): string | null {
  if (clashes.length === 0) return null;
  const jobs = clashes.map(({ name, startsOn, endsOn }) => `${name}, ${showDates(startsOn, endsOn)}`);
  return `Booked already on some of the same days: ${jobs.join('; ')}.`;
}

/** The answer in the few words there is room for while a job is dragged: verdict, clash, what to do first. */
export function moveInShort(answer: Answer, names: Names): readonly string[] {
  const [first] = answer.fit.remedies;
  return [
    verdictSentence(answer.fit),
    clashSentence(answer),
    first === undefined ? null : `First: ${remedyWords(first, names)}`,
  ].filter((words) => words !== null);
}
