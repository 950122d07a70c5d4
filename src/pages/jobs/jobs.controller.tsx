import { randomUUID } from 'node:crypto';
import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { valueOrRefuse } from '../../http/refusal.js';
import { earliest } from '../../rules/calendar/civil-date.js';
import type { Trip } from '../../rules/facts/use.js';
import { RankTrailers } from '../../use-cases/assessments/rank-trailers.js';
import type { Caller } from '../../use-cases/caller.js';
import { BookJob } from '../../use-cases/jobs/book-job.js';
import { CancelJob } from '../../use-cases/jobs/cancel-job.js';
import { ChangeJob } from '../../use-cases/jobs/change-job.js';
import { FinishJob } from '../../use-cases/jobs/finish-job.js';
import { ShowChoices } from '../../use-cases/show/show-choices.js';
import { ShowJob } from '../../use-cases/show/show-job.js';
import { ShowJobs } from '../../use-cases/show/show-jobs.js';
import { NOTHING_TYPED } from '../components/field.js';
import { inMiles } from '../form/fill-form.js';
import { finishForm } from '../form/finish-form.js';
import { fillJobForm, haulProblem, readJobForm } from '../form/job-form.js';
import { readLoadForm } from '../form/load-form.js';
import { queryChoice, queryPage, queryText } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { readRoads } from '../form/trip-form.js';
import { sendPage } from '../render.js';
import { saidWords } from '../words/said.js';
import { JobPage } from './job.view.js';
import { JobCancelPage, JobDonePage } from './job-end.view.js';
import { JobFormPage } from './job-form.view.js';
import { JobTrailersPage } from './job-trailers.view.js';
import { JobsPage } from './jobs.view.js';

@Controller('jobs')
export class JobsController {
  constructor(
    private readonly showJobs: ShowJobs,
    private readonly showJob: ShowJob,
    private readonly showChoices: ShowChoices,
    private readonly bookJob: BookJob,
    private readonly changeJob: ChangeJob,
    private readonly cancelJob: CancelJob,
    private readonly finishJob: FinishJob,
    private readonly rankTrailers: RankTrailers,
  ) {}

  @Get()
  async list(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const which = queryChoice(query, 'list', ['over'] as const) ?? 'coming';
    const screen = valueOrRefuse(await this.showJobs.run(caller, { which, page: queryPage(query) }));
    sendPage(reply, <JobsPage caller={caller} screen={screen} said={saidWords(queryText(query, 'said'))} />);
  }

  @Get('new')
  async form(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const choices = valueOrRefuse(await this.showChoices.run(caller, { trailerNumber: null }));
    const values = { trailerNumber: queryText(query, 'trailer') ?? '', startsOn: caller.today, sendId: randomUUID() };
    const typed = { values, problems: [] };
    sendPage(reply, <JobFormPage caller={caller} choices={choices} typed={typed} jobId={null} />);
  }

  @Post('new')
  async book(@FromCaller() caller: Caller, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    const choices = valueOrRefuse(await this.showChoices.run(caller, { trailerNumber: form.text('trailerNumber') }));
    const load = readLoadForm(form, choices.machines);
    const outcome = await this.bookJob.run(caller, {
      ...readJobForm(form, choices, load),
      sendId: form.text('sendId'),
    });
    finishForm(
      reply,
      outcome,
      ({ jobId }) => `/jobs/${jobId}?said=job-booked`,
      (problems) => {
        const typed = form.typed(problems.map((problem) => haulProblem(form, load, problem)));
        return <JobFormPage caller={caller} choices={choices} typed={typed} jobId={null} />;
      },
    );
  }

  @Get(':jobId')
  async page(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Query() query: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showJob.run(caller, { jobId }));
    sendPage(reply, <JobPage caller={caller} screen={screen} said={saidWords(queryText(query, 'said'))} />);
  }

  @Get(':jobId/trailers')
  async trailers(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showJob.run(caller, { jobId }));
    const ranking = valueOrRefuse(await this.rankTrailers.run(caller, { jobId }));
    sendPage(reply, <JobTrailersPage caller={caller} screen={screen} ranking={ranking} />);
  }

  @Get(':jobId/change')
  async changeForm(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Query() query: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showJob.run(caller, { jobId }));
    const choices = valueOrRefuse(await this.showChoices.run(caller, { trailerNumber: null }));
    const filled = fillJobForm(screen);
    const trailerNumber = queryText(query, 'trailer') ?? filled.trailerNumber ?? '';
    const typed = { values: { ...filled, trailerNumber }, problems: [] };
    sendPage(reply, <JobFormPage caller={caller} choices={choices} typed={typed} jobId={jobId} />);
  }

  @Post(':jobId/change')
  async change(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = new FormReader(body);
    const choices = valueOrRefuse(await this.showChoices.run(caller, { trailerNumber: form.text('trailerNumber') }));
    const load = readLoadForm(form, choices.machines);
    const outcome = await this.changeJob.run(caller, { ...readJobForm(form, choices, load), jobId });
    finishForm(
      reply,
      outcome,
      () => `/jobs/${jobId}?said=job-changed`,
      (problems) => {
        const typed = form.typed(problems.map((problem) => haulProblem(form, load, problem)));
        return <JobFormPage caller={caller} choices={choices} typed={typed} jobId={jobId} />;
      },
    );
  }

  @Get(':jobId/cancel')
  async cancelForm(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showJob.run(caller, { jobId }));
    sendPage(reply, <JobCancelPage caller={caller} screen={screen} typed={NOTHING_TYPED} />);
  }

  @Post(':jobId/cancel')
  async cancel(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showJob.run(caller, { jobId }));
    const form = new FormReader(body);
    finishForm(
      reply,
      await this.cancelJob.run(caller, { jobId, reason: form.text('reason') }),
      () => `/jobs/${jobId}?said=job-cancelled`,
      (problems) => <JobCancelPage caller={caller} screen={screen} typed={form.typed(problems)} />,
    );
  }

  @Get(':jobId/done')
  async doneForm(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showJob.run(caller, { jobId }));
    const { job } = screen;
    const values = {
      startedOn: job.startsOn,
      endedOn: earliest([job.endsOn, caller.today]) ?? caller.today,
      distance: inMiles(job.distanceKm),
    };
    sendPage(reply, <JobDonePage caller={caller} screen={screen} typed={{ values, problems: [] }} />);
  }

  @Post(':jobId/done')
  async finish(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showJob.run(caller, { jobId }));
    const form = new FormReader(body);
    const outcome = await this.finishJob.run(caller, {
      jobId,
      startedOn: form.need('startedOn') as Trip['startedOn'],
      endedOn: form.need('endedOn') as Trip['endedOn'],
      distanceKm: form.miles('distance'),
      roads: readRoads(form),
      note: form.text('note'),
    });
    finishForm(
      reply,
      outcome,
      () => `/jobs/${jobId}?said=job-done`,
      (problems) => <JobDonePage caller={caller} screen={screen} typed={form.typed(problems)} />,
    );
  }
}
