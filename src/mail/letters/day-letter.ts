import type { LetterItem } from '../../rules/notice/plan-letters.js';
import { count } from '../words/show.js';
import { addressEntry } from './address-entry.js';
import { CAUTION, whyYou } from './closing.js';
import { dueEntry, dueInShort } from './due-entry.js';
import { gateEntry, gateInShort } from './gate-entry.js';
import type { LetterContext } from './letter-context.js';
import type { Section, Written } from './paper.js';
import { written } from './written.js';

/** The one mail of a person's day: jobs that leave, then what is overdue, then what falls due. */
export function dayLetter(items: readonly LetterItem[], context: LetterContext): Written {
  const sections: readonly Section[] = [
    { heading: 'Going out', entries: of(items, 'gate-brief').map((item) => gateEntry(item, context)) },
    { heading: 'Overdue', entries: of(items, 'overdue').map((item) => dueEntry(item, context)) },
    { heading: 'Falls due', entries: of(items, 'due-soon').map((item) => dueEntry(item, context)) },
    {
      heading: 'Mail that does not arrive',
      entries: of(items, 'address-failed').map((item) => addressEntry(item, context)),
    },
  ].filter(({ entries }) => entries.length > 0);
  const subject = daySubject(items, context);
  return written({
    yardName: context.yardName,
    subject,
    preview: sections.flatMap(({ entries }) => entries.flatMap(({ says }) => says))[0] ?? subject,
    greeting: `${context.readerName},`,
    opening: [
      items.length === 1 ? 'One thing for you:' : `${count(items.length, 'thing')} for you, the most urgent first:`,
    ],
    sections,
    button: null,
    closing: [CAUTION, whyYou(context.yardName)],
  });
}

/** The most urgent thing in full, the rest as a number: phones show some forty letters of it. */
function daySubject(items: readonly LetterItem[], context: LetterContext): string {
  const first = [
    ...of(items, 'gate-brief').map((item) => gateInShort(item, context)),
    ...[...of(items, 'overdue'), ...of(items, 'due-soon')].map((item) => dueInShort(item, context)),
    ...of(items, 'address-failed').map((item) => `Mail to ${item.personName} does not arrive`),
  ];
  const more = first.length - 1;
  return `${first[0] ?? 'Your yard today'}${more > 0 ? `, and ${more} more` : ''}`;
}

function of<Kind extends LetterItem['kind']>(
  items: readonly LetterItem[],
  kind: Kind,
): readonly Extract<LetterItem, { kind: Kind }>[] {
  return items.filter((item): item is Extract<LetterItem, { kind: Kind }> => item.kind === kind);
}
