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
  readonly trailerId: string | null;
  readonly detail: unknown;
}

/** Who did what, when, through which door; latest first. */
@Injectable()
export class HistoryView {
  ofTrailer(tx: YardTx, trailerId: string, paging: PageOfList): Promise<ListPage<HistoryEntry>> {
    return this.page(tx, { yardId: tx.yardId, trailerId }, paging);
  }

  ofYard(tx: YardTx, paging: PageOfList): Promise<ListPage<HistoryEntry>> {
    return this.page(tx, { yardId: tx.yardId }, paging);
  }

  private async page(
    tx: YardTx,
    where: { readonly yardId: string; readonly trailerId?: string },
    paging: PageOfList,
  ): Promise<ListPage<HistoryEntry>> {
    const rows = await tx.auditEntry.findMany({
      where,
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: paging.perPage,
      skip: offsetOf(paging),
      omit: { yardId: true, personId: true },
    });
    return { rows, total: await tx.auditEntry.count({ where }) };
  }
}
