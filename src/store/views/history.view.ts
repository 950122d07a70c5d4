import { Injectable } from '@nestjs/common';
import type { YardTx } from '../database.js';
import { type ListPage, offsetOf, type PageOfList } from './paging.js';

export interface HistoryEntry {
  readonly id: string;
  readonly at: Date;
  readonly who: string;
  readonly door: string;
  readonly action: string;
  readonly subject: string;
  readonly subjectId: string | null;
  readonly detail: unknown;
}

/** Who did what to a trailer, when, through which door; latest first. */
@Injectable()
export class HistoryView {
  async ofTrailer(tx: YardTx, trailerId: string, paging: PageOfList): Promise<ListPage<HistoryEntry>> {
    const where = { yardId: tx.yardId, trailerId };
    const rows = await tx.auditEntry.findMany({
      where,
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: paging.perPage,
      skip: offsetOf(paging),
    });
    return { rows, total: await tx.auditEntry.count({ where }) };
  }
}
