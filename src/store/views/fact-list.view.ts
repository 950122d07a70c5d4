import { Injectable } from '@nestjs/common';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { CheckRecord } from '../../rules/facts/check.js';
import type { Handover } from '../../rules/facts/handover.js';
import type { Part } from '../../rules/facts/part.js';
import type { MeterReading, Trip } from '../../rules/facts/use.js';
import { BUILDS } from '../build-store.js';
import { CHECK_RECORDS } from '../check-store.js';
import type { YardTx } from '../database.js';
import { type FactTable, factHistory } from '../fact-table.js';
import { Prisma } from '../generated/client.js';
import { HANDOVERS } from '../handover-store.js';
import { PARTS } from '../part-store.js';
import { READINGS } from '../reading-store.js';
import type { HistoryOf } from '../recorded.js';
import { TRIPS } from '../trip-store.js';
import { type ListPage, offsetOf, type PageOfList } from './paging.js';

/** Facts that are mended by later ones, by the name of their list. */
export interface RecordedFacts {
  readonly builds: BuildSheet;
  readonly parts: Part;
  readonly trips: Trip;
  readonly readings: MeterReading;
  readonly checks: CheckRecord;
  readonly handovers: Handover;
}

const TABLES: { readonly [Kind in keyof RecordedFacts]: FactTable<RecordedFacts[Kind]> & { readonly on: string } } = {
  builds: { ...BUILDS, on: 'effective_from' },
  parts: { ...PARTS, on: 'fitted_on' },
  trips: { ...TRIPS, on: 'started_on' },
  readings: { ...READINGS, on: 'taken_on' },
  checks: { ...CHECK_RECORDS, on: 'done_on' },
  handovers: { ...HANDOVERS, on: 'handed_on' },
};

/** What was ever recorded of a trailer, a page at a time: a trailer may have thousands of trips. */
@Injectable()
export class FactListView {
  /** Latest day first. Mended and taken-back ones are there too, and say so. */
  async page<Kind extends keyof RecordedFacts>(
    tx: YardTx,
    kind: Kind,
    trailerId: string,
    paging: PageOfList,
  ): Promise<ListPage<HistoryOf<RecordedFacts[Kind]>>> {
    const facts = TABLES[kind];
    const row = Prisma.raw(facts.table);
    const on = Prisma.raw(`${facts.table}.${facts.on}`);
    const rows = await factHistory(tx, facts, trailerId, {
      order: Prisma.sql`${on} desc nulls last, ${row}.recorded_at desc, ${row}.id desc`,
      limit: paging.perPage,
      offset: offsetOf(paging),
    });
    const [{ total } = { total: 0 }] = await tx.$queryRaw<{ total: number }[]>`
      select count(*)::int total from ${row} where yard_id = ${tx.yardId}::uuid and trailer_id = ${trailerId}::uuid`;
    return { rows, total };
  }
}
