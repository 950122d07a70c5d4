import type { YardTx } from '../../store/database.js';
import type { MembershipStore } from '../../store/membership-store.js';
import type { Caller } from '../caller.js';
import { type Given, TEXT } from '../input/given.js';

/** Who did a check: one of the yard's people, somebody named from outside, or whoever records it. */
export async function findWhoDidIt(
  tx: YardTx,
  members: MembershipStore,
  given: Given,
  caller: Caller,
): Promise<{ readonly byPersonId: string | null; readonly byName: string }> {
  const byPersonId = given.id('byPersonId', 'who did it');
  const byName = given.text('byName', 'who did it', TEXT.name);
  if (byPersonId !== null) {
    // Somebody who has left may well have done it while they were here.
    const member = await members.find(tx, byPersonId);
    if (member === null) given.refuse('byPersonId', "Choose one of the yard's people, or give a name.");
    return { byPersonId, byName: member?.name ?? '' };
  }
  return byName === null ? { byPersonId: caller.personId, byName: caller.name } : { byPersonId: null, byName };
}
