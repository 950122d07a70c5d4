import { randomUUID } from 'node:crypto';
import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import { ShowTrailerForm } from '../../use-cases/show/show-trailer-form.js';
import { CorrectTrip } from '../../use-cases/trips/correct-trip.js';
import { RecordTrip } from '../../use-cases/trips/record-trip.js';
import { WithdrawTrip } from '../../use-cases/trips/withdraw-trip.js';
import { NOTHING_TYPED } from '../components/field.js';
import { finishForm } from '../form/finish-form.js';
import { loadProblem, readLoadForm } from '../form/load-form.js';
import { FormReader } from '../form/read-form.js';
import { fillTripForm, readTripForm } from '../form/trip-form.js';
import { sendPage } from '../render.js';
import { TripPage } from './trip.view.js';
import { WithdrawTripPage } from './withdraw-trip.view.js';

@Controller('trailers/:trailerId/trips')
export class TripsController {
  constructor(
    private readonly showForm: ShowTrailerForm,
    private readonly recordTrip: RecordTrip,
    private readonly correctTrip: CorrectTrip,
    private readonly withdrawTrip: WithdrawTrip,
  ) {}

  @Get('new')
  async form(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const typed = { values: { startedOn: caller.today, sendId: randomUUID() }, problems: [] };
    sendPage(reply, <TripPage caller={caller} screen={screen} typed={typed} tripId={null} />);
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
    const load = readLoadForm(form, screen.machines);
    const trip = readTripForm(form, load);
    const outcome = await this.recordTrip.run(caller, {
      ...trip,
      trailerId,
      note: form.text('note'),
      sendId: form.text('sendId'),
    });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}?said=trip-recorded`,
      (problems) => (
        <TripPage
          caller={caller}
          screen={screen}
          typed={form.typed(problems.map((problem) => loadProblem(load, problem)))}
          tripId={null}
        />
      ),
    );
  }

  @Get(':tripId')
  async mendForm(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('tripId', IdPipe) tripId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const trip = screen.facts.trips.find((one) => one.id === tripId);
    if (trip === undefined) throw new Refusal({ kind: 'not-found', what: 'trip that stands' });
    const typed = { values: fillTripForm(trip), problems: [] };
    sendPage(reply, <TripPage caller={caller} screen={screen} typed={typed} tripId={tripId} />);
  }

  @Post(':tripId')
  async mend(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('tripId', IdPipe) tripId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const form = new FormReader(body);
    const load = readLoadForm(form, screen.machines);
    const trip = readTripForm(form, load);
    const outcome = await this.correctTrip.run(caller, { ...trip, trailerId, tripId, note: form.text('note') });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}/history?said=trip-corrected`,
      (problems) => (
        <TripPage
          caller={caller}
          screen={screen}
          typed={form.typed(problems.map((problem) => loadProblem(load, problem)))}
          tripId={tripId}
        />
      ),
    );
  }

  @Get(':tripId/withdraw')
  async withdrawForm(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('tripId', IdPipe) tripId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    if (!screen.facts.trips.some((one) => one.id === tripId)) {
      throw new Refusal({ kind: 'not-found', what: 'trip that stands' });
    }
    sendPage(reply, <WithdrawTripPage caller={caller} screen={screen} typed={NOTHING_TYPED} tripId={tripId} />);
  }

  @Post(':tripId/withdraw')
  async withdraw(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('tripId', IdPipe) tripId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    const form = new FormReader(body);
    const outcome = await this.withdrawTrip.run(caller, { trailerId, tripId, reason: form.need('reason') });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${trailerId}/history?said=trip-withdrawn`,
      (problems) => <WithdrawTripPage caller={caller} screen={screen} typed={form.typed(problems)} tripId={tripId} />,
    );
  }
}
