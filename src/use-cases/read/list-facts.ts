import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import type { HistoryOf } from '../../store/recorded.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { FactListView, type RecordedFacts } from '../../store/views/fact-list.view.js';
import type { ListPage } from '../../store/views/paging.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

/** `fact` is null in the row that only takes another back. */
type ListedFact<Fact> = Omit<HistoryOf<Fact>, 'fact'> & { readonly fact: Fact | null };

export type ListedFacts<Kind extends keyof RecordedFacts> = ListPage<ListedFact<RecordedFacts[Kind]>> & {
  readonly page: number;
  readonly perPage: number;
};

const FACTS_A_PAGE = 100;

/** Builds, parts, trips, readings or checks of one trailer as they were recorded, latest day first. */
@Injectable()
export class ListFacts {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly facts: FactListView,
  ) {}

  async run<Kind extends keyof RecordedFacts>(
    caller: Caller,
    { kind, trailerId, page }: { readonly kind: Kind; readonly trailerId: string; readonly page: number },
  ): Promise<Outcome<ListedFacts<Kind>>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      if ((await this.trailers.find(tx, trailerId)) === null) return notFound('trailer');
      const paging = { page, perPage: FACTS_A_PAGE };
      const { rows, total } = await this.facts.page(tx, kind, trailerId, paging);
      return done({ rows: rows.map((row) => ({ ...row, fact: row.withdrawn ? null : row.fact })), total, ...paging });
    });
  }
}
