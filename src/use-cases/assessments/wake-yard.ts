import type { Database } from '../../store/database.js';
import type { ResultStore } from '../../store/result-store.js';
import type { Caller } from '../caller.js';
import type { Reassess } from './reassess.js';

/** Trailers assessed in one transaction: their locks are held no longer than a second or so. */
const BATCH = 100;

/** Trailers assessed while somebody waits for the answer; the rest are woken by the timer within minutes. */
const WHILE_SOMEBODY_WAITS = 500;

export interface WokenYard {
  readonly assessed: number;
  /** Still marked to be woken. */
  readonly waiting: number;
}

/**
 * Assesses trailers whose wake date has come, a batch a transaction. Called after something that every trailer is
 * judged by has changed and `wakeAllOn` was kept with it: killed half way, the timer finds the rest still marked.
 */
export async function wakeYard(
  { database, results, reassess }: { database: Database; results: ResultStore; reassess: Reassess },
  caller: Caller,
): Promise<WokenYard> {
  let assessed = 0;
  while (true) {
    const { done, waiting } = await database.inYard(caller.yardId, async (tx) => {
      const sleepers = await results.wakeBy(tx, caller.today);
      if (assessed >= WHILE_SOMEBODY_WAITS) return { done: 0, waiting: sleepers.length };
      const batch = sleepers.slice(0, BATCH);
      await reassess.each(tx, caller, batch);
      return { done: batch.length, waiting: sleepers.length - batch.length };
    });
    assessed += done;
    if (done === 0 || waiting === 0) return { assessed, waiting };
  }
}
