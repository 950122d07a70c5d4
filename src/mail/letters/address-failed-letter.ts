import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Trailer } from '../../rules/facts/trailer.js';
import type { LetterItem } from '../../rules/notice/plan-letters.js';
import { onDay } from '../words/show.js';
import { whyYou } from './closing.js';
import { trailerName } from './letter-context.js';
import type { Written } from './paper.js';
import { written } from './written.js';

export interface AddressFailedLetter {
  readonly yardName: string;
  readonly baseUrl: string;
  readonly readerName: string;
  readonly asOf: CivilDate;
  readonly person: { readonly name: string; readonly address: string; readonly note: string };
  /** What the mail that did not arrive had to tell. */
  readonly items: readonly LetterItem[];
  readonly trailers: ReadonlyMap<string, Pick<Trailer, 'yardNumber' | 'name'>>;
}

/** Tells an owner that somebody's mail does not arrive, and what is in nobody's hands because of it. */
export function addressFailedLetter(letter: AddressFailedLetter): Written {
  const { person, items } = letter;
  const open = items.flatMap((item) => inShort(item, letter));
  return written({
    yardName: letter.yardName,
    subject: `Mail to ${person.name} does not arrive${open.length > 0 ? `: ${open.length} open` : ''}`,
    preview: `${person.name} did not get the last letter.`,
    greeting: `${letter.readerName},`,
    opening: [
      `Mail to ${person.name} at ${person.address} came back. The mail server says: ${person.note}`,
      'Until the address is mended nothing more is sent there.',
    ],
    summary: [],
    sections:
      open.length === 0
        ? []
        : [
            {
              heading: 'In nobody’s hands',
              entries: [
                {
                  tone: 'first',
                  title: `${person.name} was told of, and may not have read:`,
                  mark: null,
                  says: [],
                  todo: open,
                  facts: [],
                  link: null,
                },
                {
                  tone: 'plain',
                  title: 'What happens now',
                  mark: null,
                  says: ['Each of these goes to the backup of its check. Where there is none, it comes to you.'],
                  todo: [],
                  facts: [],
                  link: null,
                },
              ],
            },
          ],
    button: { text: 'Mend the address', url: `${letter.baseUrl}/people` },
    closing: [whyYou(letter.yardName)],
  });
}

function inShort(item: LetterItem, { trailers, asOf }: AddressFailedLetter): readonly string[] {
  if (item.kind === 'address-failed') return [];
  const trailer = trailers.get(item.trailerId);
  const name = trailer === undefined ? 'A trailer' : trailerName(trailer);
  switch (item.kind) {
    case 'gate-brief':
      return [`${name}: the gate brief of a job`];
    case 'stop-flag':
      return [`${name}: must not be loaded`];
    case 'due-soon':
    case 'overdue':
      return [
        `${name}: ${item.code.replaceAll('-', ' ')}${item.due.dueOn === null ? '' : `, due by ${onDay(item.due.dueOn, asOf)}`}`,
      ];
  }
}
