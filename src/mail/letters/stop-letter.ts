import type { LetterItem } from '../../rules/notice/plan-letters.js';
import { CAUTION, whyYou } from './closing.js';
import type { LetterContext } from './letter-context.js';
import type { Written } from './paper.js';
import { stopEntry, stopInShort } from './stop-entry.js';
import { written } from './written.js';

/** Goes at once, whatever the hour: a trailer that must not be loaded. */
export function stopLetter(items: readonly LetterItem[], context: LetterContext): Written {
  const stops = items.filter((item) => item.kind === 'stop-flag');
  const [first] = stops;
  if (first === undefined) throw new RangeError('a stop letter needs a stop to tell');
  const more = stops.length - 1;
  const entries = stops.map((item) => stopEntry(item, context));
  return written({
    yardName: context.yardName,
    subject: `Do not load ${stopInShort(first, context)}${more > 0 ? `, and ${more} more` : ''}`,
    preview: entries[0]?.says[0] ?? '',
    greeting: `${context.readerName},`,
    opening: ['This cannot wait:'],
    summary: [],
    sections: [{ heading: 'Do not load', entries }],
    button: null,
    closing: [CAUTION, whyYou(context.yardName)],
  });
}
