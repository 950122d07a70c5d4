import { Get, Param, Post } from '@nestjs/common';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import type { Caller } from '../use-cases/caller.js';
import { ListFacts } from '../use-cases/read/list-facts.js';
import { CorrectReading } from '../use-cases/readings/correct-reading.js';
import { RecordReading } from '../use-cases/readings/record-reading.js';
import { JsonBody, type JsonObject, refuseFields, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { ByQuery } from './query.js';
import { READING_CORRECTED, READING_RECORDED, READINGS } from './schema/answer-schema.js';
import { PAGE_QUERY } from './schema/query-schema.js';
import { NOTHING_BODY, READING_BODY } from './schema/use-schema.js';

@ApiController('Readings')
export class ReadingsApi {
  constructor(
    private readonly listFacts: ListFacts,
    private readonly recordReading: RecordReading,
    private readonly correctReading: CorrectReading,
  ) {}

  @Get('trailers/:trailerId/readings')
  @Answers(200, READINGS, 'Meter readings as they were recorded, latest first')
  async list(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @ByQuery(PAGE_QUERY) { page }: z.infer<typeof PAGE_QUERY>,
  ) {
    return valueOrRefuse(await this.listFacts.run(caller, { kind: 'readings', trailerId, page }));
  }

  @Post('trailers/:trailerId/readings')
  @Answers(201, READING_RECORDED, 'Record what the meter showed')
  async record(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @JsonBody(READING_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.recordReading.run(caller, withAddress(body, { trailerId })));
  }

  @Post('trailers/:trailerId/readings/:readingId/correct')
  @Answers(201, READING_CORRECTED, 'Say what a reading should have been, whole')
  async correct(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('readingId', IdPipe) readingId: string,
    @JsonBody(READING_BODY) body: JsonObject,
  ) {
    const input = withAddress<Parameters<CorrectReading['run']>[1]>(body, {
      trailerId,
      readingId,
      neverTaken: undefined,
    });
    return valueOrRefuse(await this.correctReading.run(caller, input));
  }

  @Post('trailers/:trailerId/readings/:readingId/withdraw')
  @Answers(200, READING_CORRECTED, 'Say that a reading was never taken')
  async withdraw(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('readingId', IdPipe) readingId: string,
    @JsonBody(NOTHING_BODY) body: JsonObject,
  ) {
    refuseFields(body);
    return valueOrRefuse(await this.correctReading.run(caller, { trailerId, readingId, neverTaken: true }));
  }
}
