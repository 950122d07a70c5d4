import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { YardTx } from '../database.js';
import { type ListPage, offsetOf, type PageOfList } from './paging.js';

const NOTICE_STATES = ['waiting', 'sent', 'dead', 'bounced', 'cancelled'] as const;

export interface NoticeRow {
  readonly id: string;
  readonly kind: string;
  readonly toName: string;
  readonly toEmail: string;
  readonly subject: string;
  readonly state: (typeof NOTICE_STATES)[number];
  readonly createdAt: Date;
  readonly notBefore: Date;
  readonly sentAt: Date | null;
  readonly attempts: number;
  readonly lastError: string | null;
  /** What it tells, by kind: `due-soon`, `gate-brief`… with the trailer it is about. */
  readonly items: readonly {
    readonly kind: string;
    readonly trailerId: string | null;
    readonly number: string | null;
  }[];
}

export interface NoticeDetail extends NoticeRow {
  readonly bodyText: string;
  readonly bodyHtml: string;
  readonly messageId: string;
  readonly answers: readonly {
    readonly answer: string;
    readonly byName: string | null;
    readonly untilOn: CivilDate | null;
    readonly reason: string | null;
    readonly answeredOn: CivilDate;
  }[];
}

/** Every mail of the yard: to whom, why, and what became of it. */
@Injectable()
export class NoticeListView {
  async page(tx: YardTx, state: NoticeRow['state'] | null, paging: PageOfList): Promise<ListPage<NoticeRow>> {
    const where = state === null ? {} : { state };
    const rows = await tx.notice.findMany({
      where,
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
      take: paging.perPage,
      skip: offsetOf(paging),
      omit: { bodyText: true, bodyHtml: true },
      include: { items: { select: { kind: true, trailerId: true } } },
    });
    const numbers = await numbersOf(
      tx,
      rows.flatMap((row) => row.items.map((item) => item.trailerId)),
    );
    return { rows: rows.map((row) => toNoticeRow(row, numbers)), total: await tx.notice.count({ where }) };
  }

  /** How many could not be delivered: shown wherever notices are, so that silence is not mistaken for peace. */
  async undelivered(tx: YardTx): Promise<number> {
    return tx.notice.count({ where: { state: { in: ['dead', 'bounced'] } } });
  }

  async find(tx: YardTx, noticeId: string): Promise<NoticeDetail | null> {
    const row = await tx.notice.findFirst({
      where: { id: noticeId },
      include: { items: { select: { kind: true, trailerId: true, itemKey: true } } },
    });
    if (row === null) return null;
    const numbers = await numbersOf(
      tx,
      row.items.map((item) => item.trailerId),
    );
    const answers = await tx.$queryRaw<AnswerRow[]>`
      select a.answer, p.name by_name, a.until_on::text, a.reason, a.answered_on::text
      from notice_answer a
      left join membership p on p.yard_id = a.yard_id and p.person_id = a.person_id
      where a.yard_id = ${tx.yardId}::uuid and a.item_key = any(${row.items.map((item) => item.itemKey)}::text[])
      order by a.recorded_at`;
    return {
      ...toNoticeRow(row, numbers),
      bodyText: row.bodyText,
      bodyHtml: row.bodyHtml,
      messageId: row.messageId,
      answers: answers.map((answer) => ({
        answer: answer.answer,
        byName: answer.by_name,
        untilOn: answer.until_on as CivilDate | null,
        reason: answer.reason,
        answeredOn: answer.answered_on as CivilDate,
      })),
    };
  }
}

interface AnswerRow {
  readonly answer: string;
  readonly by_name: string | null;
  readonly until_on: string | null;
  readonly reason: string | null;
  readonly answered_on: string;
}

type Stored = Omit<NoticeRow, 'items' | 'state'> & {
  readonly state: string;
  readonly items: readonly { readonly kind: string; readonly trailerId: string | null }[];
};

async function numbersOf(tx: YardTx, ids: readonly (string | null)[]): Promise<ReadonlyMap<string, string>> {
  const known = [...new Set(ids.filter((id) => id !== null))];
  if (known.length === 0) return new Map();
  const trailers = await tx.trailer.findMany({ where: { id: { in: known } }, select: { id: true, yardNumber: true } });
  return new Map(trailers.map((trailer) => [trailer.id, trailer.yardNumber]));
}

function toNoticeRow(row: Stored, numbers: ReadonlyMap<string, string>): NoticeRow {
  return {
    id: row.id,
    kind: row.kind,
    toName: row.toName,
    toEmail: row.toEmail,
    subject: row.subject,
    state: row.state as NoticeRow['state'],
    createdAt: row.createdAt,
    notBefore: row.notBefore,
    sentAt: row.sentAt,
    attempts: row.attempts,
    lastError: row.lastError,
    items: row.items.map((item) => ({
      kind: item.kind,
      trailerId: item.trailerId,
      number: item.trailerId === null ? null : (numbers.get(item.trailerId) ?? null),
    })),
  };
}
