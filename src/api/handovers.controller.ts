import { Get, Param, Post } from '@nestjs/common';
import { RouteConfig } from '@nestjs/platform-fastify';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import type { Caller } from '../use-cases/caller.js';
import { HandOut } from '../use-cases/handovers/hand-out.js';
import { TakeBack } from '../use-cases/handovers/take-back.js';
import { WithdrawHandover } from '../use-cases/handovers/withdraw-handover.js';
import { ListFacts } from '../use-cases/read/list-facts.js';
import { ShowHandover } from '../use-cases/show/show-handover.js';
import { JsonBody, type JsonObject, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { photosAsSent, WITH_PHOTOS, withPhotoBytes } from './photos.js';
import { ByQuery } from './query.js';
import { HANDOVERS } from './schema/answer-schema.js';
import {
  HAND_OUT_BODY,
  HANDED_OUT,
  HANDOVER_READ,
  HANDOVER_WITHDRAWN,
  TAKE_BACK_BODY,
  TAKEN_BACK,
} from './schema/handover-schema.js';
import { PAGE_QUERY } from './schema/query-schema.js';
import { REASON_BODY } from './schema/use-schema.js';

@ApiController('Out and return')
export class HandoversApi {
  constructor(
    private readonly listFacts: ListFacts,
    private readonly showHandover: ShowHandover,
    private readonly handOut: HandOut,
    private readonly takeBack: TakeBack,
    private readonly withdrawHandover: WithdrawHandover,
  ) {}

  @Get('trailers/:trailerId/handovers')
  @Answers(200, HANDOVERS, 'When it went out and came back, as it was recorded, latest first')
  async list(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @ByQuery(PAGE_QUERY) { page }: z.infer<typeof PAGE_QUERY>,
  ) {
    return valueOrRefuse(await this.listFacts.run(caller, { kind: 'handovers', trailerId, page }));
  }

  @Post('trailers/:trailerId/hand-out')
  @RouteConfig(WITH_PHOTOS)
  @Answers(201, HANDED_OUT, 'Hand it to a customer; refused where ball or plug do not serve it, or it is on hold')
  async out(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @JsonBody(HAND_OUT_BODY) body: JsonObject,
  ) {
    const done = await this.handOut.run(caller, withAddress(withPhotoBytes(body), { trailerId }));
    return valueOrRefuse(photosAsSent(done));
  }

  @Post('trailers/:trailerId/take-back')
  @RouteConfig(WITH_PHOTOS)
  @Answers(201, TAKEN_BACK, 'Take it back: what changed, a hold where that can hurt someone, and the next job at risk')
  async back(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @JsonBody(TAKE_BACK_BODY) body: JsonObject,
  ) {
    const done = await this.takeBack.run(caller, withAddress(withPhotoBytes(body), { trailerId }));
    return valueOrRefuse(photosAsSent(done));
  }

  @Get('trailers/:trailerId/handovers/:handoverId')
  @Answers(200, HANDOVER_READ, 'One time that it was out: how it went, how it came back and what changed')
  async one(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('handoverId', IdPipe) handoverId: string,
  ) {
    const screen = valueOrRefuse(await this.showHandover.run(caller, { trailerId, handoverId }));
    const { record, out, back, taken, atRisk } = screen;
    return { record: record.fact, standing: record.standing, out, back, taken, atRisk };
  }

  @Post('trailers/:trailerId/handovers/:handoverId/withdraw')
  @Answers(
    200,
    HANDOVER_WITHDRAWN,
    'Say that it never happened; a hold that it put on stays, and so do tires it fitted',
  )
  async withdraw(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('handoverId', IdPipe) handoverId: string,
    @JsonBody(REASON_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.withdrawHandover.run(caller, withAddress(body, { trailerId, handoverId })));
  }
}
