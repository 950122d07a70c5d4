import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { type DueFilter, DueListView, type DueRow } from '../../store/views/due-list.view.js';
import type { ListPage } from '../../store/views/paging.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';

export interface DueScreen {
  readonly filter: DueFilter;
  readonly page: number;
  readonly perPage: number;
  readonly due: ListPage<DueRow>;
}

const LINES_A_PAGE = 50;

@Injectable()
export class ShowDue {
  constructor(
    private readonly database: Database,
    private readonly list: DueListView,
  ) {}

  async run(caller: Caller, input: { readonly filter: DueFilter; readonly page: number }): Promise<Outcome<DueScreen>> {
    return this.database.inYard(caller.yardId, async (tx) =>
      done({
        ...input,
        perPage: LINES_A_PAGE,
        due: await this.list.page(tx, input.filter, { page: input.page, perPage: LINES_A_PAGE }),
      }),
    );
  }
}
