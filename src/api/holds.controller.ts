import { Get, Param, Post } from '@nestjs/common';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import type { Caller } from '../use-cases/caller.js';
import { LiftHold } from '../use-cases/holds/lift-hold.js';
import { OpenHold } from '../use-cases/holds/open-hold.js';
import { ListHolds } from '../use-cases/read/list-holds.js';
import { ListTrailerHolds } from '../use-cases/read/list-trailer-holds.js';
import { JsonBody, type JsonObject, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { ByQuery } from './query.js';
import { HOLD_CHANGED, HOLDS, OPEN_HOLDS } from './schema/answer-schema.js';
import { LIFT_HOLD_BODY } from './schema/check-schema.js';
import { PAGE_QUERY } from './schema/query-schema.js';
import { REASON_BODY } from './schema/use-schema.js';

@ApiController('Holds')
export class HoldsApi {
  constructor(
    private readonly listHolds: ListHolds,
    private readonly listTrailerHolds: ListTrailerHolds,
    private readonly openHold: OpenHold,
    private readonly liftHold: LiftHold,
  ) {}

  @Get('holds')
  @Answers(200, OPEN_HOLDS, 'Trailers that must not go out, those that break a job soonest first')
  async open(@FromCaller() caller: Caller, @ByQuery(PAGE_QUERY) { page }: z.infer<typeof PAGE_QUERY>) {
    return valueOrRefuse(await this.listHolds.run(caller, { page }));
  }

  @Get('trailers/:trailerId/holds')
  @Answers(200, HOLDS, 'Holds of one trailer, lifted ones too')
  async list(@FromCaller() caller: Caller, @Param('trailerId', IdPipe) trailerId: string) {
    return valueOrRefuse(await this.listTrailerHolds.run(caller, { trailerId }));
  }

  @Post('trailers/:trailerId/holds')
  @Answers(201, HOLD_CHANGED, 'Keep a trailer from going out')
  async hold(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @JsonBody(REASON_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.openHold.run(caller, withAddress(body, { trailerId })));
  }

  @Post('trailers/:trailerId/holds/:holdId/lift')
  @Answers(200, HOLD_CHANGED, 'Let a held trailer go out again, on a recorded repair or on one’s word')
  async lift(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('holdId', IdPipe) holdId: string,
    @JsonBody(LIFT_HOLD_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.liftHold.run(caller, withAddress(body, { trailerId, holdId })));
  }
}
