import { Get, Param, Post } from '@nestjs/common';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import type { Caller } from '../use-cases/caller.js';
import { ListFacts } from '../use-cases/read/list-facts.js';
import { CorrectTrip } from '../use-cases/trips/correct-trip.js';
import { RecordTrip } from '../use-cases/trips/record-trip.js';
import { WithdrawTrip } from '../use-cases/trips/withdraw-trip.js';
import { JsonBody, type JsonObject, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { ByQuery } from './query.js';
import { TRIP_RECORDED, TRIP_WITHDRAWN, TRIPS } from './schema/answer-schema.js';
import { PAGE_QUERY } from './schema/query-schema.js';
import { REASON_BODY, RECORD_TRIP_BODY, TRIP_BODY } from './schema/use-schema.js';

@ApiController('Trips')
export class TripsApi {
  constructor(
    private readonly listFacts: ListFacts,
    private readonly recordTrip: RecordTrip,
    private readonly correctTrip: CorrectTrip,
    private readonly withdrawTrip: WithdrawTrip,
  ) {}

  @Get('trailers/:trailerId/trips')
  @Answers(200, TRIPS, 'Trips as they were recorded, latest first')
  async list(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @ByQuery(PAGE_QUERY) { page }: z.infer<typeof PAGE_QUERY>,
  ) {
    return valueOrRefuse(await this.listFacts.run(caller, { kind: 'trips', trailerId, page }));
  }

  @Post('trailers/:trailerId/trips')
  @Answers(201, TRIP_RECORDED, 'Record a haul done')
  async record(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @JsonBody(RECORD_TRIP_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.recordTrip.run(caller, withAddress(body, { trailerId })));
  }

  @Post('trailers/:trailerId/trips/:tripId/correct')
  @Answers(201, TRIP_RECORDED, 'Say what a trip should have been, whole')
  async correct(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('tripId', IdPipe) tripId: string,
    @JsonBody(TRIP_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.correctTrip.run(caller, withAddress(body, { trailerId, tripId })));
  }

  @Post('trailers/:trailerId/trips/:tripId/withdraw')
  @Answers(200, TRIP_WITHDRAWN, 'Say that a trip never happened, or was another trailer’s')
  async withdraw(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('tripId', IdPipe) tripId: string,
    @JsonBody(REASON_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.withdrawTrip.run(caller, withAddress(body, { trailerId, tripId })));
  }
}
