import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { valueOrRefuse } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import { ShowTrailerForm } from '../../use-cases/show/show-trailer-form.js';
import { ReviseBuildSheet } from '../../use-cases/trailers/revise-build-sheet.js';
import { fillBuildForm, readBuildForm } from '../form/build-form.js';
import { finishForm } from '../form/finish-form.js';
import { FormReader } from '../form/read-form.js';
import { sendPage } from '../render.js';
import { BuildPage } from './build.view.js';

@Controller('trailers/:trailerId/build')
export class BuildController {
  constructor(
    private readonly showForm: ShowTrailerForm,
    private readonly reviseBuildSheet: ReviseBuildSheet,
  ) {}

  @Get()
  async form(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const values = screen.build === null ? {} : { ...fillBuildForm(screen.build), what: 'mend' };
    sendPage(reply, <BuildPage caller={caller} screen={screen} typed={{ values, problems: [] }} />);
  }

  @Post()
  async save(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const form = new FormReader(body);
    const mends = screen.build !== null && form.text('what') === 'mend';
    const outcome = await this.reviseBuildSheet.run(caller, {
      trailerId,
      build: readBuildForm(form),
      effectiveFrom: form.text('effectiveFrom'),
      correctsId: mends ? screen.build.id : null,
    });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}?said=build-changed`,
      (problems) => <BuildPage caller={caller} screen={screen} typed={form.typed(problems)} />,
    );
  }
}
