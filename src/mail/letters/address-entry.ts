import type { LetterItem } from '../../rules/notice/plan-letters.js';
import type { LetterContext } from './letter-context.js';
import type { Entry } from './paper.js';

type AddressItem = Extract<LetterItem, { kind: 'address-failed' }>;

/** Somebody of the yard who gets no mail any more. */
export function addressEntry(item: AddressItem, { baseUrl }: LetterContext): Entry {
  return {
    tone: 'first',
    title: item.personName,
    mark: null,
    says: [
      `Mail to ${item.personName} comes back, so nothing is sent there any more.`,
      'What they had to do goes to the backup of each check.',
    ],
    todo: ['Ask for the right address and enter it.'],
    facts: [],
    link: { text: 'Open the people of the yard', url: `${baseUrl}/people` },
  };
}
