import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import { type Kilometres, km } from '../../rules/units/distance.js';
import type { Caller } from '../../use-cases/caller.js';
import type { ReadingInput } from '../../use-cases/input/reading-input.js';
import { CorrectReading } from '../../use-cases/readings/correct-reading.js';
import { RecordReading } from '../../use-cases/readings/record-reading.js';
import { ShowTrailerForm } from '../../use-cases/show/show-trailer-form.js';
import { inMiles } from '../form/fill-form.js';
import { finishForm } from '../form/finish-form.js';
import { FormReader } from '../form/read-form.js';
import { sendPage } from '../render.js';
import { ReadingPage } from './reading.view.js';

@Controller('trailers/:trailerId/readings')
export class ReadingsController {
  constructor(
    private readonly showForm: ShowTrailerForm,
    private readonly recordReading: RecordReading,
    private readonly correctReading: CorrectReading,
  ) {}

  @Get('new')
  async form(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const typed = { values: { takenOn: caller.today }, problems: [] };
    sendPage(reply, <ReadingPage caller={caller} screen={screen} typed={typed} readingId={null} />);
  }

  @Post('new')
  async record(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const form = new FormReader(body);
    const outcome = await this.recordReading.run(caller, { ...readReading(form), trailerId });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}?said=reading-recorded`,
      (problems) => <ReadingPage caller={caller} screen={screen} typed={form.typed(problems)} readingId={null} />,
    );
  }

  @Get(':readingId')
  async mendForm(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('readingId', IdPipe) readingId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const reading = screen.facts.readings.find((one) => one.id === readingId);
    if (reading === undefined) throw new Refusal({ kind: 'not-found', what: 'reading that stands' });
    const values = {
      takenOn: reading.takenOn,
      shown: inMiles(reading.shownKm),
      kind: reading.kind === 'read' ? '' : reading.kind,
      meterSpan: inMiles(reading.meterSpanKm),
    };
    const typed = { values, problems: [] };
    sendPage(reply, <ReadingPage caller={caller} screen={screen} typed={typed} readingId={readingId} />);
  }

  @Post(':readingId')
  async mend(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('readingId', IdPipe) readingId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const form = new FormReader(body);
    const outcome = await this.correctReading.run(
      caller,
      form.ticked('neverTaken')
        ? { trailerId, readingId, neverTaken: true }
        : { ...readReading(form), trailerId, readingId },
    );
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}/history?said=reading-corrected`,
      (problems) => <ReadingPage caller={caller} screen={screen} typed={form.typed(problems)} readingId={readingId} />,
    );
  }
}

function readReading(form: FormReader): ReadingInput {
  return {
    takenOn: form.need('takenOn') as ReadingInput['takenOn'],
    shownKm: form.miles('shown') ?? (km(Number.NaN) satisfies Kilometres),
    kind: form.text('kind') as ReadingInput['kind'],
    meterSpanKm: form.miles('meterSpan'),
  };
}
