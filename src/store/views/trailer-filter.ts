import type { Assessment } from '../../rules/assess.js';
import type { TrailerClass } from '../../rules/trailer/ratings.js';
import type { YardTx } from '../database.js';
import { Prisma } from '../generated/client.js';
import { containing } from './paging.js';

/** Which trailers a list is about; null leaves out nothing. */
export interface TrailerFilter {
  /** Part of the yard number, name, registration plate or VIN. */
  readonly text: string | null;
  readonly trailerClass: TrailerClass | null;
  readonly readiness: Assessment['readiness'] | null;
}

export const ANY_TRAILER: TrailerFilter = { text: null, trailerClass: null, readiness: null };

export function narrows({ text, trailerClass, readiness }: TrailerFilter): boolean {
  return text !== null || trailerClass !== null || readiness !== null;
}

/** What a row `t` of `trailer` must be like. Sold and scrapped ones only when asked for by `gone`. */
export function trailerIs(tx: YardTx, filter: TrailerFilter): Prisma.Sql {
  const { readiness } = filter;
  const parts = [looksLike(tx, filter)];
  if (readiness !== 'gone') parts.push(Prisma.sql`t.status = 'in-service'`);
  if (readiness !== null) {
    parts.push(Prisma.sql`t.id in (
      select trailer_id from trailer_result where yard_id = ${tx.yardId}::uuid and readiness = ${readiness})`);
  }
  return Prisma.join(parts, ' and ');
}

/** The same without its readiness, and whether or not it is still in service. */
export function looksLike(tx: YardTx, { text, trailerClass }: Omit<TrailerFilter, 'readiness'>): Prisma.Sql {
  const parts = [Prisma.sql`t.yard_id = ${tx.yardId}::uuid`];
  if (text !== null) {
    const like = containing(text);
    parts.push(Prisma.sql`(t.yard_number ilike ${like} or t.name ilike ${like} or t.registration_plate ilike ${like}
      or t.vin ilike ${like})`);
  }
  if (trailerClass !== null) {
    parts.push(Prisma.sql`t.id in (
      select trailer_id from trailer_result where yard_id = ${tx.yardId}::uuid and trailer_class = ${trailerClass})`);
  }
  return Prisma.join(parts, ' and ');
}

/** The same as `trailerIs` for a column that names a trailer, in any table; true for every row when nothing narrows it. */
export function isOfTrailer(tx: YardTx, column: Prisma.Sql, filter: TrailerFilter): Prisma.Sql {
  return narrows(filter)
    ? Prisma.sql`${column} in (select t.id from trailer t where ${trailerIs(tx, filter)})`
    : Prisma.sql`true`;
}

/** The order in which people read numbers: T-2 before T-10. */
export const BY_NUMBER = Prisma.sql`nullif(substring(t.yard_number from '\\d+'), '')::numeric nulls last, t.yard_number`;
