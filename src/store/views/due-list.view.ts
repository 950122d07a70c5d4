import { Injectable } from '@nestjs/common';
import type { Due } from '../../rules/inspection/due.js';
import type { YardTx } from '../database.js';
import { Prisma } from '../generated/client.js';
import { containing, type ListPage, offsetOf, type PageOfList } from './paging.js';
import { ANY_TRAILER, isOfTrailer, type TrailerFilter } from './trailer-filter.js';

export interface DueFilter {
  readonly text: string | null;
  /** `now`: overdue, never done, or due within the days people are told ahead. */
  readonly state: 'now' | 'later' | 'unknown' | 'all';
}

export interface DueRow {
  readonly trailer: { readonly id: string; readonly number: string; readonly name: string | null };
  readonly checkKind: { readonly id: string; readonly name: string; readonly safety: boolean };
  readonly ownerName: string | null;
  readonly due: Due;
}

const STATES: Readonly<Record<DueFilter['state'], readonly Due['state'][]>> = {
  now: ['overdue', 'never-done', 'due-soon'],
  later: ['later'],
  unknown: ['unknown'],
  all: ['overdue', 'never-done', 'due-soon', 'later', 'unknown'],
};

const MOST_PRESSING = Prisma.sql`
  case d.state when 'overdue' then 0 when 'never-done' then 1 when 'due-soon' then 2 when 'later' then 3 else 4 end,
  k.safety desc, d.due_on nulls last, t.yard_number, k.name`;

/** What is due, over all trailers in service, most pressing first. */
@Injectable()
export class DueListView {
  async page(
    tx: YardTx,
    filter: DueFilter,
    paging: PageOfList,
    trailers: TrailerFilter = ANY_TRAILER,
  ): Promise<ListPage<DueRow>> {
    const like = filter.text === null ? null : containing(filter.text);
    const where = Prisma.sql`d.yard_id = ${tx.yardId}::uuid and t.status = 'in-service'
      and d.state = any(${[...STATES[filter.state]]}::text[])
      and (${like}::text is null or t.yard_number ilike ${like} or t.name ilike ${like} or k.name ilike ${like})
      and ${isOfTrailer(tx, Prisma.sql`d.trailer_id`, trailers)}`;
    // The answers are long: only those of the page are fetched, after the page is known.
    const rows = await tx.$queryRaw<Row[]>`
      select one.*, p.name owner_name, d.due
      from (
        select t.id::text trailer_id, t.yard_number, t.name trailer_name, k.id::text kind_id, k.name kind_name,
          k.safety, k.owner_person_id, row_number() over (order by ${MOST_PRESSING}) place
        from due_result d
        join trailer t on t.yard_id = d.yard_id and t.id = d.trailer_id
        join check_kind k on k.yard_id = d.yard_id and k.id = d.check_kind_id
        where ${where}
        order by place limit ${paging.perPage} offset ${offsetOf(paging)}) one
      join due_result d on d.trailer_id = one.trailer_id::uuid and d.check_kind_id = one.kind_id::uuid
      left join membership p on p.yard_id = d.yard_id and p.person_id = one.owner_person_id and p.left_on is null
      order by one.place`;
    const [{ total } = { total: 0 }] = await tx.$queryRaw<{ total: number }[]>`
      select count(*)::int total from due_result d
      join trailer t on t.yard_id = d.yard_id and t.id = d.trailer_id
      join check_kind k on k.yard_id = d.yard_id and k.id = d.check_kind_id
      where ${where}`;
    return { rows: rows.map(toDueRow), total };
  }
}

interface Row {
  readonly trailer_id: string;
  readonly yard_number: string;
  readonly trailer_name: string | null;
  readonly kind_id: string;
  readonly kind_name: string;
  readonly safety: boolean;
  readonly owner_name: string | null;
  readonly due: unknown;
}

function toDueRow(row: Row): DueRow {
  return {
    trailer: { id: row.trailer_id, number: row.yard_number, name: row.trailer_name },
    checkKind: { id: row.kind_id, name: row.kind_name, safety: row.safety },
    ownerName: row.owner_name,
    due: row.due as Due,
  };
}
