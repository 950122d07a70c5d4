import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { HoldListView, type HoldRow } from '../../store/views/hold-list.view.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

/** The holds of one trailer, open ones first, then the latest. */
@Injectable()
export class ListTrailerHolds {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly holds: HoldListView,
  ) {}

  async run(
    caller: Caller,
    { trailerId }: { readonly trailerId: string },
  ): Promise<Outcome<{ readonly rows: readonly HoldRow[] }>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      if ((await this.trailers.find(tx, trailerId)) === null) return notFound('trailer');
      return done({ rows: await this.holds.ofTrailer(tx, trailerId) });
    });
  }
}
