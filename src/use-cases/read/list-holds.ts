import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { HoldListView, type OpenHoldRow } from '../../store/views/hold-list.view.js';
import type { ListPage } from '../../store/views/paging.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';

export type OpenHolds = ListPage<OpenHoldRow> & { readonly page: number; readonly perPage: number };

const HOLDS_A_PAGE = 100;

/** What must not go out, and why: those that break a job soonest first. */
@Injectable()
export class ListHolds {
  constructor(
    private readonly database: Database,
    private readonly holds: HoldListView,
  ) {}

  async run(caller: Caller, { page }: { readonly page: number }): Promise<Outcome<OpenHolds>> {
    const paging = { page, perPage: HOLDS_A_PAGE };
    return this.database.inYard(caller.yardId, async (tx) =>
      done({ ...(await this.holds.open(tx, caller.today, paging)), ...paging }),
    );
  }
}
