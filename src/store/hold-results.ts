import type { YardTx } from './database.js';

/**
 * Held until the transaction ends. Results of a yard may be made by any number of transactions side by side. One that
 * changes what other trailers are judged by stands `alone`: those under way end first, so that it marks their results too,
 * and new ones wait, so that they read what it wrote. To be asked before facts are read.
 */
export async function holdResults(tx: YardTx, how: 'side-by-side' | 'alone'): Promise<void> {
  const yard = `${tx.yardId} results`;
  if (how === 'alone') await tx.$executeRaw`select pg_advisory_xact_lock(hashtextextended(${yard}, 0))`;
  else await tx.$executeRaw`select pg_advisory_xact_lock_shared(hashtextextended(${yard}, 0))`;
}
