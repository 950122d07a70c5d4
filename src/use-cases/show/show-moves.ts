import { Injectable } from '@nestjs/common';
import type { RankedTrailer } from '../../rules/ranking/ranked-trailer.js';
import { Database } from '../../store/database.js';
import { JobStore } from '../../store/job-store.js';
import { MachineStore } from '../../store/machine-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { ChoicesView } from '../../store/views/choices.view.js';
import { JobListView, type JobRow } from '../../store/views/job-list.view.js';
import type { ListPage } from '../../store/views/paging.js';
import type { TrailerFilter } from '../../store/views/trailer-filter.js';
import { TrailerListView, type TrailerRow } from '../../store/views/trailer-list.view.js';
import { type Caller, may } from '../caller.js';
import { conflict, done, notAllowed, notFound, type Outcome } from '../outcome.js';
import { moveAnswers } from './move-answers.js';

/** A trailer the job could be moved to, and what it answers. */
interface MoveChoice {
  readonly trailer: TrailerRow;
  /** Null for the trailer that has the job already. */
  readonly answer: RankedTrailer | null;
}

export interface MovesScreen {
  readonly job: JobRow;
  readonly filter: TrailerFilter;
  readonly page: number;
  readonly perPage: number;
  readonly choices: ListPage<MoveChoice>;
  readonly machineNames: ReadonlyMap<string, string>;
  readonly checkKindNames: ReadonlyMap<string, string>;
}

/** Each trailer shown has its fit worked out. */
const MOVES_A_PAGE = 8;

/** The trailers of the yard a few at a time, each with its answer to a job that may be moved there. */
@Injectable()
export class ShowMoves {
  constructor(
    private readonly database: Database,
    private readonly jobs: JobStore,
    private readonly jobList: JobListView,
    private readonly trailers: TrailerStore,
    private readonly trailerList: TrailerListView,
    private readonly machines: MachineStore,
    private readonly choices: ChoicesView,
  ) {}

  async run(
    caller: Caller,
    input: { readonly jobId: string; readonly filter: TrailerFilter; readonly page: number },
  ): Promise<Outcome<MovesScreen>> {
    const { today } = caller;
    return this.database.inYard(caller.yardId, async (tx) => {
      const job = await this.jobs.find(tx, input.jobId);
      const row = await this.jobList.find(tx, input.jobId);
      if (job === null || row === null) return notFound('job');
      if (!may(caller, 'hand')) return notAllowed('hand');
      if (job.state !== 'booked') return conflict(`This job is ${job.state}; only a booked one can be moved.`);
      const paging = { page: input.page, perPage: MOVES_A_PAGE };
      const { rows, total } = await this.trailerList.page(tx, input.filter, paging, today);
      const ids = rows.map(({ id }) => id).filter((id) => id !== job.trailerId);
      const answers = await moveAnswers(tx, { trailers: this.trailers, machines: this.machines }, job, ids, today);
      return done({
        job: row,
        filter: input.filter,
        ...paging,
        choices: { rows: rows.map((trailer) => ({ trailer, answer: answers.get(trailer.id) ?? null })), total },
        machineNames: await this.choices.machineNames(tx),
        checkKindNames: await this.choices.checkKindNames(tx),
      });
    });
  }
}
