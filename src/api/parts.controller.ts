import { Get, Param, Post } from '@nestjs/common';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import type { Caller } from '../use-cases/caller.js';
import { ListFacts } from '../use-cases/read/list-facts.js';
import { CorrectPart } from '../use-cases/trailers/correct-part.js';
import { FitPart } from '../use-cases/trailers/fit-part.js';
import { RemovePart } from '../use-cases/trailers/remove-part.js';
import { JsonBody, type JsonObject, refuseFields, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { ByQuery } from './query.js';
import { PART_CORRECTED, PART_FITTED, PART_REMOVED, PARTS } from './schema/answer-schema.js';
import { PAGE_QUERY } from './schema/query-schema.js';
import { CORRECT_PART_BODY, FIT_PART_BODY, REMOVE_PART_BODY } from './schema/trailer-schema.js';
import { NOTHING_BODY } from './schema/use-schema.js';

@ApiController('Parts')
export class PartsApi {
  constructor(
    private readonly listFacts: ListFacts,
    private readonly fitPart: FitPart,
    private readonly removePart: RemovePart,
    private readonly correctPart: CorrectPart,
  ) {}

  @Get('trailers/:trailerId/parts')
  @Answers(200, PARTS, 'Parts ever fitted, as they were recorded')
  async list(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @ByQuery(PAGE_QUERY) { page }: z.infer<typeof PAGE_QUERY>,
  ) {
    return valueOrRefuse(await this.listFacts.run(caller, { kind: 'parts', trailerId, page }));
  }

  @Post('trailers/:trailerId/parts')
  @Answers(201, PART_FITTED, 'Fit a part; what was in its place comes off that day')
  async fit(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @JsonBody(FIT_PART_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.fitPart.run(caller, withAddress(body, { trailerId })));
  }

  @Post('trailers/:trailerId/parts/:partId/remove')
  @Answers(200, PART_REMOVED, 'Note that a part came off and nothing took its place')
  async remove(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('partId', IdPipe) partId: string,
    @JsonBody(REMOVE_PART_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.removePart.run(caller, withAddress(body, { trailerId, partId })));
  }

  @Post('trailers/:trailerId/parts/:partId/correct')
  @Answers(201, PART_CORRECTED, 'Say what the record of a part should have been, whole')
  async correct(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('partId', IdPipe) partId: string,
    @JsonBody(CORRECT_PART_BODY) body: JsonObject,
  ) {
    const input = withAddress<Parameters<CorrectPart['run']>[1]>(body, { trailerId, partId, neverFitted: undefined });
    return valueOrRefuse(await this.correctPart.run(caller, input));
  }

  @Post('trailers/:trailerId/parts/:partId/withdraw')
  @Answers(200, PART_CORRECTED, 'Say that a part was never fitted')
  async withdraw(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('partId', IdPipe) partId: string,
    @JsonBody(NOTHING_BODY) body: JsonObject,
  ) {
    refuseFields(body);
    return valueOrRefuse(await this.correctPart.run(caller, { trailerId, partId, neverFitted: true }));
  }
}
