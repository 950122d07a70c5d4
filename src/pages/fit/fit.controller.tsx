import { Body, Controller, Get, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import { CheckFit } from '../../use-cases/assessments/check-fit.js';
import type { Caller } from '../../use-cases/caller.js';
import { ShowChoices } from '../../use-cases/show/show-choices.js';
import { haulProblem, readHaulForm } from '../form/job-form.js';
import { readLoadForm } from '../form/load-form.js';
import { pageProblems } from '../form/page-problems.js';
import { queryText } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { sendPage } from '../render.js';
import { FitPage } from './fit.view.js';

@Controller('fit')
export class FitController {
  constructor(
    private readonly showChoices: ShowChoices,
    private readonly checkFit: CheckFit,
  ) {}

  @Get()
  async form(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const choices = valueOrRefuse(await this.showChoices.run(caller, { trailerNumber: null }));
    const values = { trailerNumber: queryText(query, 'trailer') ?? '', startsOn: caller.today };
    sendPage(reply, <FitPage caller={caller} choices={choices} typed={{ values, problems: [] }} answer={null} />);
  }

  @Post()
  async ask(@FromCaller() caller: Caller, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    const choices = valueOrRefuse(await this.showChoices.run(caller, { trailerNumber: form.text('trailerNumber') }));
    const load = readLoadForm(form, choices.machines);
    const outcome = await this.checkFit.run(caller, readHaulForm(form, choices, load));
    if (outcome.ok) {
      const names = { machines: choices.machineNames, checkKinds: choices.checkKindNames };
      const answer = { fit: outcome.value, names };
      return sendPage(reply, <FitPage caller={caller} choices={choices} typed={form.typed()} answer={answer} />);
    }
    if (outcome.problem.kind !== 'invalid') throw new Refusal(outcome.problem);
    const problems = pageProblems(outcome.problem.fields).map((problem) => haulProblem(form, load, problem));
    sendPage(reply, <FitPage caller={caller} choices={choices} typed={form.typed(problems)} answer={null} />, 422);
  }
}
