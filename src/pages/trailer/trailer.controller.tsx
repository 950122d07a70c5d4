import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { valueOrRefuse } from '../../http/refusal.js';
import { FindBetterTrailer } from '../../use-cases/assessments/find-better-trailer.js';
import type { Caller } from '../../use-cases/caller.js';
import { ShowChoices } from '../../use-cases/show/show-choices.js';
import { ShowTrailer } from '../../use-cases/show/show-trailer.js';
import { ShowTrailerForm } from '../../use-cases/show/show-trailer-form.js';
import { ShowTrailerHistory } from '../../use-cases/show/show-trailer-history.js';
import { UpdateTrailer } from '../../use-cases/trailers/update-trailer.js';
import { NOTHING_TYPED } from '../components/field.js';
import { finishForm } from '../form/finish-form.js';
import { fillIdentityForm, readIdentityForm } from '../form/identity-form.js';
import { queryPage, queryText } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { sendPage } from '../render.js';
import { saidWords } from '../words/said.js';
import { BetterPage } from './better.view.js';
import { GonePage } from './gone.view.js';
import { HistoryPage } from './history.view.js';
import { PapersPage } from './papers.view.js';
import { TrailerPage } from './trailer.view.js';

@Controller('trailers/:trailerId')
export class TrailerController {
  constructor(
    private readonly showTrailer: ShowTrailer,
    private readonly showForm: ShowTrailerForm,
    private readonly showHistory: ShowTrailerHistory,
    private readonly updateTrailer: UpdateTrailer,
    private readonly findBetter: FindBetterTrailer,
    private readonly showChoices: ShowChoices,
  ) {}

  @Get()
  async page(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Query() query: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showTrailer.run(caller, { trailerId }));
    sendPage(reply, <TrailerPage caller={caller} screen={screen} said={saidWords(queryText(query, 'said'))} />);
  }

  @Get('history')
  async history(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Query() query: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showHistory.run(caller, { trailerId, page: queryPage(query) }));
    sendPage(reply, <HistoryPage caller={caller} screen={screen} said={saidWords(queryText(query, 'said'))} />);
  }

  @Get('better')
  async better(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Query() query: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const found = valueOrRefuse(await this.findBetter.run(caller, { trailerId, flag: queryText(query, 'flag') }));
    const choices = valueOrRefuse(await this.showChoices.run(caller, { trailerNumber: null }));
    const names = { machines: choices.machineNames, checkKinds: choices.checkKindNames };
    sendPage(reply, <BetterPage caller={caller} found={found} names={names} />);
  }

  @Get('papers')
  async papers(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { trailer } = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const typed = { values: fillIdentityForm(trailer), problems: [] };
    sendPage(reply, <PapersPage caller={caller} trailer={trailer} typed={typed} />);
  }

  @Post('papers')
  async savePapers(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { trailer } = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const form = new FormReader(body);
    const outcome = await this.updateTrailer.run(caller, { ...readIdentityForm(form), trailerId });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}?said=papers-changed`,
      (problems) => <PapersPage caller={caller} trailer={trailer} typed={form.typed(problems)} />,
    );
  }

  @Get('gone')
  async goneForm(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { trailer } = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    sendPage(reply, <GonePage caller={caller} trailer={trailer} typed={NOTHING_TYPED} />);
  }

  @Post('gone')
  async gone(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { trailer } = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const form = new FormReader(body);
    const status = form.need('status') as 'sold' | 'scrapped';
    const outcome = await this.updateTrailer.run(caller, { trailerId, status });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}?said=gone`,
      (problems) => <GonePage caller={caller} trailer={trailer} typed={form.typed(problems)} />,
    );
  }
}
