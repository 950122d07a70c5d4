import type { YardTx } from './database.js';
import { Prisma } from './generated/client.js';

/**
 * Facts are read as JSON that Postgres builds in the shape of the rules' types, so that one query brings a trailer with
 * everything it has. Numbers survive exactly: Postgres writes the shortest text that reads back as the same double.
 */
export async function jsonRows<T>(tx: YardTx, shape: Prisma.Sql, from: Prisma.Sql): Promise<T[]> {
  const rows = await tx.$queryRaw<{ json: string }[]>`select ${shape}::text as json ${from}`;
  return rows.map((row) => JSON.parse(row.json) as T);
}

/** The list that `shape` makes of every row of `from`, as one JSON value; an empty list when there is none. */
export function jsonList(shape: Prisma.Sql, from: Prisma.Sql, order: Prisma.Sql): Prisma.Sql {
  return Prisma.sql`(select coalesce(json_agg(${shape} order by ${order}), '[]') ${from})`;
}

/** A list that holds nothing is kept as an empty array, and read as "nobody said". */
export function listOrNull(column: Prisma.Sql): Prisma.Sql {
  return Prisma.sql`case when cardinality(${column}) > 0 then to_json(${column}) end`;
}
