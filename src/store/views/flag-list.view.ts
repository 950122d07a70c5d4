import { Injectable } from '@nestjs/common';
import type { Flag, FlagRule, Severity } from '../../rules/flags/flag.js';
import type { YardTx } from '../database.js';
import { Prisma } from '../generated/client.js';
import { containing, type ListPage, offsetOf, type PageOfList } from './paging.js';

export interface FlagFilter {
  readonly text: string | null;
  readonly severity: Severity | null;
  readonly rule: FlagRule | null;
}

export interface FlagRow {
  readonly trailer: { readonly id: string; readonly number: string; readonly name: string | null };
  readonly flag: Flag;
}

/** The flags of all trailers in service, worst first. */
@Injectable()
export class FlagListView {
  async page(tx: YardTx, filter: FlagFilter, paging: PageOfList): Promise<ListPage<FlagRow>> {
    const like = filter.text === null ? null : containing(filter.text);
    const where = Prisma.sql`f.yard_id = ${tx.yardId}::uuid and t.status = 'in-service'
      and (${filter.severity}::text is null or f.severity = ${filter.severity})
      and (${filter.rule}::text is null or f.rule = ${filter.rule})
      and (${like}::text is null or t.yard_number ilike ${like} or t.name ilike ${like})`;
    const rows = await tx.$queryRaw<Row[]>`
      select t.id::text trailer_id, t.yard_number, t.name trailer_name, f.flag
      from flag_result f join trailer t on t.yard_id = f.yard_id and t.id = f.trailer_id
      where ${where}
      order by case f.severity when 'stop' then 0 when 'limit' then 1 else 2 end, f.since nulls last, t.yard_number, f.key
      limit ${paging.perPage} offset ${offsetOf(paging)}`;
    const [{ total } = { total: 0 }] = await tx.$queryRaw<{ total: number }[]>`
      select count(*)::int total
      from flag_result f join trailer t on t.yard_id = f.yard_id and t.id = f.trailer_id where ${where}`;
    return {
      rows: rows.map((row) => ({
        trailer: { id: row.trailer_id, number: row.yard_number, name: row.trailer_name },
        flag: row.flag as Flag,
      })),
      total,
    };
  }
}

interface Row {
  readonly trailer_id: string;
  readonly yard_number: string;
  readonly trailer_name: string | null;
  readonly flag: unknown;
}
