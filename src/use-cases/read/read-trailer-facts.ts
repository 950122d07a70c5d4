import { Injectable } from '@nestjs/common';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { Database } from '../../store/database.js';
import { TrailerStore } from '../../store/trailer-store.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

/** Everything an answer about one trailer is worked out from, so that whoever doubts the answer can work it out again. */
@Injectable()
export class ReadTrailerFacts {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
  ) {}

  async run(caller: Caller, { trailerId }: { readonly trailerId: string }): Promise<Outcome<TrailerFacts>> {
    const facts = await this.database.inYard(caller.yardId, (tx) => this.trailers.findFacts(tx, trailerId));
    return facts === null ? notFound('trailer') : done(facts);
  }
}
