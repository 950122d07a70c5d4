import { Injectable } from '@nestjs/common';
import type { RankedTrailer } from '../../rules/ranking/ranked-trailer.js';
import { Database } from '../../store/database.js';
import { JobStore } from '../../store/job-store.js';
import { MachineStore } from '../../store/machine-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { ChoicesView } from '../../store/views/choices.view.js';
import { JobListView, type JobRow } from '../../store/views/job-list.view.js';
import { type Caller, may } from '../caller.js';
import { conflict, done, notAllowed, notFound, type Outcome } from '../outcome.js';
import { moveAnswers } from './move-answers.js';

export interface MoveScreen {
  readonly job: JobRow;
  readonly trailer: { readonly id: string; readonly number: string; readonly name: string | null };
  readonly answer: RankedTrailer;
  /** Whether somebody should say "all the same" first: it clashes with another job, or may not take the load. */
  readonly asks: boolean;
  readonly machineNames: ReadonlyMap<string, string>;
  readonly checkKindNames: ReadonlyMap<string, string>;
}

/** What one trailer answers to a job that may be moved to it. */
@Injectable()
export class ShowMove {
  constructor(
    private readonly database: Database,
    private readonly jobs: JobStore,
    private readonly jobList: JobListView,
    private readonly trailers: TrailerStore,
    private readonly machines: MachineStore,
    private readonly choices: ChoicesView,
  ) {}

  async run(
    caller: Caller,
    input: { readonly jobId: string; readonly trailerId: string },
  ): Promise<Outcome<MoveScreen>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const job = await this.jobs.find(tx, input.jobId);
      const row = await this.jobList.find(tx, input.jobId);
      if (job === null || row === null) return notFound('job');
      if (!may(caller, 'hand')) return notAllowed('hand');
      if (job.state !== 'booked') return conflict(`This job is ${job.state}; only a booked one can be moved.`);
      const trailer = await this.trailers.find(tx, input.trailerId);
      const answer = (
        await moveAnswers(
          tx,
          { trailers: this.trailers, machines: this.machines },
          job,
          [input.trailerId],
          caller.today,
        )
      ).get(input.trailerId);
      if (trailer === null || answer === undefined) return notFound('trailer');
      return done({
        job: row,
        trailer: { id: trailer.id, number: trailer.yardNumber, name: trailer.name },
        answer,
        asks: answer.clashes.length > 0 || answer.fit.verdict === 'no-go',
        machineNames: await this.choices.machineNames(tx),
        checkKindNames: await this.choices.checkKindNames(tx),
      });
    });
  }
}
