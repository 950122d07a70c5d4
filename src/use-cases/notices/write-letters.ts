import type { LetterItem } from '../../rules/notice/plan-letters.js';
import type { YardTx } from '../../store/database.js';
import type { Yard } from '../../store/yard-store.js';
import type { Caller } from '../caller.js';
import { type Draft, type DraftNeeds, draftLetters } from './draft-letters.js';
import { afterQuietHours } from './quiet-hours.js';
import { writeNotice } from './write-notice.js';

/**
 * Writes the letters that today asks for and that were not written before. May run any number of times a day: a
 * person's day letter has one key a day, so whoever had theirs hears the rest tomorrow. Items that `tells` denies are
 * left out. Returns how many letters were new.
 */
export async function writeLettersOfToday(
  tx: YardTx,
  needs: DraftNeeds,
  caller: Caller,
  yard: Yard,
  tells: (item: LetterItem) => boolean = () => true,
): Promise<number> {
  return writeDrafts(tx, needs, caller, yard, await draftLetters(tx, needs, yard, caller.today, tells));
}

/** A stop goes at once, whatever the hour: somebody may be about to load. The rest waits for the end of quiet hours. */
export async function writeDrafts(
  tx: YardTx,
  needs: Pick<DraftNeeds, 'notices' | 'letterhead'>,
  caller: Pick<Caller, 'now' | 'today'>,
  yard: Yard,
  drafts: readonly Draft[],
): Promise<number> {
  let written = 0;
  for (const { letter, to, written: words } of drafts) {
    const isNew = await writeNotice(tx, needs, caller, {
      personId: letter.personId,
      to,
      kind: letter.kind,
      key: letter.key,
      letter: words,
      notBefore: letter.kind === 'stop' ? caller.now : afterQuietHours(caller.now, yard),
      items: letter.items,
    });
    if (isNew) written += 1;
    // One that was given up and still holds true is tried once more, each time its cause is looked at.
    else if (letter.kind === 'stop') await needs.notices.revive(tx, letter.key, caller.now);
  }
  return written;
}
