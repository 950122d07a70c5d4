import type { YardTx } from './database.js';
import { Prisma } from './generated/client.js';
import { jsonList, jsonRows } from './json-rows.js';
import { newId } from './new-id.js';
import type { HistoryOf, Recorded } from './recorded.js';

type CorrectableTable = 'build_sheet' | 'part' | 'trip' | 'meter_reading' | 'check_record' | 'handover';

/** A table of facts about a trailer that are mended by later rows, and how its rows read. */
export interface FactTable<Fact extends { readonly id: string }> {
  readonly table: CorrectableTable;
  /** JSON in the shape of the fact. */
  readonly shape: Prisma.Sql;
  readonly order: Prisma.Sql;
  /** Columns that a row cannot do without, beside those every fact has. */
  readonly needed: readonly string[];
  /** Only ties the table to its fact for the compiler. */
  readonly fact?: Fact;
}

/**
 * The one place that says which facts stand: not itself a withdrawal, and named by no later row.
 */
export function standing(table: CorrectableTable): Prisma.Sql {
  const row = Prisma.raw(table);
  return Prisma.sql`not ${row}.withdrawn and not exists (
    select from ${row} later
    where later.yard_id = ${row}.yard_id and later.trailer_id = ${row}.trailer_id and later.corrects_id = ${row}.id)`;
}

/** Where the standing facts of a trailer are; `trailer` names the trailer row of the query around it. */
export function standingRows<Fact extends { readonly id: string }>(facts: FactTable<Fact>): Prisma.Sql {
  const row = Prisma.raw(facts.table);
  return Prisma.sql`from ${row} where ${row}.yard_id = trailer.yard_id and ${row}.trailer_id = trailer.id
    and ${standing(facts.table)}`;
}

/** The same as a JSON list. */
export function standingList<Fact extends { readonly id: string }>(facts: FactTable<Fact>): Prisma.Sql {
  return jsonList(facts.shape, standingRows(facts), facts.order);
}

export async function findFact<Fact extends { readonly id: string }>(
  tx: YardTx,
  facts: FactTable<Fact>,
  trailerId: string,
  id: string,
): Promise<Fact | null> {
  const row = Prisma.raw(facts.table);
  const found = await jsonRows<Fact>(
    tx,
    facts.shape,
    Prisma.sql`from ${row} where ${of(tx, row, trailerId)} and ${row}.id = ${id}::uuid and ${standing(facts.table)}`,
  );
  return found[0] ?? null;
}

/** Every row ever written about a trailer, the newest last; or a part of them. */
export async function factHistory<Fact extends { readonly id: string }>(
  tx: YardTx,
  facts: FactTable<Fact>,
  trailerId: string,
  part: { readonly order: Prisma.Sql; readonly limit: number; readonly offset: number } | null = null,
): Promise<readonly HistoryOf<Fact>[]> {
  const row = Prisma.raw(facts.table);
  const which = part
    ? Prisma.sql`order by ${part.order} limit ${part.limit} offset ${part.offset}`
    : Prisma.sql`order by ${row}.recorded_at, ${row}.id`;
  const entry = Prisma.sql`json_build_object(
    'fact', ${facts.shape},
    'correctsId', ${row}.corrects_id,
    'withdrawn', ${row}.withdrawn,
    'standing', ${standing(facts.table)},
    'recordedAt', ${row}.recorded_at,
    'recordedBy', ${row}.recorded_by,
    'door', ${row}.door)`;
  const rows = await jsonRows<Omit<HistoryOf<Fact>, 'recordedAt'> & { recordedAt: string }>(
    tx,
    entry,
    Prisma.sql`from ${row} where ${of(tx, row, trailerId)} ${which}`,
  );
  return rows.map((one) => ({ ...one, recordedAt: new Date(one.recordedAt) }));
}

/** Writes the row that takes a standing fact back. Throws when there is none with this id. */
export async function withdrawFact<Fact extends { readonly id: string }>(
  tx: YardTx,
  facts: FactTable<Fact>,
  trailerId: string,
  id: string,
  recorded: Recorded,
): Promise<void> {
  const row = Prisma.raw(facts.table);
  const needed = Prisma.raw(facts.needed.map((column) => `, ${column}`).join(''));
  const count = await tx.$executeRaw`
    insert into ${row} (id, yard_id, trailer_id, corrects_id, withdrawn, recorded_at, recorded_by, door${needed})
    select ${newId()}::uuid, yard_id, trailer_id, id, true, coalesce(${recorded.recordedAt ?? null}::timestamptz, now()),
      ${recorded.recordedBy}::uuid, ${recorded.door}${needed}
    from ${row} where ${of(tx, row, trailerId)} and id = ${id}::uuid and ${standing(facts.table)}`;
  if (count !== 1) throw new Error(`no standing ${facts.table} ${id} of trailer ${trailerId} to take back`);
}

function of(tx: YardTx, row: Prisma.Sql, trailerId: string): Prisma.Sql {
  return Prisma.sql`${row}.yard_id = ${tx.yardId}::uuid and ${row}.trailer_id = ${trailerId}::uuid`;
}
