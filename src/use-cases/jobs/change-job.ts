import { Injectable } from '@nestjs/common';
import { type Fit, fit } from '../../rules/fit/fit.js';
import { portableLoad } from '../../rules/ranking/portable-load.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { JobStore, type KeptJob } from '../../store/job-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { type JobInput, readJob } from '../input/job-input.js';
import { merged } from '../input/merged.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { FindJobNames } from './find-job-names.js';

/** Fields left out stay as they are; null makes a field unknown. */
export type ChangeJobInput = Partial<JobInput> & { readonly jobId: string };

interface JobChanged {
  readonly jobId: string;
  readonly fit: Fit | null;
}

/** Moves a booked job to other days, gives it another trailer, load, vehicle or driver. */
@Injectable()
export class ChangeJob {
  constructor(
    private readonly database: Database,
    private readonly jobs: JobStore,
    private readonly trailers: TrailerStore,
    private readonly names: FindJobNames,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: ChangeJobInput): Promise<Outcome<JobChanged>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const { jobId: asked, ...changes } = input;
    const named = Given.from({ jobId: asked });
    const jobId = named.needId('jobId', 'the job');
    if (named.problems.length > 0) return invalid(named.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const first = await this.jobs.find(tx, jobId);
      if (first === null) return notFound('job');
      const trailerIds = [first.trailerId, changes.trailerId ?? null].filter((id) => typeof id === 'string');
      if (trailerIds.some((id) => Given.from({ id }).id('id', '') === null)) {
        return invalid([{ field: 'trailerId', message: "Choose one of the yard's trailers." }]);
      }
      await this.trailers.lockMany(tx, trailerIds);
      const before = (await this.jobs.find(tx, jobId)) ?? first;
      if (before.state !== 'booked') return conflict(`This job is ${before.state}; only a booked one can be changed.`);

      const given = Given.from(merged(asInput(before), withWhatFollows(before, changes)));
      const job = await this.names.complete(tx, given, readJob(given, caller.today, before.endsOn));
      if (given.problems.length > 0) return invalid(given.problems);
      const after: KeptJob = { ...job, id: jobId, state: 'booked' };
      await this.jobs.update(tx, after);
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'change-job',
        subject: 'job',
        subjectId: jobId,
        trailerId: after.trailerId,
        detail: { before, after },
      });
      if (before.trailerId !== null && before.trailerId !== after.trailerId) {
        await this.reassess.trailer(tx, caller, before.trailerId);
      }
      if (after.trailerId === null) return done({ jobId, fit: null });
      const { facts } = await this.reassess.trailer(tx, caller, after.trailerId);
      return done({ jobId, fit: fit(facts, after, caller.today) });
    });
  }
}

function asInput(job: KeptJob): object {
  const { id: _id, state: _state, towVehicle, ...rest } = job;
  return { ...rest, towVehicleId: towVehicle?.id ?? null };
}

/**
 * Another hauler drives himself; another machine without another load leaves nothing of the first one on the deck; and on
 * another trailer the load weighs the same, but where it sat and what a scale said of the first trailer no longer hold.
 */
function withWhatFollows(before: KeptJob, changes: Partial<JobInput>): Partial<JobInput> {
  const { machineId, trailerId, load, haulerPersonId, driver } = changes;
  const driverFollows = haulerPersonId !== undefined && driver === undefined ? { driver: null } : {};
  const otherMachine = machineId !== undefined && machineId !== before.machineId;
  const otherTrailer = trailerId !== undefined && trailerId !== before.trailerId;
  if (load !== undefined || (!otherMachine && !otherTrailer)) return { ...changes, ...driverFollows };
  const kept = otherTrailer ? portableLoad(before.load, null) : before.load;
  if (!otherMachine) return { ...changes, ...driverFollows, load: kept };
  const cargo = kept.cargo.filter((item) => item.machineId === null || item.machineId !== before.machineId);
  const reloaded = { cargo, balancePointM: null, scale: null, hitchHeightM: null, offCentreM: null, tieDowns: null };
  return { ...changes, ...driverFollows, load: reloaded };
}
