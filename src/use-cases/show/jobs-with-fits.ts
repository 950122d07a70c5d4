import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { type Fit, fit as judge } from '../../rules/fit/fit.js';
import type { YardTx } from '../../store/database.js';
import type { TrailerStore } from '../../store/trailer-store.js';
import type { JobRow } from '../../store/views/job-list.view.js';

/** A job and the answer for its trailer; null while no trailer is picked, or once the job is over. */
export interface JobWithFit {
  readonly job: JobRow;
  readonly fit: Fit | null;
}

/** Puts the answer beside each booked job, from the facts of the trailers these jobs name and of no others. */
export async function jobsWithFits(
  tx: YardTx,
  trailers: TrailerStore,
  rows: readonly JobRow[],
  today: CivilDate,
): Promise<readonly JobWithFit[]> {
  const open = rows.filter((row) => row.state === 'booked' && row.endsOn >= today);
  const ids = [...new Set(open.flatMap((row) => (row.trailer ? [row.trailer.id] : [])))];
  const factsById = await trailers.findFactsForFits(tx, ids);
  return rows.map((row) => {
    const facts = row.trailer && open.includes(row) ? factsById.get(row.trailer.id) : undefined;
    const job = facts?.jobs.find((one) => one.id === row.id);
    return { job: row, fit: facts && job ? judge(facts, job, today) : null };
  });
}
