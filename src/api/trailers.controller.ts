import { Get, Param, Patch, Post } from '@nestjs/common';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import { FindBetterTrailer } from '../use-cases/assessments/find-better-trailer.js';
import type { Caller } from '../use-cases/caller.js';
import { ListHistory } from '../use-cases/read/list-history.js';
import { ReadTrailer } from '../use-cases/read/read-trailer.js';
import { ReadTrailerFacts } from '../use-cases/read/read-trailer-facts.js';
import { ReadWorkings } from '../use-cases/read/read-workings.js';
import { ShowTrailers } from '../use-cases/show/show-trailers.js';
import { AddTrailer } from '../use-cases/trailers/add-trailer.js';
import { UpdateTrailer } from '../use-cases/trailers/update-trailer.js';
import { JsonBody, type JsonObject, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { ByQuery } from './query.js';
import {
  HISTORY,
  TRAILER_ADDED,
  TRAILER_FACTS,
  TRAILER_READ,
  TRAILER_UPDATED,
  TRAILERS,
  WORKINGS,
} from './schema/answer-schema.js';
import { BETTER_QUERY, listQuery, oneOf, PAGE_QUERY, search } from './schema/query-schema.js';
import { BETTER_TRAILER } from './schema/ranking-schema.js';
import { ADD_TRAILER_BODY, UPDATE_TRAILER_BODY } from './schema/trailer-schema.js';

const TRAILER_QUERY = listQuery({
  text: search('Part of the number, name, plate or VIN.'),
  class: oneOf(['light', 'medium', 'heavy', 'gooseneck-deck-over', 'not-an-equipment-trailer'], 'Trailer class.'),
  readiness: oneOf(['ready', 'due', 'down', 'gone'], 'Sold and scrapped ones are listed only as gone.'),
});

@ApiController('Trailers')
export class TrailersApi {
  constructor(
    private readonly showTrailers: ShowTrailers,
    private readonly readTrailer: ReadTrailer,
    private readonly readFacts: ReadTrailerFacts,
    private readonly readWorkings: ReadWorkings,
    private readonly listHistory: ListHistory,
    private readonly findBetter: FindBetterTrailer,
    private readonly addTrailer: AddTrailer,
    private readonly updateTrailer: UpdateTrailer,
  ) {}

  @Get('trailers')
  @Answers(200, TRAILERS, 'The trailers of the yard with what each comes to')
  async list(@FromCaller() caller: Caller, @ByQuery(TRAILER_QUERY) query: z.infer<typeof TRAILER_QUERY>) {
    const filter = {
      text: query.text || null,
      trailerClass: query.class ?? null,
      readiness: query.readiness ?? null,
    };
    const { trailers, counts, page, perPage } = valueOrRefuse(
      await this.showTrailers.run(caller, { filter, page: query.page }),
    );
    return { ...trailers, page, perPage, counts };
  }

  @Post('trailers')
  @Answers(201, TRAILER_ADDED, 'Add a trailer, with its build sheet and parts where they are known')
  async add(@FromCaller() caller: Caller, @JsonBody(ADD_TRAILER_BODY) body: JsonObject) {
    return valueOrRefuse(await this.addTrailer.run(caller, withAddress(body)));
  }

  @Get('trailers/:trailerId')
  @Answers(200, TRAILER_READ, 'One trailer: build of today, parts on it, open holds, and what its facts come to')
  async one(@FromCaller() caller: Caller, @Param('trailerId', IdPipe) trailerId: string) {
    return valueOrRefuse(await this.readTrailer.run(caller, { trailerId }));
  }

  @Patch('trailers/:trailerId')
  @Answers(200, TRAILER_UPDATED, 'Change what is known of a trailer; its status takes an owner')
  async update(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @JsonBody(UPDATE_TRAILER_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.updateTrailer.run(caller, withAddress(body, { trailerId })));
  }

  @Get('trailers/:trailerId/facts')
  @Answers(200, TRAILER_FACTS, 'Every standing fact that the answers about a trailer are worked out from')
  async facts(@FromCaller() caller: Caller, @Param('trailerId', IdPipe) trailerId: string) {
    return valueOrRefuse(await this.readFacts.run(caller, { trailerId }));
  }

  @Get('trailers/:trailerId/workings')
  @Answers(200, WORKINGS, 'How the answers about a trailer were worked out: inputs, formula, source, what matters most')
  async workings(@FromCaller() caller: Caller, @Param('trailerId', IdPipe) trailerId: string) {
    return valueOrRefuse(await this.readWorkings.run(caller, { trailerId }));
  }

  @Get('trailers/:trailerId/better')
  @Answers(
    200,
    BETTER_TRAILER,
    'Which other trailer should do the work for which one is flagged as drifting or outgrown',
  )
  async better(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @ByQuery(BETTER_QUERY) { flag }: z.infer<typeof BETTER_QUERY>,
  ) {
    const { trailer: _, ...found } = valueOrRefuse(
      await this.findBetter.run(caller, { trailerId, flag: flag ?? null }),
    );
    return found;
  }

  @Get('trailers/:trailerId/history')
  @Answers(200, HISTORY, 'Who did what to a trailer, latest first')
  async history(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @ByQuery(PAGE_QUERY) { page }: z.infer<typeof PAGE_QUERY>,
  ) {
    return valueOrRefuse(await this.listHistory.run(caller, { trailerId, page }));
  }
}
