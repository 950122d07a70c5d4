import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { ResultStore } from '../../store/result-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may } from '../caller.js';
import { done, notAllowed, type Outcome } from '../outcome.js';

/** Trailers assessed in one transaction: their locks are held no longer than a second or so. */
const BATCH = 100;

/**
 * Assesses again the trailers whose wake date has come: with no new fact, something about them reads differently today.
 * A batch a transaction, so that a killed run has done what it did and the next does the rest.
 */
@Injectable()
export class WakeTrailers {
  constructor(
    private readonly database: Database,
    private readonly results: ResultStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller): Promise<Outcome<{ readonly woken: number }>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    const sleepers = await this.database.inYard(caller.yardId, (tx) => this.results.wakeBy(tx, caller.today));
    let woken = 0;
    for (let from = 0; from < sleepers.length; from += BATCH) {
      const batch = sleepers.slice(from, from + BATCH);
      woken += await this.database.inYard(caller.yardId, (tx) => this.reassess.each(tx, caller, batch));
    }
    return done({ woken });
  }
}
