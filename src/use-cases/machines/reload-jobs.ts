import type { CargoItem, Load, Machine } from '../../rules/facts/load.js';
import type { YardTx } from '../../store/database.js';
import type { JobStore, KeptJob } from '../../store/job-store.js';
import type { TrailerStore } from '../../store/trailer-store.js';
import type { Caller } from '../caller.js';
import { withMachine } from '../input/load-input.js';

/**
 * Brings the loads of jobs to come up to what the yard now knows of a machine, or puts the machine on them that took
 * over its work. Left at the old weight a job would read `go` though somebody has weighed the machine and knows better.
 * An entry with a weight of its own, which differs from what the yard knew, stays; hauls done keep what they carried.
 * Returns the ids of the jobs changed. Locks their trailers.
 */
export async function reloadJobs(
  tx: YardTx,
  { jobs, trailers }: { readonly jobs: JobStore; readonly trailers: TrailerStore },
  caller: Caller,
  before: Machine,
  after: Machine,
): Promise<readonly string[]> {
  const naming = (await jobs.list(tx, { state: 'booked', from: caller.today })).filter((job) => names(job, before.id));
  await trailers.lockMany(
    tx,
    naming.flatMap((job) => job.trailerId ?? []),
  );
  const changed: string[] = [];
  for (const { id } of naming) {
    // Read again: whoever held the lock may have changed it.
    const job = await jobs.find(tx, id);
    if (job === null || job.state !== 'booked' || !names(job, before.id)) continue;
    const machineId = job.machineId === before.id ? after.id : job.machineId;
    await jobs.update(tx, { ...job, machineId, load: reloaded(job, before, after) });
    changed.push(id);
  }
  return changed;
}

function names(job: KeptJob, machineId: string): boolean {
  return job.machineId === machineId || job.load.cargo.some((item) => item.machineId === machineId);
}

function reloaded(job: KeptJob, before: Machine, after: Machine): Load {
  const isOurs = (item: CargoItem) =>
    item.machineId === before.id &&
    (before.id !== after.id || (item.massKg === before.massKg && item.basis === before.basis));
  const { massKg } = after;
  // Its weight is not known: then neither is the load, whatever else is listed.
  if (massKg === null) return job.load.cargo.some(isOurs) ? { ...job.load, cargo: [] } : job.load;
  const cargo = job.load.cargo.map((item) =>
    isOurs(item)
      ? {
          ...item,
          name: item.name === before.name ? after.name : item.name,
          massKg,
          basis: after.basis,
          machineId: after.id,
          // Where another machine balances nobody has said.
          fromCouplerM: before.id === after.id ? item.fromCouplerM : null,
        }
      : item,
  );
  const load = { ...job.load, cargo };
  return job.machineId === before.id ? (withMachine(load, after) ?? load) : load;
}
