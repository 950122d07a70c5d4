import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { type HistoryEntry, HistoryView } from '../../store/views/history.view.js';
import type { ListPage } from '../../store/views/paging.js';
import { type Caller, may } from '../caller.js';
import { done, notAllowed, notFound, type Outcome } from '../outcome.js';

export type History = ListPage<HistoryEntry> & { readonly page: number; readonly perPage: number };

const ENTRIES_A_PAGE = 100;

/**
 * Who did what, when, through which door, latest first. Anybody of the yard reads a trailer's; the whole yard's tells
 * of people, invitations and keys too, so it is for owners.
 */
@Injectable()
export class ListHistory {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly history: HistoryView,
  ) {}

  async run(
    caller: Caller,
    { trailerId, page }: { readonly trailerId: string | null; readonly page: number },
  ): Promise<Outcome<History>> {
    if (trailerId === null && !may(caller, 'owner')) return notAllowed('owner');
    const paging = { page, perPage: ENTRIES_A_PAGE };
    return this.database.inYard(caller.yardId, async (tx) => {
      if (trailerId === null) return done({ ...(await this.history.ofYard(tx, paging)), ...paging });
      if ((await this.trailers.find(tx, trailerId)) === null) return notFound('trailer');
      return done({ ...(await this.history.ofTrailer(tx, trailerId, paging)), ...paging });
    });
  }
}
