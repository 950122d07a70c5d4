import { Get, Patch, Post } from '@nestjs/common';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { valueOrRefuse } from '../http/refusal.js';
import { RebuildResults } from '../use-cases/assessments/rebuild-results.js';
import type { Caller } from '../use-cases/caller.js';
import { ListHistory } from '../use-cases/read/list-history.js';
import { ShowYard } from '../use-cases/show/show-yard.js';
import { SetYardSettings } from '../use-cases/yard/set-yard-settings.js';
import { JsonBody, type JsonObject, refuseFields, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { ByQuery } from './query.js';
import { HISTORY, PEOPLE, REBUILT, WOKEN_YARD, YARD } from './schema/answer-schema.js';
import { PAGE_QUERY } from './schema/query-schema.js';
import { NOTHING_BODY } from './schema/use-schema.js';
import { YARD_BODY } from './schema/yard-schema.js';

@ApiController('Yard')
export class YardApi {
  constructor(
    private readonly showYard: ShowYard,
    private readonly setYardSettings: SetYardSettings,
    private readonly rebuildResults: RebuildResults,
    private readonly listHistory: ListHistory,
  ) {}

  @Get('yard')
  @Answers(200, YARD, 'What the yard has decided for itself')
  async read(@FromCaller() caller: Caller) {
    const { slug: _slug, ...yard } = valueOrRefuse(await this.showYard.run(caller)).yard;
    return yard;
  }

  @Patch('yard')
  @Answers(200, WOKEN_YARD, 'Change settings; every trailer is judged anew by them')
  async set(@FromCaller() caller: Caller, @JsonBody(YARD_BODY) body: JsonObject) {
    return valueOrRefuse(await this.setYardSettings.run(caller, withAddress(body)));
  }

  @Get('people')
  @Answers(200, PEOPLE, 'Who is or was of the yard')
  async people(@FromCaller() caller: Caller) {
    return { rows: valueOrRefuse(await this.showYard.run(caller)).people };
  }

  @Get('history')
  @Answers(200, HISTORY, 'Who did what in the yard, latest first; for owners')
  async history(@FromCaller() caller: Caller, @ByQuery(PAGE_QUERY) { page }: z.infer<typeof PAGE_QUERY>) {
    return valueOrRefuse(await this.listHistory.run(caller, { trailerId: null, page }));
  }

  @Post('results/rebuild')
  @Answers(200, REBUILT, 'Throw away what is kept about every trailer and work it out again from the facts')
  async rebuild(@FromCaller() caller: Caller, @JsonBody(NOTHING_BODY) body: JsonObject) {
    refuseFields(body);
    return valueOrRefuse(await this.rebuildResults.run(caller));
  }
}
