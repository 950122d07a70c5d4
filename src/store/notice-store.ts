import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../rules/calendar/civil-date.js';
import type { Answer, LetterItem } from '../rules/notice/plan-letters.js';
import { fromColumn, toColumn } from './civil-day.js';
import type { YardTx } from './database.js';

export const NOTICE_KINDS = ['day', 'stop', 'address-failed', 'invitation', 'reset'] as const;
export type NoticeKind = (typeof NOTICE_KINDS)[number];

/** `dead`: given up, shown, sent again only when somebody asks. `cancelled`: overtaken before it went out. */
export type NoticeState = 'waiting' | 'sent' | 'dead' | 'bounced' | 'cancelled';

/** A notice about to be written, its mail complete. */
export interface NewNotice {
  readonly id: string;
  /** Null for somebody who is only invited. */
  readonly personId: string | null;
  readonly kind: NoticeKind;
  /** Unique within the yard: the same cause writes the same key, so it cannot write twice. */
  readonly key: string;
  readonly to: { readonly name: string; readonly address: string };
  readonly subject: string;
  readonly text: string;
  readonly html: string;
  readonly messageId: string;
  readonly notBefore: Date;
  readonly writtenAt: Date;
  readonly toldOn: CivilDate;
  readonly items: readonly LetterItem[];
}

/** A notice as its sender needs it. */
export interface NoticeToSend {
  readonly id: string;
  readonly personId: string | null;
  readonly kind: NoticeKind;
  readonly to: { readonly name: string; readonly address: string };
  readonly subject: string;
  readonly text: string;
  readonly html: string;
  readonly messageId: string;
  /** Attempts already made and recorded. */
  readonly attempts: number;
  readonly writtenAt: Date;
}

/** What was told to one person, under one key. */
export interface ToldItem {
  readonly noticeId: string;
  readonly personId: string | null;
  readonly toldOn: CivilDate;
  readonly item: LetterItem;
}

export interface NewAnswer {
  readonly itemKey: string;
  readonly personId: string;
  readonly answer: 'done' | 'later' | 'not-mine' | 'already-done';
  readonly until: CivilDate | null;
  readonly reason: string | null;
  readonly checkRecordId: string | null;
  readonly answeredOn: CivilDate;
}

/** Notices, what they tell and what was answered. The row is the truth about a mail; no queue is. */
@Injectable()
export class NoticeStore {
  /** Writes a notice with its items. False when one of the same key is there already; then nothing is written. */
  async insert(tx: YardTx, notice: NewNotice): Promise<boolean> {
    const written = await tx.notice.createManyAndReturn({
      data: [
        {
          id: notice.id,
          yardId: tx.yardId,
          personId: notice.personId,
          kind: notice.kind,
          key: notice.key,
          toName: notice.to.name,
          toEmail: notice.to.address,
          subject: notice.subject,
          bodyText: notice.text,
          bodyHtml: notice.html,
          messageId: notice.messageId,
          notBefore: notice.notBefore,
          createdAt: notice.writtenAt,
        },
      ],
      skipDuplicates: true,
      select: { id: true },
    });
    if (written.length === 0) return false;
    if (notice.items.length > 0) {
      await tx.noticeItem.createMany({
        data: notice.items.map((item) => ({
          yardId: tx.yardId,
          noticeId: notice.id,
          itemKey: item.key,
          kind: item.kind,
          trailerId: 'trailerId' in item ? item.trailerId : null,
          checkKindId: 'due' in item ? item.due.checkKindId : null,
          jobId: 'jobId' in item ? item.jobId : null,
          toldOn: toColumn(notice.toldOn),
          item: structuredClone(item) as object,
        })),
      });
    }
    return true;
  }

  /**
   * Takes the next notice that may go out, `stop` before the rest, and locks its row until the transaction ends.
   * A row that another copy of the service holds is passed over; the lock of a killed one ends with its connection.
   */
  async claimNext(tx: YardTx, now: Date): Promise<NoticeToSend | null> {
    const rows = await tx.$queryRaw<readonly NoticeRow[]>`
      SELECT id, person_id, kind, to_name, to_email, subject, body_text, body_html, message_id, attempts, created_at
      FROM notice
      WHERE state = 'waiting' AND not_before <= ${now}
      ORDER BY (kind = 'stop') DESC, not_before, id
      LIMIT 1
      FOR UPDATE SKIP LOCKED`;
    const row = rows[0];
    return row === undefined ? null : toSend(row);
  }

  async recordSent(tx: YardTx, id: string, at: Date): Promise<void> {
    await tx.notice.update({
      where: { id },
      data: { state: 'sent', sentAt: at, lastAttemptAt: at, lastError: null, attempts: { increment: 1 } },
      select: { id: true },
    });
  }

  /** Empties a sent mail that carried a secret link: from then on only its reader has it. */
  async forgetBody(tx: YardTx, id: string): Promise<void> {
    await tx.notice.update({ where: { id }, data: { bodyText: '', bodyHtml: '' }, select: { id: true } });
  }

  /** The attempt failed; another is made from `next` on. */
  async recordRetry(tx: YardTx, id: string, at: Date, error: string, next: Date): Promise<void> {
    await tx.notice.update({
      where: { id },
      data: { notBefore: next, lastAttemptAt: at, lastError: error, attempts: { increment: 1 } },
      select: { id: true },
    });
  }

