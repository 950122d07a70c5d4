import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { NoticeListView, type NoticeRow } from '../../store/views/notice-list.view.js';
import type { ListPage } from '../../store/views/paging.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';

export interface NoticesScreen {
  readonly state: NoticeRow['state'] | null;
  readonly page: number;
  readonly perPage: number;
  readonly notices: ListPage<NoticeRow>;
  /** Given up or come back, whatever the filter shows. */
  readonly undelivered: number;
}

const NOTICES_A_PAGE = 30;

@Injectable()
export class ShowNotices {
  constructor(
    private readonly database: Database,
    private readonly list: NoticeListView,
  ) {}

  async run(
    caller: Caller,
    input: { readonly state: NoticeRow['state'] | null; readonly page: number },
  ): Promise<Outcome<NoticesScreen>> {
    return this.database.inYard(caller.yardId, async (tx) =>
      done({
        ...input,
        perPage: NOTICES_A_PAGE,
        notices: await this.list.page(tx, input.state, { page: input.page, perPage: NOTICES_A_PAGE }),
        undelivered: await this.list.undelivered(tx),
      }),
    );
  }
}
