import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { ChoicesView } from '../../store/views/choices.view.js';
import { JobListView } from '../../store/views/job-list.view.js';
import type { ListPage } from '../../store/views/paging.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';
import { type JobWithFit, jobsWithFits } from './jobs-with-fits.js';

export interface JobsScreen {
  readonly which: 'coming' | 'over';
  readonly page: number;
  readonly perPage: number;
  readonly jobs: ListPage<JobWithFit>;
  readonly machineNames: ReadonlyMap<string, string>;
  readonly checkKindNames: ReadonlyMap<string, string>;
}

const JOBS_A_PAGE = 24;

@Injectable()
export class ShowJobs {
  constructor(
    private readonly database: Database,
    private readonly jobs: JobListView,
    private readonly trailers: TrailerStore,
    private readonly choices: ChoicesView,
  ) {}

  async run(
    caller: Caller,
    input: { readonly which: 'coming' | 'over'; readonly page: number },
  ): Promise<Outcome<JobsScreen>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const { rows, total } = await this.jobs.list(tx, input.which, caller.today, {
        page: input.page,
        perPage: JOBS_A_PAGE,
      });
      return done({
        ...input,
        perPage: JOBS_A_PAGE,
        jobs: { rows: await jobsWithFits(tx, this.trailers, rows, caller.today), total },
        machineNames: await this.choices.machineNames(tx),
        checkKindNames: await this.choices.checkKindNames(tx),
      });
    });
  }
}
