import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../rules/calendar/civil-date.js';
import type { Answer, LetterItem } from '../rules/notice/plan-letters.js';
import { fromColumn, toColumn } from './civil-day.js';
import type { YardTx } from './database.js';

export type NoticeKind = 'day' | 'stop' | 'address-failed' | 'invitation' | 'reset';

/** `dead`: given up, shown, sent again only when somebody asks. `cancelled`: overtaken before it went out. */
type NoticeState = 'waiting' | 'sent' | 'dead' | 'bounced' | 'cancelled';

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

export interface FoundNotice {
  readonly personId: string | null;
  readonly kind: NoticeKind;
  readonly state: NoticeState;
  /** True once a mail with a secret link has gone out. */
  readonly bodyForgotten: boolean;
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

  /** `to`: where it really went; an address may have been mended since the notice was written. */
  async recordSent(tx: YardTx, id: string, at: Date, to: NewNotice['to']): Promise<void> {
    await tx.notice.update({
      where: { id },
      data: {
        state: 'sent',
        sentAt: at,
        toName: to.name,
        toEmail: to.address,
        lastAttemptAt: at,
        lastError: null,
        attempts: { increment: 1 },
      },
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

  /** A notice that was given up goes back into the queue, because its cause still stands. */
  async revive(tx: YardTx, key: string, now: Date): Promise<void> {
    await tx.notice.updateMany({
      where: { key, state: 'dead' },
      data: { state: 'waiting', notBefore: now, attempts: 0 },
    });
  }

  /** The named notice, or the newest that was sent to the person, came back. Null when there is none such. */
  async recordBounced(tx: YardTx, personId: string, noticeId: string | null, note: string): Promise<string | null> {
    const newest = await tx.notice.findFirst({
      where: { personId, state: 'sent', ...(noticeId === null ? {} : { id: noticeId }) },
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
      select: { id: true },
    });
    if (newest === null) return null;
    await tx.notice.update({
      where: { id: newest.id },
      data: { state: 'bounced', lastError: note },
      select: { id: true },
    });
    return newest.id;
  }

  async find(tx: YardTx, id: string): Promise<FoundNotice | null> {
    const row = await tx.notice.findFirst({
      where: { id },
      select: { personId: true, kind: true, state: true, bodyText: true },
    });
    if (row === null) return null;
    return {
      personId: row.personId,
      kind: row.kind as NoticeKind,
      state: row.state as NoticeState,
      bodyForgotten: row.bodyText === '',
    };
  }

  async itemsOf(tx: YardTx, noticeId: string): Promise<readonly LetterItem[]> {
    const rows = await tx.noticeItem.findMany({ where: { noticeId }, orderBy: { id: 'asc' }, select: { item: true } });
    return rows.map((row) => row.item as unknown as LetterItem);
  }

  /**
   * Whether all that a notice tells has been dealt with since it was written, so that it would only annoy:
   * the check has been done or is far off again, the job is no longer booked, the flag is down.
   * False for a notice that tells nothing of the kind.
   */
  async allSettled(tx: YardTx, noticeId: string): Promise<boolean> {
    const rows = await tx.$queryRaw<readonly { items: bigint; open: bigint }[]>`
      SELECT count(*) AS items, count(*) FILTER (WHERE CASE
        WHEN i.kind IN ('due-soon', 'overdue') THEN EXISTS (
          SELECT FROM due_result d
          WHERE d.trailer_id = i.trailer_id AND d.check_kind_id = i.check_kind_id
            AND d.state IN ('due-soon', 'overdue', 'never-done')
            AND d.due ->> 'lastDoneOn' IS NOT DISTINCT FROM i.item -> 'due' ->> 'lastDoneOn')
        WHEN i.kind = 'gate-brief' THEN EXISTS (
          SELECT FROM job j WHERE j.id = i.job_id AND j.state = 'booked' AND j.trailer_id = i.trailer_id)
        WHEN i.kind = 'stop-flag' THEN EXISTS (
          SELECT FROM flag_result f WHERE f.trailer_id = i.trailer_id AND f.key = i.item -> 'flag' ->> 'key')
        ELSE true END) AS open
      FROM notice_item i WHERE i.notice_id = ${noticeId}::uuid`;
    const counted = rows[0];
    return counted !== undefined && counted.items > 0n && counted.open === 0n;
  }

  /** Takes a day for planning. False when it, or a later one, was planned before; the row stays locked until the end. */
  async startPlanning(tx: YardTx, day: CivilDate): Promise<boolean> {
    const taken = await tx.$executeRaw`
      UPDATE yard SET planned_on = ${day}::date
      WHERE id = ${tx.yardId}::uuid AND (planned_on IS NULL OR planned_on < ${day}::date)`;
    return taken === 1;
  }

  async plannedOn(tx: YardTx): Promise<CivilDate | null> {
    const rows = await tx.$queryRaw<readonly { planned_on: string | null }[]>`
      SELECT planned_on::text AS planned_on FROM yard WHERE id = ${tx.yardId}::uuid`;
    return (rows[0]?.planned_on ?? null) as CivilDate | null;
  }

  /**
   * Trailers about which a letter of this day could have anything to say: something due or overdue, a stop, a job that
   * starts by `jobsUntil`, or an answer that is out of date. Found by index, so a day's work grows with what is due.
   */
  async trailersToSpeakOf(tx: YardTx, asOf: CivilDate, jobsUntil: CivilDate): Promise<readonly string[]> {
    const rows = await tx.$queryRaw<readonly { id: string }[]>`
      SELECT trailer_id::text AS id FROM due_result
        WHERE yard_id = ${tx.yardId}::uuid AND state IN ('due-soon', 'overdue', 'never-done')
      UNION SELECT trailer_id::text FROM flag_result
        WHERE yard_id = ${tx.yardId}::uuid AND severity = 'stop'
      UNION SELECT trailer_id::text FROM job
        WHERE yard_id = ${tx.yardId}::uuid AND state = 'booked' AND trailer_id IS NOT NULL
          AND starts_on BETWEEN ${asOf}::date AND ${jobsUntil}::date
      UNION SELECT trailer_id::text FROM trailer_result
        WHERE yard_id = ${tx.yardId}::uuid AND wake_on <= ${asOf}::date
      ORDER BY id`;
    return rows.map((row) => row.id);
  }

  /**
   * Keys of items about these trailers that reached their reader or are on their way, with the last day they were told.
   * What stood in a dead, bounced or cancelled notice was not told: it comes again. What somebody with a failed address
   * missed counts as told once the owners know, as long as the address fails; after that it is theirs to hear again.
   */
  async told(tx: YardTx, trailerIds: readonly string[]): Promise<ReadonlyMap<string, CivilDate>> {
    const rows = await tx.$queryRaw<readonly { item_key: string; told_on: string }[]>`
      SELECT item_key, max(told_on)::text AS told_on
      FROM (
        SELECT i.item_key, i.told_on
        FROM notice_item i
        JOIN notice n ON n.yard_id = i.yard_id AND n.id = i.notice_id
        WHERE n.state IN ('waiting', 'sent') AND i.trailer_id = ANY (${[...trailerIds]}::uuid[])
        UNION ALL
        SELECT missed.key, i.told_on
        FROM notice_item i
        JOIN notice n ON n.yard_id = i.yard_id AND n.id = i.notice_id
        JOIN membership m ON m.yard_id = i.yard_id AND m.person_id = (i.item ->> 'personId')::uuid
        CROSS JOIN LATERAL jsonb_array_elements_text(i.item -> 'items') AS missed (key)
        WHERE i.kind = 'address-failed' AND n.state IN ('waiting', 'sent') AND m.bounced_at IS NOT NULL
      ) AS heard
      GROUP BY item_key`;
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
    // Postgres keeps no such character; nothing can have been told under it.
    if (itemKey.includes('\0')) return [];
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
