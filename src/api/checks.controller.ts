import { Get, Param, Post, Res } from '@nestjs/common';
import { RouteConfig } from '@nestjs/platform-fastify';
import { ApiOperation, ApiResponse } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import type { Caller } from '../use-cases/caller.js';
import { CorrectCheck } from '../use-cases/checks/correct-check.js';
import { RecordCheck } from '../use-cases/checks/record-check.js';
import { ListFacts } from '../use-cases/read/list-facts.js';
import { ShowCheckRecord } from '../use-cases/show/show-check-record.js';
import { ShowPhoto } from '../use-cases/show/show-photo.js';
import { JsonBody, type JsonObject, refuseFields, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { photosAsSent, WITH_PHOTOS, withSheetBytes } from './photos.js';
import { ByQuery } from './query.js';
import { CHECK_CORRECTED, CHECK_READ, CHECK_RECORDED, CHECKS } from './schema/answer-schema.js';
import { CHECK_BODY, CORRECT_CHECK_BODY } from './schema/check-schema.js';
import { PAGE_QUERY } from './schema/query-schema.js';
import { NOTHING_BODY } from './schema/use-schema.js';

@ApiController('Checks')
export class ChecksApi {
  constructor(
    private readonly listFacts: ListFacts,
    private readonly showRecord: ShowCheckRecord,
    private readonly showPhoto: ShowPhoto,
    private readonly recordCheck: RecordCheck,
    private readonly correctCheck: CorrectCheck,
  ) {}

  @Get('trailers/:trailerId/checks')
  @Answers(200, CHECKS, 'Checks done, as they were recorded, latest first')
  async list(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @ByQuery(PAGE_QUERY) { page }: z.infer<typeof PAGE_QUERY>,
  ) {
    return valueOrRefuse(await this.listFacts.run(caller, { kind: 'checks', trailerId, page }));
  }

  @Post('trailers/:trailerId/checks')
  @RouteConfig(WITH_PHOTOS)
  @Answers(201, CHECK_RECORDED, 'Record a check done; a bad line that keeps people safe holds the trailer')
  async record(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @JsonBody(CHECK_BODY) body: JsonObject,
  ) {
    const done = await this.recordCheck.run(caller, withAddress(withSheetBytes(body), { trailerId }));
    return valueOrRefuse(photosAsSent(done));
  }

  @Get('trailers/:trailerId/checks/:checkRecordId')
  @Answers(200, CHECK_READ, 'One check with its note, cost and photos')
  async one(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('checkRecordId', IdPipe) checkRecordId: string,
  ) {
    const screen = valueOrRefuse(await this.showRecord.run(caller, { trailerId, checkRecordId }));
    const { record, byName, note, costCents, photoIds } = screen;
    return { record: record.fact, byName, note, costCents, photoIds, standing: record.standing };
  }

  @Post('trailers/:trailerId/checks/:checkRecordId/correct')
  @RouteConfig(WITH_PHOTOS)
  @Answers(201, CHECK_CORRECTED, 'Say what the record of a check should have been, whole')
  async correct(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('checkRecordId', IdPipe) checkRecordId: string,
    @JsonBody(CORRECT_CHECK_BODY) body: JsonObject,
  ) {
    const input = withAddress<Parameters<CorrectCheck['run']>[1]>(withSheetBytes(body), {
      trailerId,
      checkRecordId,
      neverDone: undefined,
    });
    return valueOrRefuse(photosAsSent(await this.correctCheck.run(caller, input)));
  }

  @Post('trailers/:trailerId/checks/:checkRecordId/withdraw')
  @Answers(200, CHECK_CORRECTED, 'Say that a check was never done; a hold it put on stays')
  async withdraw(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('checkRecordId', IdPipe) checkRecordId: string,
    @JsonBody(NOTHING_BODY) body: JsonObject,
  ) {
    refuseFields(body);
    return valueOrRefuse(await this.correctCheck.run(caller, { trailerId, checkRecordId, neverDone: true }));
  }

  @Get('photos/:photoId')
  @ApiOperation({ summary: 'One photo of a check or of a handover' })
  @ApiResponse({
    status: 200,
    description: 'The picture, of the media type it was sent as.',
    content: { 'image/jpeg': {}, 'image/png': {}, 'image/webp': {} },
  })
  async photo(
    @FromCaller() caller: Caller,
    @Param('photoId', IdPipe) photoId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const photo = valueOrRefuse(await this.showPhoto.run(caller, { photoId }));
    reply.type(photo.mediaType).header('x-content-type-options', 'nosniff').send(Buffer.from(photo.bytes));
  }
}
