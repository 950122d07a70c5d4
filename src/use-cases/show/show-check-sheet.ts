import { Injectable } from '@nestjs/common';
import { buildOn } from '../../rules/facts/build-on.js';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { CheckKind } from '../../rules/facts/check.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { CheckKindStore } from '../../store/check-kind-store.js';
import { Database } from '../../store/database.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

export interface CheckSheetScreen {
  readonly trailer: KeptTrailer;
  readonly facts: TrailerFacts;
  readonly build: BuildSheet | null;
  readonly kind: CheckKind;
}

/** The sheet of one check for one trailer. */
@Injectable()
export class ShowCheckSheet {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly checkKinds: CheckKindStore,
  ) {}

  async run(
    caller: Caller,
    input: { readonly trailerId: string; readonly checkKindId: string },
  ): Promise<Outcome<CheckSheetScreen>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const trailer = await this.trailers.find(tx, input.trailerId);
      const facts = trailer && (await this.trailers.findFacts(tx, input.trailerId));
      if (trailer === null || facts === null) return notFound('trailer');
      const kind = await this.checkKinds.find(tx, input.checkKindId);
      if (kind === null) return notFound('check');
      return done({ trailer, facts, build: buildOn(facts.builds, caller.today), kind });
    });
  }
}
