import { Injectable } from '@nestjs/common';
import { type ExplainedFit, explainedFit } from '../../rules/explain/explained-fit.js';
import type { RankedTrailer } from '../../rules/ranking/ranked-trailer.js';
import { Database } from '../../store/database.js';
import { JobStore, type KeptJob } from '../../store/job-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { ChoicesView } from '../../store/views/choices.view.js';
import { JobListView, type JobRow } from '../../store/views/job-list.view.js';
import { RankYard } from '../assessments/rank-yard.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

export interface JobScreen {
  readonly row: JobRow;
  readonly job: KeptJob;
  /** Null while no trailer is picked, or once the job is over. */
  readonly fit: ExplainedFit | null;
  /** The first trailers that could take it, where the one booked may not. */
  readonly substitutes: readonly RankedTrailer[];
  readonly machineNames: ReadonlyMap<string, string>;
  readonly checkKindNames: ReadonlyMap<string, string>;
}

/** One job with the whole answer for its trailer. */
@Injectable()
export class ShowJob {
  constructor(
    private readonly database: Database,
    private readonly jobs: JobStore,
    private readonly jobList: JobListView,
    private readonly trailers: TrailerStore,
    private readonly choices: ChoicesView,
    private readonly rankYard: RankYard,
  ) {}

  async run(caller: Caller, input: { readonly jobId: string }): Promise<Outcome<JobScreen>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const job = await this.jobs.find(tx, input.jobId);
      const row = await this.jobList.find(tx, input.jobId);
      if (job === null || row === null) return notFound('job');
      const open = job.state === 'booked' && job.endsOn >= caller.today;
      const facts = open && job.trailerId !== null ? await this.trailers.findFacts(tx, job.trailerId) : null;
      const fit = facts === null ? null : explainedFit(facts, job, caller.today);
      const haul = { ...job, jobId: job.id, plannedTrailerId: job.trailerId };
      return done({
        row,
        job,
        fit,
        substitutes: fit?.verdict === 'no-go' ? await this.rankYard.substitutes(tx, haul, caller.today) : [],
        machineNames: await this.choices.machineNames(tx),
        checkKindNames: await this.choices.checkKindNames(tx),
      });
    });
  }
}
