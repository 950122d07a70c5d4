import { Get, Param, Post } from '@nestjs/common';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import type { Caller } from '../use-cases/caller.js';
import { ListFacts } from '../use-cases/read/list-facts.js';
import { ReviseBuildSheet } from '../use-cases/trailers/revise-build-sheet.js';
import { JsonBody, type JsonObject, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { ByQuery } from './query.js';
import { BUILD_REVISED, BUILDS } from './schema/answer-schema.js';
import { CORRECT_BUILD_BODY, REVISE_BUILD_BODY } from './schema/build-schema.js';
import { PAGE_QUERY } from './schema/query-schema.js';

@ApiController('Build sheets')
export class BuildsApi {
  constructor(
    private readonly listFacts: ListFacts,
    private readonly reviseBuildSheet: ReviseBuildSheet,
  ) {}

  @Get('trailers/:trailerId/builds')
  @Answers(200, BUILDS, 'Versions of the build sheet as they were recorded')
  async list(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @ByQuery(PAGE_QUERY) { page }: z.infer<typeof PAGE_QUERY>,
  ) {
    return valueOrRefuse(await this.listFacts.run(caller, { kind: 'builds', trailerId, page }));
  }

  @Post('trailers/:trailerId/builds')
  @Answers(201, BUILD_REVISED, 'Record a new version, whole: what is left out becomes unknown')
  async revise(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @JsonBody(REVISE_BUILD_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.reviseBuildSheet.run(caller, withAddress(body, { trailerId, correctsId: null })));
  }

  @Post('trailers/:trailerId/builds/:buildSheetId/correct')
  @Answers(201, BUILD_REVISED, 'Say what a version should have been, whole')
  async correct(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('buildSheetId', IdPipe) correctsId: string,
    @JsonBody(CORRECT_BUILD_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.reviseBuildSheet.run(caller, withAddress(body, { trailerId, correctsId })));
  }
}
