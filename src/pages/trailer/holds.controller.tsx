import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import { LiftHold } from '../../use-cases/holds/lift-hold.js';
import { OpenHold } from '../../use-cases/holds/open-hold.js';
import { ShowTrailerForm } from '../../use-cases/show/show-trailer-form.js';
import { NOTHING_TYPED } from '../components/field.js';
import { finishForm } from '../form/finish-form.js';
import { FormReader } from '../form/read-form.js';
import { sendPage } from '../render.js';
import { LiftHoldPage, NewHoldPage } from './hold.view.js';

@Controller('trailers/:trailerId/holds')
export class HoldsController {
  constructor(
    private readonly showForm: ShowTrailerForm,
    private readonly openHold: OpenHold,
    private readonly liftHold: LiftHold,
  ) {}

  @Get('new')
  async form(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    sendPage(reply, <NewHoldPage caller={caller} screen={screen} typed={NOTHING_TYPED} />);
  }

  @Post('new')
  async open(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const form = new FormReader(body);
    const outcome = await this.openHold.run(caller, { trailerId, reason: form.need('reason') });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}?said=hold-opened`,
      (problems) => <NewHoldPage caller={caller} screen={screen} typed={form.typed(problems)} />,
    );
  }

  @Get(':holdId/lift')
  async liftForm(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('holdId', IdPipe) holdId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    if (!screen.facts.holds.some((hold) => hold.id === holdId)) throw new Refusal({ kind: 'not-found', what: 'hold' });
    sendPage(reply, <LiftHoldPage caller={caller} screen={screen} typed={NOTHING_TYPED} holdId={holdId} />);
  }

  @Post(':holdId/lift')
  async lift(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('holdId', IdPipe) holdId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const form = new FormReader(body);
    const outcome = await this.liftHold.run(caller, {
      trailerId,
      holdId,
      reason: form.text('reason'),
      checkRecordId: form.text('checkRecordId'),
    });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}?said=hold-lifted`,
      (problems) => <LiftHoldPage caller={caller} screen={screen} typed={form.typed(problems)} holdId={holdId} />,
    );
  }
}
