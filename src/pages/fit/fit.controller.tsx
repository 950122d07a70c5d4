import { Body, Controller, Get, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import { CheckFit } from '../../use-cases/assessments/check-fit.js';
import { RankTrailers } from '../../use-cases/assessments/rank-trailers.js';
import type { Caller } from '../../use-cases/caller.js';
import { done, type Outcome } from '../../use-cases/outcome.js';
import { type ChoicesScreen, ShowChoices } from '../../use-cases/show/show-choices.js';
import type { Typed } from '../components/field.js';
import { haulProblem, readHaulForm } from '../form/job-form.js';
import { readLoadForm } from '../form/load-form.js';
import { pageProblems } from '../form/page-problems.js';
import { queryText } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { sendPage } from '../render.js';
import { FitPage, type FitPageAnswer } from './fit.view.js';

@Controller('fit')
export class FitController {
  constructor(
    private readonly showChoices: ShowChoices,
    private readonly checkFit: CheckFit,
    private readonly rankTrailers: RankTrailers,
  ) {}

  @Get()
  async form(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const choices = valueOrRefuse(await this.showChoices.run(caller, { trailerNumber: null }));
    const values = { trailerNumber: queryText(query, 'trailer') ?? '', startsOn: caller.today };
    sendPage(reply, page(caller, choices, { values, problems: [] }, null));
  }

  /** Without a trailer named, or when asked to, of the whole yard. */
  @Post()
  async ask(@FromCaller() caller: Caller, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    const choices = valueOrRefuse(await this.showChoices.run(caller, { trailerNumber: form.text('trailerNumber') }));
    const load = readLoadForm(form, choices.machines);
    const { trailerId, ...haul } = readHaulForm(form, choices, load);
    const outcome =
      trailerId === null || form.text('ask') === 'yard'
        ? mapped(await this.rankTrailers.run(caller, { ...haul, trailerId }), (ranking) => ({ ranking }))
        : mapped(await this.checkFit.run(caller, { ...haul, trailerId }), (fit) => ({ fit }));
    if (outcome.ok) return sendPage(reply, page(caller, choices, form.typed(), outcome.value));
    if (outcome.problem.kind !== 'invalid') throw new Refusal(outcome.problem);
    const problems = pageProblems(outcome.problem.fields).map((problem) => haulProblem(form, load, problem));
    sendPage(reply, page(caller, choices, form.typed(problems), null), 422);
  }
}

function page(caller: Caller, choices: ChoicesScreen, typed: Typed, answer: FitPageAnswer) {
  const names = { machines: choices.machineNames, checkKinds: choices.checkKindNames };
  return <FitPage caller={caller} choices={choices} typed={typed} names={names} answer={answer} />;
}

function mapped<From, To>(outcome: Outcome<From>, change: (value: From) => To): Outcome<To> {
  return outcome.ok ? done(change(outcome.value)) : outcome;
}
