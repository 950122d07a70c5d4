import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { ResultStore } from '../../store/result-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may } from '../caller.js';
import { done, notAllowed, type Outcome } from '../outcome.js';

/**
 * Assesses again the trailers whose wake date has come: with no new fact, something about them reads differently today.
 * One transaction a trailer, so that a killed run has done what it did and the next does the rest.
 */
@Injectable()
export class WakeTrailers {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly results: ResultStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller): Promise<Outcome<{ readonly woken: number }>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    const sleepers = await this.database.inYard(caller.yardId, (tx) => this.results.wakeBy(tx, caller.today));
    for (const trailerId of sleepers) {
      await this.database.inYard(caller.yardId, async (tx) => {
        if (await this.trailers.lock(tx, trailerId)) await this.reassess.trailer(tx, caller, trailerId);
      });
    }
    return done({ woken: sleepers.length });
  }
}
