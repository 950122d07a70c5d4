import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { type RankedTrailer, rankedTrailer } from '../../rules/ranking/ranked-trailer.js';
import type { YardTx } from '../../store/database.js';
import type { KeptJob } from '../../store/job-store.js';
import type { MachineStore } from '../../store/machine-store.js';
import type { TrailerStore } from '../../store/trailer-store.js';

/** What each of these trailers would answer, were the job moved to it: fit, and the jobs it would clash with. */
export async function moveAnswers(
  tx: YardTx,
  stores: { readonly trailers: TrailerStore; readonly machines: MachineStore },
  job: KeptJob,
  trailerIds: readonly string[],
  today: CivilDate,
): Promise<ReadonlyMap<string, RankedTrailer>> {
  const found = await stores.trailers.findFactsForFits(tx, trailerIds);
  const named = job.load.cargo.flatMap((item) => item.machineId ?? []);
  const machines = named.length === 0 ? [] : await stores.machines.findWithReplacements(tx, named);
  const haul = { ...job, jobId: job.id, plannedTrailerId: job.trailerId };
  return new Map(
    [...found].map(([id, facts]) => {
      // A trailer that never carried a machine knows nothing of it.
      const known = new Set(facts.machines.map((machine) => machine.id));
      const others = machines.filter((machine) => !known.has(machine.id));
      return [id, rankedTrailer({ ...facts, machines: [...facts.machines, ...others] }, haul, today)];
    }),
  );
}
