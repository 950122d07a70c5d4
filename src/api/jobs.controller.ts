import { Get, Param, Patch, Post } from '@nestjs/common';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import { CheckFit } from '../use-cases/assessments/check-fit.js';
import { RankTrailers } from '../use-cases/assessments/rank-trailers.js';
import type { Caller } from '../use-cases/caller.js';
import { BookJob } from '../use-cases/jobs/book-job.js';
import { CancelJob } from '../use-cases/jobs/cancel-job.js';
import { ChangeJob } from '../use-cases/jobs/change-job.js';
import { FinishJob } from '../use-cases/jobs/finish-job.js';
import { ShowJob } from '../use-cases/show/show-job.js';
import { ShowJobs } from '../use-cases/show/show-jobs.js';
import { JsonBody, type JsonObject, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { ByQuery } from './query.js';
import { JOB_BOOKED, JOB_CANCELLED, JOB_FINISHED, JOB_READ, JOBS } from './schema/answer-schema.js';
import { EXPLAINED_FIT } from './schema/fit-schema.js';
import { listQuery, oneOf } from './schema/query-schema.js';
import { RANKING } from './schema/ranking-schema.js';
import {
  CHANGE_JOB_BODY,
  CHECK_FIT_BODY,
  FINISH_JOB_BODY,
  JOB_BODY,
  MAYBE_REASON_BODY,
  RANKING_BODY,
} from './schema/use-schema.js';

const JOB_QUERY = listQuery({ which: oneOf(['coming', 'over'], 'Jobs to come, or those that are over.') });

@ApiController('Jobs')
export class JobsApi {
  constructor(
    private readonly showJobs: ShowJobs,
    private readonly showJob: ShowJob,
    private readonly bookJob: BookJob,
    private readonly changeJob: ChangeJob,
    private readonly cancelJob: CancelJob,
    private readonly finishJob: FinishJob,
    private readonly checkFit: CheckFit,
    private readonly rankTrailers: RankTrailers,
  ) {}

  @Get('jobs')
  @Answers(200, JOBS, 'Jobs, each to come with the answer for its trailer')
  async list(@FromCaller() caller: Caller, @ByQuery(JOB_QUERY) query: z.infer<typeof JOB_QUERY>) {
    const screen = await this.showJobs.run(caller, { which: query.which ?? 'coming', page: query.page });
    const { jobs, page, perPage } = valueOrRefuse(screen);
    return { ...jobs, page, perPage };
  }

  @Post('jobs')
  @Answers(201, JOB_BOOKED, 'Book a haul to come; one its trailer may not take is booked too, and the answer says why')
  async book(@FromCaller() caller: Caller, @JsonBody(JOB_BODY) body: JsonObject) {
    return valueOrRefuse(await this.bookJob.run(caller, withAddress(body)));
  }

  @Get('jobs/:jobId')
  @Answers(200, JOB_READ, 'One job with the answer for its trailer')
  async one(@FromCaller() caller: Caller, @Param('jobId', IdPipe) jobId: string) {
    const { job, fit } = valueOrRefuse(await this.showJob.run(caller, { jobId }));
    return { job, fit };
  }

  @Patch('jobs/:jobId')
  @Answers(200, JOB_BOOKED, 'Change a booked job')
  async change(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @JsonBody(CHANGE_JOB_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.changeJob.run(caller, withAddress(body, { jobId })));
  }

  @Post('jobs/:jobId/cancel')
  @Answers(200, JOB_CANCELLED, 'Call off a booked job')
  async cancel(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @JsonBody(MAYBE_REASON_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.cancelJob.run(caller, withAddress(body, { jobId })));
  }

  @Post('jobs/:jobId/finish')
  @Answers(201, JOB_FINISHED, 'Make a trip of a booked job; what is left out was as booked')
  async finish(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @JsonBody(FINISH_JOB_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.finishJob.run(caller, withAddress(body, { jobId })));
  }

  @Post('fit')
  @Answers(200, EXPLAINED_FIT, 'Whether a trailer may take a load on some days; nothing is kept')
  async fit(@FromCaller() caller: Caller, @JsonBody(CHECK_FIT_BODY) body: JsonObject) {
    return valueOrRefuse(await this.checkFit.run(caller, withAddress(body, ADDED_BY_FIT)));
  }

  @Post('fit/ranking')
  @Answers(200, RANKING, 'Which trailers of the yard could take a load on some days, or a booked job; nothing is kept')
  async ranking(@FromCaller() caller: Caller, @JsonBody(RANKING_BODY) body: JsonObject) {
    return valueOrRefuse(await this.rankTrailers.run(caller, withAddress(body, ADDED_BY_RANKING)));
  }
}

/** The use case names the haul itself. */
const ADDED_BY_FIT = { name: undefined, customer: undefined, note: undefined };
const ADDED_BY_RANKING = { ...ADDED_BY_FIT, trailerId: undefined };
