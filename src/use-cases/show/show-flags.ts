import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { ChoicesView } from '../../store/views/choices.view.js';
import { type FlagFilter, FlagListView, type FlagRow } from '../../store/views/flag-list.view.js';
import type { ListPage } from '../../store/views/paging.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';

export interface FlagsScreen {
  readonly filter: FlagFilter;
  readonly page: number;
  readonly perPage: number;
  readonly flags: ListPage<FlagRow>;
  readonly machineNames: ReadonlyMap<string, string>;
  readonly checkKindNames: ReadonlyMap<string, string>;
}

const FLAGS_A_PAGE = 30;

@Injectable()
export class ShowFlags {
  constructor(
    private readonly database: Database,
    private readonly list: FlagListView,
    private readonly choices: ChoicesView,
  ) {}

  async run(
    caller: Caller,
    input: { readonly filter: FlagFilter; readonly page: number },
  ): Promise<Outcome<FlagsScreen>> {
    return this.database.inYard(caller.yardId, async (tx) =>
      done({
        ...input,
        perPage: FLAGS_A_PAGE,
        flags: await this.list.page(tx, input.filter, { page: input.page, perPage: FLAGS_A_PAGE }),
        machineNames: await this.choices.machineNames(tx),
        checkKindNames: await this.choices.checkKindNames(tx),
      }),
    );
  }
}
