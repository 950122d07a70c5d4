import { Injectable } from '@nestjs/common';
import type { Haul } from '../../rules/ranking/ranked-trailer.js';
import { Database } from '../../store/database.js';
import { JobStore } from '../../store/job-store.js';
import { type Caller, may } from '../caller.js';
import { Given } from '../input/given.js';
import { type JobInput, readJob } from '../input/job-input.js';
import { merged } from '../input/merged.js';
import { FindJobNames } from '../jobs/find-job-names.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { RankYard, type YardRanking } from './rank-yard.js';

/** A haul somebody thinks of; `trailerId` only says for which trailer the places of its load hold. Or a job. */
export type RankTrailersInput =
  | (Omit<Partial<JobInput>, 'name' | 'customer' | 'note'> & Pick<JobInput, 'startsOn' | 'endsOn'>)
  | { readonly jobId: string };

/** Answers which trailers of the yard could take a haul, best first. Nothing of it is kept. */
@Injectable()
export class RankTrailers {
  constructor(
    private readonly database: Database,
    private readonly jobs: JobStore,
    private readonly names: FindJobNames,
    private readonly rankYard: RankYard,
  ) {}

  async run(caller: Caller, input: RankTrailersInput): Promise<Outcome<YardRanking>> {
    if (!may(caller, 'viewer')) return notAllowed('viewer');
    if ('jobId' in input && typeof input.jobId === 'string') return this.ofJob(caller, input);
    const given = Given.from(merged(input, { name: 'a haul asked about' }));
    given.id('jobId', 'the job');
    const plan = readJob(given, caller.today);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const job = await this.names.complete(tx, given, plan);
      if (given.problems.length > 0) return invalid(given.problems);
      const haul: Haul = { ...job, jobId: null, plannedTrailerId: job.trailerId };
      return done(await this.rankYard.rank(tx, haul, caller.today));
    });
  }

  private ofJob(caller: Caller, input: object): Promise<Outcome<YardRanking>> {
    const given = Given.from(input);
    const jobId = given.needId('jobId', 'the job');
    if (given.problems.length > 0) return Promise.resolve(invalid(given.problems));
    return this.database.inYard(caller.yardId, async (tx) => {
      const job = await this.jobs.find(tx, jobId);
      if (job === null) return notFound('job');
      if (job.state !== 'booked') return conflict(`This job is ${job.state}; only a booked one wants a trailer.`);
      const haul: Haul = { ...job, jobId, plannedTrailerId: job.trailerId };
      return done(await this.rankYard.rank(tx, haul, caller.today));
    });
  }
}
