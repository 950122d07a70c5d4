import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import type { PartKind } from '../../rules/facts/part.js';
import type { Caller } from '../../use-cases/caller.js';
import { ShowTrailerForm, type TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { FitPart, type FitPartInput } from '../../use-cases/trailers/fit-part.js';
import { RemovePart } from '../../use-cases/trailers/remove-part.js';
import { finishForm } from '../form/finish-form.js';
import { typedDay } from '../form/identity-form.js';
import { FormReader } from '../form/read-form.js';
import { readMarks } from '../form/tire-form.js';
import { sendPage } from '../render.js';
import { NewPartPage, RemovePartPage } from './part.view.js';

@Controller('trailers/:trailerId/parts')
export class PartsController {
  constructor(
    private readonly showForm: ShowTrailerForm,
    private readonly fitPart: FitPart,
    private readonly removePart: RemovePart,
  ) {}

  @Get('new')
  async form(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const typed = { values: { fittedOn: caller.today }, problems: [] };
    sendPage(reply, <NewPartPage caller={caller} screen={screen} typed={typed} />);
  }

  @Post('new')
  async fit(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const form = new FormReader(body);
    const outcome = await this.fitPart.run(caller, { ...readPartForm(form), trailerId });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}?said=part-fitted`,
      (problems) => <NewPartPage caller={caller} screen={screen} typed={form.typed(problems)} />,
    );
  }

  @Get(':partId/remove')
  async removeForm(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('partId', IdPipe) partId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const typed = { values: { removedOn: caller.today }, problems: [] };
    sendPage(reply, <RemovePartPage caller={caller} screen={screen} typed={typed} part={partOf(screen, partId)} />);
  }

  @Post(':partId/remove')
  async remove(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('partId', IdPipe) partId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const part = partOf(screen, partId);
    const form = new FormReader(body);
    const outcome = await this.removePart.run(caller, {
      trailerId,
      partId,
      removedOn: form.need('removedOn'),
      removedFor: form.text('removedFor'),
    });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}?said=part-removed`,
      (problems) => <RemovePartPage caller={caller} screen={screen} typed={form.typed(problems)} part={part} />,
    );
  }
}

function partOf(screen: TrailerFormScreen, partId: string) {
  const part = screen.facts.parts.find((one) => one.id === partId);
  if (part === undefined) throw new Refusal({ kind: 'not-found', what: 'part' });
  return part;
}

function readPartForm(form: FormReader): Omit<FitPartInput, 'trailerId'> {
  const kind = form.need('kind') as PartKind;
  const marks = readMarks(form, 'tire');
  const marked = Object.values(marks).some((value) => value !== null);
  const bearings = { inner: form.text('bearings.inner'), outer: form.text('bearings.outer') };
  return {
    kind,
    position: form.text('position'),
    fittedOn: typedDay(form.text('fittedOn')),
    name: form.text('name'),
    costCents: form.dollars('cost'),
    tire: kind === 'tire' || marked ? marks : null,
    bearings: bearings.inner === null && bearings.outer === null ? null : bearings,
    replacedFor: form.text('replacedFor'),
  };
}
