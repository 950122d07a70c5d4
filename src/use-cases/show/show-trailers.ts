import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import type { ListPage } from '../../store/views/paging.js';
import type { TrailerFilter } from '../../store/views/trailer-filter.js';
import { type ReadinessCounts, TrailerListView, type TrailerRow } from '../../store/views/trailer-list.view.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';

export interface TrailersScreen {
  readonly filter: TrailerFilter;
  readonly page: number;
  readonly perPage: number;
  readonly trailers: ListPage<TrailerRow>;
  readonly counts: ReadinessCounts;
}

const TRAILERS_A_PAGE = 50;

@Injectable()
export class ShowTrailers {
  constructor(
    private readonly database: Database,
    private readonly list: TrailerListView,
  ) {}

  async run(
    caller: Caller,
    input: { readonly filter: TrailerFilter; readonly page: number },
  ): Promise<Outcome<TrailersScreen>> {
    return this.database.inYard(caller.yardId, async (tx) =>
      done({
        filter: input.filter,
        page: input.page,
        perPage: TRAILERS_A_PAGE,
        trailers: await this.list.page(tx, input.filter, { page: input.page, perPage: TRAILERS_A_PAGE }, caller.today),
        counts: await this.list.counts(tx, input.filter),
      }),
    );
  }
}
