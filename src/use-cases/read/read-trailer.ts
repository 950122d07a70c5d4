import { Injectable } from '@nestjs/common';
import { type Assessment, assess } from '../../rules/assess.js';
import { buildOn } from '../../rules/facts/build-on.js';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { Hold } from '../../rules/facts/check.js';
import type { Part } from '../../rules/facts/part.js';
import { yardDaysFrom } from '../../rules/inspection/yard-days.js';
import { Database } from '../../store/database.js';
import { ResultStore } from '../../store/result-store.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

export interface TrailerRead {
  readonly trailer: KeptTrailer;
  /** The build of today; null while none is recorded. */
  readonly build: BuildSheet | null;
  /** Parts that are on it. */
  readonly parts: readonly Part[];
  /** Holds that keep it in the yard. */
  readonly holds: readonly Hold[];
  readonly assessment: Assessment;
}

/** One trailer as it stands, with what its facts come to. */
@Injectable()
export class ReadTrailer {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly results: ResultStore,
  ) {}

  async run(caller: Caller, { trailerId }: { readonly trailerId: string }): Promise<Outcome<TrailerRead>> {
    const { today } = caller;
    return this.database.inYard(caller.yardId, async (tx) => {
      const trailer = await this.trailers.find(tx, trailerId);
      const facts = trailer && (await this.trailers.findFacts(tx, trailerId));
      if (trailer === null || facts === null) return notFound('trailer');
      const kept = await this.results.find(tx, trailerId);
      // Kept results hold until their wake date; between that day's midnight and the timer they would be stale.
      const holds = kept !== null && (kept.wakeOn === null || kept.wakeOn > today);
      const assessment = holds ? readOn(kept, caller) : assess(facts, today);
      return done({
        trailer,
        build: buildOn(facts.builds, today),
        parts: facts.parts.filter((part) => part.removedOn === null),
        holds: facts.holds.filter((hold) => hold.liftedOn === null),
        assessment,
      });
    });
  }
}

/** A kept assessment as it reads on a later day: days in the yard that have passed are cut off. */
function readOn(kept: Assessment, { today }: Caller): Assessment {
  return {
    ...kept,
    asOf: today,
    due: kept.due.map((due) => ({ ...due, yardDays: yardDaysFrom(due.yardDays, today) })),
  };
}
