import type { LetterItem } from '../../rules/notice/plan-letters.js';
import { clearanceWords } from '../words/clearance-words.js';
import { type FlagNames, flagWords } from '../words/flag-words.js';
import { onDay, onDays } from '../words/show.js';
import { checkKindsOf, type LetterContext, trailerName, trailerOf } from './letter-context.js';
import type { Entry } from './paper.js';

type StopItem = Extract<LetterItem, { kind: 'stop-flag' }>;

/** One trailer that must not be loaded: what was found, which job that hits, what lifts it. */
export function stopEntry(item: StopItem, context: LetterContext): Entry {
  const today = trailerOf(context, item.trailerId);
  const { title, says, todo } = wordsOf(item, context);
  const next = today.jobs[0]?.job;
  return {
    tone: 'stop',
    title: `${trailerName(today.trailer)}: ${title}`,
    mark: 'Do not load',
    says: [
      says,
      ...(next === undefined
        ? []
        : [`It is booked for ${next.name}, ${onDays(next.startsOn, next.endsOn, context.asOf)}.`]),
    ],
    todo: [todo],
    facts: [
      ...(item.flag.since === null ? [] : [{ label: 'Since', text: onDay(item.flag.since, context.asOf) }]),
      { label: 'Lifted by', text: clearanceWords(item.flag, namesOf(item, context)) },
    ],
    link: { text: 'Open the trailer', url: `${context.baseUrl}/trailers/${item.trailerId}#flags` },
  };
}

/** `T-07: tires past 6 years`. */
export function stopInShort(item: StopItem, context: LetterContext): string {
  const { title } = wordsOf(item, context);
  return `${trailerOf(context, item.trailerId).trailer.yardNumber}: ${title.charAt(0).toLowerCase()}${title.slice(1)}`;
}

function wordsOf(item: StopItem, context: LetterContext) {
  return flagWords(item.flag, namesOf(item, context));
}

function namesOf(item: StopItem, context: LetterContext): FlagNames {
  return {
    asOf: context.asOf,
    checkKinds: checkKindsOf(trailerOf(context, item.trailerId)),
    machines: context.machineNames,
  };
}
