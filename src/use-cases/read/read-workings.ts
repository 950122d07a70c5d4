import { Injectable } from '@nestjs/common';
import { explain } from '../../rules/explain/explain.js';
import type { Working } from '../../rules/explain/working.js';
import { Database } from '../../store/database.js';
import { TrailerStore } from '../../store/trailer-store.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

/** How the answers about one trailer were worked out. */
@Injectable()
export class ReadWorkings {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
  ) {}

  async run(
    caller: Caller,
    input: { readonly trailerId: string },
  ): Promise<Outcome<{ readonly workings: readonly Working[] }>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const facts = await this.trailers.findFacts(tx, input.trailerId);
      return facts === null ? notFound('trailer') : done({ workings: explain(facts, caller.today) });
    });
  }
}
