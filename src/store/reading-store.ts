import { Injectable } from '@nestjs/common';
import type { MeterReading } from '../rules/facts/use.js';
import { toColumn } from './civil-day.js';
import type { YardTx } from './database.js';
import { type FactTable, factHistory, findFact, withdrawFact } from './fact-table.js';
import { Prisma } from './generated/client.js';
import { newId } from './new-id.js';
import { type HistoryOf, type New, type Recorded, recordedColumns } from './recorded.js';

const READING = Prisma.sql`json_build_object(
  'id', meter_reading.id,
  'takenOn', meter_reading.taken_on,
  'shownKm', meter_reading.shown_km,
  'kind', meter_reading.kind,
  'meterSpanKm', meter_reading.meter_span_km)`;

export const READINGS: FactTable<MeterReading> = {
  table: 'meter_reading',
  shape: READING,
  order: Prisma.sql`meter_reading.taken_on, meter_reading.id`,
  needed: ['taken_on', 'shown_km'],
};

@Injectable()
export class ReadingStore {
  /** Returns the id. */
  async insert(tx: YardTx, trailerId: string, reading: New<MeterReading>, recorded: Recorded): Promise<string> {
    const id = reading.id ?? newId();
    await tx.meterReading.createMany({
      data: [
        {
          id,
          yardId: tx.yardId,
          trailerId,
          takenOn: toColumn(reading.takenOn),
          shownKm: reading.shownKm,
          kind: reading.kind,
          meterSpanKm: reading.meterSpanKm,
          ...recordedColumns(recorded),
        },
      ],
    });
    return id;
  }

  /** The reading with this id, if it stands. */
  async find(tx: YardTx, trailerId: string, readingId: string): Promise<MeterReading | null> {
    return findFact(tx, READINGS, trailerId, readingId);
  }

  /** Says that a reading was never taken. */
  async withdraw(tx: YardTx, trailerId: string, readingId: string, recorded: Recorded): Promise<void> {
    await withdrawFact(tx, READINGS, trailerId, readingId, recorded);
  }

  async history(tx: YardTx, trailerId: string): Promise<readonly HistoryOf<MeterReading>[]> {
    return factHistory(tx, READINGS, trailerId);
  }
}
