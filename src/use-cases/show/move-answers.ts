import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { type RankedTrailer, rankedTrailer } from '../../rules/ranking/ranked-trailer.js';
import type { YardTx } from '../../store/database.js';
import type { KeptJob } from '../../store/job-store.js';
import type { MachineStore } from '../../store/machine-store.js';
import type { TrailerStore } from '../../store/trailer-store.js';
import { machinesOf, withMachines } from '../machines/with-machines.js';

/** What each of these trailers would answer, were the job moved to it: fit, and the jobs it would clash with. */
export async function moveAnswers(
  tx: YardTx,
  stores: { readonly trailers: TrailerStore; readonly machines: MachineStore },
  job: KeptJob,
  trailerIds: readonly string[],
  today: CivilDate,
): Promise<ReadonlyMap<string, RankedTrailer>> {
  const found = await stores.trailers.findFactsForFits(tx, trailerIds);
  const machines = await machinesOf(tx, stores.machines, job.load);
  const haul = { ...job, jobId: job.id, plannedTrailerId: job.trailerId };
  return new Map([...found].map(([id, facts]) => [id, rankedTrailer(withMachines(facts, machines), haul, today)]));
}
