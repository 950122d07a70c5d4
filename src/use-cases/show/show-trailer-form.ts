import { Injectable } from '@nestjs/common';
import { buildOn } from '../../rules/facts/build-on.js';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { Database } from '../../store/database.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import { ChoicesView, type MachineChoice } from '../../store/views/choices.view.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

export interface TrailerFormScreen {
  readonly trailer: KeptTrailer;
  readonly facts: TrailerFacts;
  readonly build: BuildSheet | null;
  readonly machines: readonly MachineChoice[];
}

/** What a form about one trailer needs to ask sensible questions. */
@Injectable()
export class ShowTrailerForm {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly choices: ChoicesView,
  ) {}

  async run(caller: Caller, input: { readonly trailerId: string }): Promise<Outcome<TrailerFormScreen>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const trailer = await this.trailers.find(tx, input.trailerId);
      const facts = trailer && (await this.trailers.findFacts(tx, input.trailerId));
      if (trailer === null || facts === null) return notFound('trailer');
      return done({
        trailer,
        facts,
        build: buildOn(facts.builds, caller.today),
        machines: await this.choices.machines(tx),
      });
    });
  }
}
