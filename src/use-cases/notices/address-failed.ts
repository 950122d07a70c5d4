import { addressFailedLetter } from '../../mail/letters/address-failed-letter.js';
import type { LetterItem } from '../../rules/notice/plan-letters.js';
import type { YardTx } from '../../store/database.js';
import type { Membership } from '../../store/membership-store.js';
import type { YardStore } from '../../store/yard-store.js';
import type { Caller } from '../caller.js';
import type { DraftNeeds } from './draft-letters.js';
import { afterQuietHours } from './quiet-hours.js';
import { writeLettersOfToday } from './write-letters.js';
import { writeNotice } from './write-notice.js';

export type AddressFailedNeeds = DraftNeeds & { readonly yards: YardStore };

/**
 * Takes in that mail to a person does not arrive: marks them unreachable, tells the owners the same day, and plans the
 * day once more, so that what they had to do goes to the backup as if it had never been told.
 */
export async function addressFailed(
  tx: YardTx,
  needs: AddressFailedNeeds,
  caller: Caller,
  person: Membership,
  failed: { readonly note: string; readonly items: readonly LetterItem[] },
): Promise<void> {
  await needs.members.save(tx, person.personId, { bouncedAt: caller.now, bounceNote: failed.note });
  const yard = await needs.yards.get(tx);
  const item: LetterItem = {
    kind: 'address-failed',
    key: `address-failed:${person.personId}:${caller.today}`,
    personId: person.personId,
    personName: person.name,
    items: failed.items.map(({ key }) => key),
  };
  for (const owner of await needs.members.list(tx)) {
    if (owner.role !== 'owner' || owner.leftOn !== null || owner.bouncedAt !== null) continue;
    const trailers = await needs.trailers.list(tx);
    await writeNotice(tx, needs, caller, {
      personId: owner.personId,
      to: { name: owner.name, address: owner.email },
      kind: 'address-failed',
      key: `${item.key}:${owner.personId}`,
      letter: addressFailedLetter({
        yardName: yard.name,
        baseUrl: needs.letterhead.baseUrl,
        readerName: owner.name,
        asOf: caller.today,
        person: { name: person.name, address: person.email, note: failed.note },
        items: failed.items,
        trailers: new Map(trailers.map((trailer) => [trailer.id, trailer])),
      }),
      notBefore: afterQuietHours(caller.now, yard),
      items: [item],
    });
  }
  // Before the day's planning there is nothing to hand over yet: it will see that the person cannot be reached.
  if ((await needs.notices.plannedOn(tx)) !== caller.today) return;
  await writeLettersOfToday(tx, needs, caller, yard, ({ kind }) => kind !== 'address-failed');
}