  async recordDead(tx: YardTx, id: string, at: Date, error: string): Promise<void> {
    await tx.notice.update({
      where: { id },
      data: { state: 'dead', lastAttemptAt: at, lastError: error, attempts: { increment: 1 } },
      select: { id: true },
    });
  }

  /** It is not sent after all; `why` is shown beside it. */
  async cancel(tx: YardTx, id: string, why: string): Promise<void> {
    await tx.notice.update({ where: { id }, data: { state: 'cancelled', lastError: why }, select: { id: true } });
  }

  /** Back into the queue, under the same Message-ID. False when it is not there or not given up. */
  async sendAgain(tx: YardTx, id: string, now: Date): Promise<boolean> {
    const { count } = await tx.notice.updateMany({
      where: { id, state: { in: ['dead', 'bounced'] } },
      data: { state: 'waiting', notBefore: now, attempts: 0 },
    });
    return count === 1;
  }

  /** Marks sent mails to one person as come back: the named one, or all of that person's of the day of the newest. */
  async recordBounced(tx: YardTx, personId: string, noticeId: string | null, note: string): Promise<void> {
    const newest = await tx.notice.findFirst({
      where: { personId, state: 'sent', ...(noticeId === null ? {} : { id: noticeId }) },
      orderBy: { createdAt: 'desc' },
      select: { id: true },
    });
    if (newest === null) return;
    await tx.notice.update({
      where: { id: newest.id },
      data: { state: 'bounced', lastError: note },
      select: { id: true },
    });
  }

  async find(
    tx: YardTx,
    id: string,
  ): Promise<{ personId: string | null; kind: NoticeKind; state: NoticeState } | null> {
    const row = await tx.notice.findFirst({ where: { id }, select: { personId: true, kind: true, state: true } });
    return row === null ? null : { ...row, kind: row.kind as NoticeKind, state: row.state as NoticeState };
  }

  /**
   * Keys of items about these trailers that reached their reader or are on their way, with the last day they were told.
   * What stood in a dead, bounced or cancelled notice was not told: it comes again.
   */
  async told(tx: YardTx, trailerIds: readonly string[]): Promise<ReadonlyMap<string, CivilDate>> {
    const rows = await tx.$queryRaw<readonly { item_key: string; told_on: string }[]>`
      SELECT i.item_key, max(i.told_on)::text AS told_on
      FROM notice_item i
      JOIN notice n ON n.yard_id = i.yard_id AND n.id = i.notice_id
      WHERE n.state IN ('waiting', 'sent') AND i.trailer_id = ANY (${[...trailerIds]}::uuid[])
      GROUP BY i.item_key`;
    return new Map(rows.map((row) => [row.item_key, row.told_on as CivilDate]));
  }

  /** What was answered about these trailers, oldest first. */
  async answers(tx: YardTx, trailerIds: readonly string[]): Promise<readonly Answer[]> {
    const rows = await tx.$queryRaw<
      readonly { item_key: string; person_id: string; answer: 'later' | 'not-mine'; until_on: string | null }[]
    >`
      SELECT a.item_key, a.person_id, a.answer, a.until_on::text AS until_on
      FROM notice_answer a
      WHERE a.answer IN ('later', 'not-mine')
        AND a.item_key IN (SELECT i.item_key FROM notice_item i WHERE i.trailer_id = ANY (${[...trailerIds]}::uuid[]))
      ORDER BY a.recorded_at, a.id`;
    return rows.map((row) => ({
      itemKey: row.item_key,
      personId: row.person_id,
      answer: row.answer,
      until: row.until_on as CivilDate | null,
    }));
  }

  /** What was told under a key, newest first. */
  async findItems(tx: YardTx, itemKey: string): Promise<readonly ToldItem[]> {
    const rows = await tx.noticeItem.findMany({
      where: { itemKey },
      orderBy: { id: 'desc' },
      select: { noticeId: true, toldOn: true, item: true, notice: { select: { personId: true } } },
    });
    return rows.map((row) => ({
      noticeId: row.noticeId,
      personId: row.notice.personId,
      toldOn: fromColumn(row.toldOn),
      item: row.item as unknown as LetterItem,
    }));
  }

  async insertAnswer(tx: YardTx, answer: NewAnswer): Promise<void> {
    await tx.noticeAnswer.create({
      data: {
        yardId: tx.yardId,
        itemKey: answer.itemKey,
        personId: answer.personId,
        answer: answer.answer,
        untilOn: toColumn(answer.until),
        reason: answer.reason,
        checkRecordId: answer.checkRecordId,
        answeredOn: toColumn(answer.answeredOn),
      },
      select: { id: true },
    });
  }
}

interface NoticeRow {
  readonly id: string;
  readonly person_id: string | null;
  readonly kind: NoticeKind;
  readonly to_name: string;
  readonly to_email: string;
  readonly subject: string;
  readonly body_text: string;
  readonly body_html: string;
  readonly message_id: string;
  readonly attempts: number;
  readonly created_at: Date;
}

function toSend(row: NoticeRow): NoticeToSend {
  return {
    id: row.id,
    personId: row.person_id,
    kind: row.kind,
    to: { name: row.to_name, address: row.to_email },
    subject: row.subject,
    text: row.body_text,
    html: row.body_html,
    messageId: row.message_id,
    attempts: row.attempts,
    writtenAt: row.created_at,
  };
}
