import { Injectable } from '@nestjs/common';
import type { Assessment } from '../../rules/assess.js';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Trailer } from '../../rules/facts/trailer.js';
import type { TrailerClass } from '../../rules/trailer/ratings.js';
import type { Kilograms } from '../../rules/units/mass.js';
import type { YardTx } from '../database.js';
import { Prisma } from '../generated/client.js';
import { type ListPage, offsetOf, type PageOfList, withoutNul } from './paging.js';
import { ANY_TRAILER, BY_NUMBER, looksLike, type TrailerFilter, trailerIs } from './trailer-filter.js';

export interface TrailerRow {
  readonly id: string;
  readonly number: string;
  readonly name: string | null;
  readonly status: Trailer['status'];
  /** Null until the trailer has been assessed for the first time. */
  readonly readiness: Assessment['readiness'] | null;
  readonly trailerClass: TrailerClass | null;
  readonly payloadKg: Kilograms | null;
  readonly stopFlags: number;
  readonly limitFlags: number;
  readonly watchFlags: number;
  readonly overdue: number;
  readonly nextDueOn: CivilDate | null;
  readonly nextJob: { readonly id: string; readonly name: string; readonly startsOn: CivilDate } | null;
}

export type ReadinessCounts = Readonly<Record<Assessment['readiness'], number>>;

/** Every trailer of the yard with its kept result: read wide, changed nowhere. */
@Injectable()
export class TrailerListView {
  /** In the order of their numbers, read as people read them. Only those of the page are looked into. */
  async page(tx: YardTx, filter: TrailerFilter, paging: PageOfList, today: CivilDate): Promise<ListPage<TrailerRow>> {
    const where = trailerIs(tx, filter);
    const rows = await tx.$queryRaw<Row[]>`
      select t.id::text, t.yard_number, t.name, t.status, r.readiness, r.trailer_class, r.payload_kg,
        coalesce(r.stop_flags, 0) stop_flags, coalesce(r.limit_flags, 0) limit_flags,
        coalesce(r.watch_flags, 0) watch_flags, coalesce(r.overdue, 0) overdue, r.next_due_on::text,
        j.id::text job_id, j.name job_name, j.starts_on::text job_starts_on
      from (
        select t.id, t.yard_id, t.yard_number, t.name, t.status from trailer t
        where ${where} order by ${BY_NUMBER} limit ${paging.perPage} offset ${offsetOf(paging)}) t
      left join trailer_result r on r.yard_id = t.yard_id and r.trailer_id = t.id
      left join lateral (
        select id, name, starts_on from job
        where yard_id = t.yard_id and trailer_id = t.id and state = 'booked' and ends_on >= ${today}::date
        order by starts_on, id limit 1) j on true
      order by ${BY_NUMBER}`;
    const [{ total } = { total: 0 }] = await tx.$queryRaw<{ total: number }[]>`
      select count(*)::int total from trailer t where ${where}`;
    return { rows: rows.map(toTrailerRow), total };
  }

  /** How many there are in each state of readiness, of those like the filter whatever their own. */
  async counts(tx: YardTx, filter: TrailerFilter = ANY_TRAILER): Promise<ReadinessCounts> {
    const all = filter.text === null && filter.trailerClass === null;
    const these = all
      ? Prisma.sql`true`
      : Prisma.sql`trailer_id in (select t.id from trailer t where ${looksLike(tx, filter)})`;
    const rows = await tx.$queryRaw<{ readiness: Assessment['readiness']; count: number }[]>`
      select readiness, count(*)::int from trailer_result where yard_id = ${tx.yardId}::uuid and ${these}
      group by readiness`;
    const counts = { ready: 0, due: 0, down: 0, gone: 0 };
    for (const row of rows) counts[row.readiness] = row.count;
    return counts;
  }

  /** The id behind a number, as people type it: case and spaces aside. */
  async findIdByNumber(tx: YardTx, number: string): Promise<string | null> {
    const rows = await tx.$queryRaw<{ id: string }[]>`
      select id::text from trailer
      where yard_id = ${tx.yardId}::uuid and lower(yard_number) = lower(${withoutNul(number).trim()}) limit 1`;
    return rows[0]?.id ?? null;
  }

  /** Numbers to offer while typing; not all of a large yard's. */
  async numbers(tx: YardTx, most: number): Promise<readonly string[]> {
    const rows = await tx.$queryRaw<{ yard_number: string }[]>`
      select t.yard_number from trailer t where t.yard_id = ${tx.yardId}::uuid and t.status = 'in-service'
      order by ${BY_NUMBER} limit ${most}`;
    return rows.map((row) => row.yard_number);
  }
}

interface Row {
  readonly id: string;
  readonly yard_number: string;
  readonly name: string | null;
  readonly status: Trailer['status'];
  readonly readiness: Assessment['readiness'] | null;
  readonly trailer_class: TrailerClass | null;
  readonly payload_kg: number | null;
  readonly stop_flags: number;
  readonly limit_flags: number;
  readonly watch_flags: number;
  readonly overdue: number;
  readonly next_due_on: string | null;
  readonly job_id: string | null;
  readonly job_name: string | null;
  readonly job_starts_on: string | null;
}

function toTrailerRow(row: Row): TrailerRow {
  return {
    id: row.id,
    number: row.yard_number,
    name: row.name,
    status: row.status,
    readiness: row.readiness,
    trailerClass: row.trailer_class,
    payloadKg: row.payload_kg as Kilograms | null,
    stopFlags: row.stop_flags,
    limitFlags: row.limit_flags,
    watchFlags: row.watch_flags,
    overdue: row.overdue,
    nextDueOn: row.next_due_on as CivilDate | null,
    nextJob:
      row.job_id === null || row.job_name === null
        ? null
        : { id: row.job_id, name: row.job_name, startsOn: row.job_starts_on as CivilDate },
  };
}
