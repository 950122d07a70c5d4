import type { LetterItem } from '../../rules/notice/plan-letters.js';
import { count } from '../words/show.js';
import { addressEntry } from './address-entry.js';
import { CAUTION, whyYou } from './closing.js';
import { dueEntry, dueInShort } from './due-entry.js';
import { gateEntry, gateInShort } from './gate-entry.js';
import { jobOf, type LetterContext, trailerOf } from './letter-context.js';
import type { Section, Written } from './paper.js';
import { written } from './written.js';

/** The one mail of a person's day: jobs that leave, then what is overdue, then what falls due. */
export function dayLetter(told: readonly LetterItem[], context: LetterContext): Written {
  const items = told.toSorted((one, other) => (urgency(one, context) < urgency(other, context) ? -1 : 1));
  const sections: readonly Section[] = [
    { heading: 'Going out', entries: of(items, 'gate-brief').map((item) => gateEntry(item, context)) },
    { heading: 'Overdue', entries: of(items, 'overdue').map((item) => dueEntry(item, context)) },
    { heading: 'Falls due', entries: of(items, 'due-soon').map((item) => dueEntry(item, context)) },
    {
      heading: 'Mail that does not arrive',
      entries: of(items, 'address-failed').map((item) => addressEntry(item, context)),
    },
  ].filter(({ entries }) => entries.length > 0);
  const short = inShort(items, context);
  const subject = `${short[0] ?? 'Your yard'}${short.length > 1 ? `, and ${short.length - 1} more` : ''}`;
  return written({
    yardName: context.yardName,
    subject,
    preview: sections.flatMap(({ entries }) => entries.flatMap(({ says }) => says))[0] ?? subject,
    greeting: `${context.readerName},`,
    opening: [
      items.length === 1 ? 'One thing for you:' : `${count(items.length, 'thing')} for you, the most urgent first:`,
    ],
    summary: items.length > READ_STANDING ? short : [],
    sections,
    button: null,
    closing: [CAUTION, whyYou(context.yardName)],
  });
}

/** The day that presses, as text that sorts: of a job its start, of a check its last good day, at once when none. */
function urgency(item: LetterItem, context: LetterContext): string {
  switch (item.kind) {
    case 'gate-brief':
      return jobOf(trailerOf(context, item.trailerId), item.jobId)?.startsOn ?? '';
    case 'due-soon':
    case 'overdue':
      return item.due.dueOn ?? '';
    case 'stop-flag':
    case 'address-failed':
      return '';
  }
}

/** So many things are read as they come; more get a list in front. */
const READ_STANDING = 2;

/** Each thing in a line, the most urgent first; the subject is the first of them. */
function inShort(items: readonly LetterItem[], context: LetterContext): readonly string[] {
  return [
    ...of(items, 'gate-brief').map((item) => gateInShort(item, context)),
    ...[...of(items, 'overdue'), ...of(items, 'due-soon')].map((item) => dueInShort(item, context)),
    ...of(items, 'address-failed').map((item) => `Mail to ${item.personName} does not arrive`),
  ];
}

function of<Kind extends LetterItem['kind']>(
  items: readonly LetterItem[],
  kind: Kind,
): readonly Extract<LetterItem, { kind: Kind }>[] {
  return items.filter((item): item is Extract<LetterItem, { kind: Kind }> => item.kind === kind);
}
