import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { YardTx } from '../database.js';
import { Prisma } from '../generated/client.js';
import { type ListPage, offsetOf, type PageOfList } from './paging.js';
import { ANY_TRAILER, isOfTrailer, type TrailerFilter } from './trailer-filter.js';

export interface HoldRow {
  readonly id: string;
  readonly openedOn: CivilDate;
  readonly reason: string;
  readonly openedByName: string;
  readonly liftedOn: CivilDate | null;
  readonly liftedByName: string | null;
  readonly liftReason: string | null;
}

export interface OpenHoldRow extends HoldRow {
  readonly trailer: { readonly id: string; readonly number: string; readonly name: string | null };
  /** The first booked job this hold breaks. */
  readonly nextJob: { readonly id: string; readonly name: string; readonly startsOn: CivilDate } | null;
}

@Injectable()
export class HoldListView {
  /** Open holds of the yard, those that break a job soonest first. */
  async open(
    tx: YardTx,
    today: CivilDate,
    paging: PageOfList,
    trailers: TrailerFilter = ANY_TRAILER,
  ): Promise<ListPage<OpenHoldRow>> {
    const where = Prisma.sql`h.yard_id = ${tx.yardId}::uuid and h.lifted_on is null and t.status = 'in-service'
      and ${isOfTrailer(tx, Prisma.sql`h.trailer_id`, trailers)}`;
    const rows = await tx.$queryRaw<OpenRow[]>`
      select h.id::text, h.opened_on::text, h.reason, h.opened_by_name, h.lifted_on::text, h.lifted_by_name, h.lift_reason,
        t.id::text trailer_id, t.yard_number, t.name trailer_name,
        j.id::text job_id, j.name job_name, j.starts_on::text job_starts_on
      from hold h
      join trailer t on t.yard_id = h.yard_id and t.id = h.trailer_id
      left join lateral (
        select id, name, starts_on from job
        where yard_id = t.yard_id and trailer_id = t.id and state = 'booked' and ends_on >= ${today}::date
        order by starts_on, id limit 1) j on true
      where ${where}
      order by j.starts_on nulls last, h.opened_on, h.id
      limit ${paging.perPage} offset ${offsetOf(paging)}`;
    const [{ total } = { total: 0 }] = await tx.$queryRaw<{ total: number }[]>`
      select count(*)::int total from hold h join trailer t on t.yard_id = h.yard_id and t.id = h.trailer_id
      where ${where}`;
    return { rows: rows.map(toOpenHold), total };
  }

  /** All holds of one trailer, latest first. */
  async ofTrailer(tx: YardTx, trailerId: string): Promise<readonly HoldRow[]> {
    const rows = await tx.$queryRaw<Row[]>`
      select id::text, opened_on::text, reason, opened_by_name, lifted_on::text, lifted_by_name, lift_reason
      from hold where yard_id = ${tx.yardId}::uuid and trailer_id = ${trailerId}::uuid
      order by lifted_on is not null, opened_on desc, id desc limit 100`;
    return rows.map(toHold);
  }
}

interface Row {
  readonly id: string;
  readonly opened_on: string;
  readonly reason: string;
  readonly opened_by_name: string;
  readonly lifted_on: string | null;
  readonly lifted_by_name: string | null;
  readonly lift_reason: string | null;
}

interface OpenRow extends Row {
  readonly trailer_id: string;
  readonly yard_number: string;
  readonly trailer_name: string | null;
  readonly job_id: string | null;
  readonly job_name: string | null;
  readonly job_starts_on: string | null;
}

function toHold(row: Row): HoldRow {
  return {
    id: row.id,
    openedOn: row.opened_on as CivilDate,
    reason: row.reason,
    openedByName: row.opened_by_name,
    liftedOn: row.lifted_on as CivilDate | null,
    liftedByName: row.lifted_by_name,
    liftReason: row.lift_reason,
  };
}

function toOpenHold(row: OpenRow): OpenHoldRow {
  return {
    ...toHold(row),
    trailer: { id: row.trailer_id, number: row.yard_number, name: row.trailer_name },
    nextJob:
      row.job_id === null || row.job_name === null
        ? null
        : { id: row.job_id, name: row.job_name, startsOn: row.job_starts_on as CivilDate },
  };
}
