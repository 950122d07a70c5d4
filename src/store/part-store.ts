import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../rules/calendar/civil-date.js';
import type { Part } from '../rules/facts/part.js';
import { toColumn } from './civil-day.js';
import type { YardTx } from './database.js';
import { type FactTable, factHistory, findFact, withdrawFact } from './fact-table.js';
import { Prisma } from './generated/client.js';
import { newId } from './new-id.js';
import { type HistoryOf, type New, type Recorded, recordedColumns } from './recorded.js';

const PART = Prisma.sql`json_build_object(
  'id', part.id,
  'kind', part.kind,
  'position', part.position,
  'fittedOn', part.fitted_on,
  'removedOn', part.removed_on,
  'removedFor', part.removed_for,
  'tire', case when part.kind = 'tire' then json_build_object(
    'size', part.tire_size,
    'kind', part.tire_kind,
    'loadIndexSingle', part.load_index_single,
    'loadIndexDual', part.load_index_dual,
    'maxLoadSingleKg', part.max_load_single_kg,
    'maxLoadDualKg', part.max_load_dual_kg,
    'loadRange', part.load_range,
    'speedSymbol', part.speed_symbol,
    'maxColdPressureKpa', part.max_cold_pressure_kpa,
    'dateCode', part.date_code) end,
  'bearings', case when num_nonnulls(part.bearing_inner, part.bearing_outer) > 0 then json_build_object(
    'inner', part.bearing_inner,
    'outer', part.bearing_outer) end,
  'costCents', part.cost_cents)`;

export const PARTS: FactTable<Part> = {
  table: 'part',
  shape: PART,
  order: Prisma.sql`part.kind, part.position, part.fitted_on, part.id`,
  needed: ['kind'],
};

/** What only people read of a part. */
interface PartNote {
  readonly name?: string | null | undefined;
}

@Injectable()
export class PartStore {
  /** Returns the id. A tire always has marks, all of them unknown at worst; bearing numbers of which none is known are none. */
  async insert(tx: YardTx, trailerId: string, part: New<Part> & PartNote, recorded: Recorded): Promise<string> {
    const id = part.id ?? newId();
    await tx.part.createMany({
      data: [
        {
          id,
          yardId: tx.yardId,
          trailerId,
          kind: part.kind,
          position: part.position,
          fittedOn: toColumn(part.fittedOn),
          removedOn: toColumn(part.removedOn),
          removedFor: part.removedFor,
          name: part.name ?? null,
          tireSize: part.tire?.size ?? null,
          tireKind: part.tire?.kind ?? null,
          loadIndexSingle: part.tire?.loadIndexSingle ?? null,
          loadIndexDual: part.tire?.loadIndexDual ?? null,
          maxLoadSingleKg: part.tire?.maxLoadSingleKg ?? null,
          maxLoadDualKg: part.tire?.maxLoadDualKg ?? null,
          loadRange: part.tire?.loadRange ?? null,
          speedSymbol: part.tire?.speedSymbol ?? null,
          maxColdPressureKpa: part.tire?.maxColdPressureKpa ?? null,
          dateCode: part.tire?.dateCode ?? null,
          bearingInner: part.bearings?.inner ?? null,
          bearingOuter: part.bearings?.outer ?? null,
          costCents: part.costCents,
          ...recordedColumns(recorded),
        },
      ],
    });
    return id;
  }

  /** Notes the day it came off, and why. False when there is no such part, or it was off already: once is all. */
  async remove(
    tx: YardTx,
    trailerId: string,
    partId: string,
    removed: { readonly on: CivilDate; readonly why: Part['removedFor'] },
  ): Promise<boolean> {
    const { count } = await tx.part.updateMany({
      where: { yardId: tx.yardId, trailerId, id: partId, removedOn: null },
      data: { removedOn: toColumn(removed.on), removedFor: removed.why },
    });
    return count === 1;
  }

  /** The part with this id, if it stands. */
  async find(tx: YardTx, trailerId: string, partId: string): Promise<Part | null> {
    return findFact(tx, PARTS, trailerId, partId);
  }

  /** Says that a part was never fitted. */
  async withdraw(tx: YardTx, trailerId: string, partId: string, recorded: Recorded): Promise<void> {
    await withdrawFact(tx, PARTS, trailerId, partId, recorded);
  }

  async history(tx: YardTx, trailerId: string): Promise<readonly HistoryOf<Part>[]> {
    return factHistory(tx, PARTS, trailerId);
  }
}
