import { Injectable } from '@nestjs/common';
import { buildOn } from '../../rules/facts/build-on.js';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { CheckKind } from '../../rules/facts/check.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { lookAlikes } from '../../rules/trailer/look-alikes.js';
import { CheckKindStore } from '../../store/check-kind-store.js';
import { Database } from '../../store/database.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import type { Caller } from '../caller.js';
import { seenSheet } from '../checks/changed-since.js';
import type { SeenSheet } from '../input/check-input.js';
import { done, notFound, type Outcome } from '../outcome.js';

export interface CheckSheetScreen {
  readonly trailer: KeptTrailer;
  readonly facts: TrailerFacts;
  readonly build: BuildSheet | null;
  readonly kind: CheckKind;
  /** What this sheet shows, to be sent along with it. */
  readonly seen: SeenSheet;
  /** Other trailers in service whose painted numbers could be taken for this one's. */
  readonly lookAlikes: readonly string[];
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
      const others = (await this.trailers.numbersInService(tx)).filter((number) => number !== trailer.yardNumber);
      return done({
        trailer,
        facts,
        build: buildOn(facts.builds, caller.today),
        kind,
        seen: seenSheet(facts, kind, caller.today),
        lookAlikes: lookAlikes(trailer.yardNumber, others),
      });
    });
  }
}
