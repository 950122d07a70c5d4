import type { Letterhead } from '../../mail/letterhead.js';
import type { Written } from '../../mail/letters/paper.js';
import type { LetterItem } from '../../rules/notice/plan-letters.js';
import type { YardTx } from '../../store/database.js';
import { newId } from '../../store/new-id.js';
import type { NoticeKind, NoticeStore } from '../../store/notice-store.js';
import type { Caller } from '../caller.js';

export interface NoticeWish {
  /** Null for somebody who is only invited. */
  readonly personId: string | null;
  readonly to: { readonly name: string; readonly address: string };
  readonly kind: NoticeKind;
  /** Says the cause, so that the same cause writes one notice however often it is told. */
  readonly key: string;
  readonly letter: Written;
  readonly notBefore: Date;
  readonly items?: readonly LetterItem[];
}

export interface WriteNoticeNeeds {
  readonly notices: NoticeStore;
  readonly letterhead: Letterhead;
}

/**
 * Writes a mail down as a notice, inside the transaction of what caused it: both are kept or neither is, so no cause
 * loses its mail and no mail goes out for something that was rolled back. Sending is another matter, and later.
 * False when a notice of this key was written before.
 */
export async function writeNotice(
  tx: YardTx,
  { notices, letterhead }: WriteNoticeNeeds,
  { now, today }: Pick<Caller, 'now' | 'today'>,
  wish: NoticeWish,
): Promise<boolean> {
  const id = newId();
  return notices.insert(tx, {
    id,
    personId: wish.personId,
    kind: wish.kind,
    key: wish.key,
    to: wish.to,
    subject: wish.letter.subject,
    text: wish.letter.text,
    html: wish.letter.html,
    messageId: letterhead.messageId(id),
    notBefore: wish.notBefore,
    writtenAt: now,
    toldOn: today,
    items: wish.items ?? [],
  });
}
