import { randomUUID } from 'node:crypto';
import { Body, Controller, Get, Param, Post, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { valueOrRefuse } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import { HandOut, type HandOutInput } from '../../use-cases/handovers/hand-out.js';
import { TakeBack } from '../../use-cases/handovers/take-back.js';
import { WithdrawHandover } from '../../use-cases/handovers/withdraw-handover.js';
import { ShowHandover } from '../../use-cases/show/show-handover.js';
import { ShowHandoverForm } from '../../use-cases/show/show-handover-form.js';
import { ShowHandovers } from '../../use-cases/show/show-handovers.js';
import { finishForm } from '../form/finish-form.js';
import { lookedOverProblem, readHitchForm, readLookedOver, readSignatureForm } from '../form/handover-form.js';
import { queryText } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { readMultipart } from '../form/read-multipart.js';
import { seeOther, sendPage } from '../render.js';
import { saidWords } from '../words/said.js';
import { CustomerSheetPage } from './customer-sheet.view.js';
import { HandOutPage } from './hand-out.view.js';
import { HandoverPage } from './handover.view.js';
import { HandoversPage } from './handovers.view.js';
import { soundLines } from './look-over.js';
import { NotOutPage } from './not-out.view.js';
import { TakeBackPage } from './take-back.view.js';

/** A field for photos on each line of the longest sheet, and several photos in some. */
const MOST_FILES = 90;

@Controller('trailers/:trailerId')
export class HandoversController {
  constructor(
    private readonly showHandovers: ShowHandovers,
    private readonly showForm: ShowHandoverForm,
    private readonly showHandover: ShowHandover,
    private readonly handOut: HandOut,
    private readonly takeBack: TakeBack,
    private readonly withdrawHandover: WithdrawHandover,
  ) {}

  @Get('handovers')
  async list(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Query() query: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showHandovers.run(caller, { trailerId }));
    sendPage(reply, <HandoversPage caller={caller} screen={screen} said={saidWords(queryText(query, 'said'))} />);
  }

  @Get('hand-out')
  async outForm(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Query() query: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const jobId = queryText(query, 'job');
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId, jobId }));
    const started = { on: caller.today, sendId: randomUUID(), jobId: screen.job?.id ?? '' };
    const typed = { values: { ...soundLines(screen.things), ...started }, problems: [] };
    sendPage(reply, <HandOutPage caller={caller} screen={screen} typed={typed} />);
  }

  @Post('hand-out')
  async out(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const sent = await readMultipart(request, MOST_FILES);
    const form = new FormReader(sent.body);
    const jobId = form.text('jobId');
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId, jobId }));
    const looked = readLookedOver(form, screen.things, sent);
    const outcome = await this.handOut.run(caller, {
      trailerId,
      jobId,
      on: form.need('on') as HandOutInput['on'],
      customer: form.text('customer'),
      hitch: readHitchForm(form),
      seen: looked.seen,
      photos: looked.photos,
      signature: readSignatureForm(form),
      sendId: form.text('sendId'),
    });
    finishForm(
      reply,
      outcome,
      ({ handoverId }) => `/trailers/${trailerId}/handovers/${handoverId}?said=handed-out`,
      (problems) => {
        const typed = form.typed(problems.map((problem) => lookedOverProblem(looked, problem)));
        return <HandOutPage caller={caller} screen={screen} typed={typed} />;
      },
    );
  }

  @Get('take-back')
  async backForm(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId, jobId: null }));
    if (screen.outNow === null) return sendPage(reply, <NotOutPage caller={caller} screen={screen} />);
    const values = { ...soundLines(screen.things), on: caller.today, sendId: randomUUID() };
    const typed = { values, problems: [] };
    sendPage(reply, <TakeBackPage caller={caller} screen={screen} out={screen.outNow} typed={typed} />);
  }

  @Post('take-back')
  async back(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const sent = await readMultipart(request, MOST_FILES);
    const form = new FormReader(sent.body);
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId, jobId: null }));
    const { outNow } = screen;
    const looked = readLookedOver(form, screen.things, sent);
    const outcome = await this.takeBack.run(caller, {
      trailerId,
      on: form.need('on') as HandOutInput['on'],
      seen: looked.seen,
      photos: looked.photos,
      ballBack: form.flag('ballBack'),
      signature: readSignatureForm(form),
      sendId: form.text('sendId'),
    });
    finishForm(
      reply,
      outcome,
      ({ handoverId, taken }) =>
        `/trailers/${trailerId}/handovers/${handoverId}?said=${taken.hold === null ? 'taken-back' : 'taken-back-held'}`,
      (problems) => {
        if (outNow === null) return <NotOutPage caller={caller} screen={screen} />;
        const typed = form.typed(problems.map((problem) => lookedOverProblem(looked, problem)));
        return <TakeBackPage caller={caller} screen={screen} out={outNow} typed={typed} />;
      },
    );
  }

  @Get('handovers/:handoverId')
  async page(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('handoverId', IdPipe) handoverId: string,
    @Query() query: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showHandover.run(caller, { trailerId, handoverId }));
    sendPage(reply, <HandoverPage caller={caller} screen={screen} said={saidWords(queryText(query, 'said'))} />);
  }

  @Get('handovers/:handoverId/sheet')
  async sheet(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('handoverId', IdPipe) handoverId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showHandover.run(caller, { trailerId, handoverId }));
    sendPage(reply, <CustomerSheetPage caller={caller} screen={screen} />);
  }

  @Post('handovers/:handoverId/withdraw')
  async withdraw(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('handoverId', IdPipe) handoverId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const reason = new FormReader(body).need('reason');
    valueOrRefuse(await this.withdrawHandover.run(caller, { trailerId, handoverId, reason }));
    seeOther(reply, `/trailers/${trailerId}/handovers?said=handover-withdrawn`);
  }
}
