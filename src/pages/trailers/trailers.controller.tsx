import { Body, Controller, Get, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import { type Caller, may } from '../../use-cases/caller.js';
import { ShowTrailers } from '../../use-cases/show/show-trailers.js';
import { AddTrailer, type AddTrailerInput } from '../../use-cases/trailers/add-trailer.js';
import { axleCount, readBuildForm } from '../form/build-form.js';
import { finishForm } from '../form/finish-form.js';
import { readIdentityForm } from '../form/identity-form.js';
import { queryPage, queryText } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { readTireForm, tireProblems } from '../form/tire-form.js';
import { readTrailerFilter } from '../form/trailer-filter.js';
import { sendPage } from '../render.js';
import { saidWords } from '../words/said.js';
import { NewTrailerPage } from './new-trailer.view.js';
import { TrailersPage } from './trailers.view.js';

@Controller('trailers')
export class TrailersController {
  constructor(
    private readonly showTrailers: ShowTrailers,
    private readonly addTrailer: AddTrailer,
  ) {}

  @Get()
  async list(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const filter = readTrailerFilter(query);
    const screen = valueOrRefuse(await this.showTrailers.run(caller, { filter, page: queryPage(query) }));
    sendPage(reply, <TrailersPage caller={caller} screen={screen} said={saidWords(queryText(query, 'said'))} />);
  }

  @Get('new')
  form(@FromCaller() caller: Caller, @Res() reply: FastifyReply): void {
    if (!may(caller, 'shop')) throw new Refusal({ kind: 'not-allowed', needs: 'shop' });
    // Most trailers have axles of one kind; unticked, a second axle would stay unknown without a word.
    const typed = { values: { 'build.axlesAlike': 'yes' }, problems: [] };
    sendPage(reply, <NewTrailerPage caller={caller} typed={typed} />);
  }

  @Post('new')
  async add(@FromCaller() caller: Caller, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    const build = readBuildForm(form);
    const duals = Array.from({ length: axleCount(form) }, (_, place) => build.axles?.[place]?.wheelsPerSide === 2);
    const tires = readTireForm(form, duals);
    const input: AddTrailerInput = { ...readIdentityForm(form), build, parts: tires.map(({ part }) => part) };
    const outcome = await this.addTrailer.run(caller, input);
    finishForm(
      reply,
      outcome,
      ({ trailerId }) => `/trailers/${trailerId}?said=trailer-added`,
      (problems) => {
        const typed = form.typed(tireProblems(form, tires, problems));
        return <NewTrailerPage caller={caller} typed={typed} />;
      },
    );
  }
}
