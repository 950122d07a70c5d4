import { Injectable } from '@nestjs/common';
import { earliest } from '../../rules/calendar/civil-date.js';
import type { Flag } from '../../rules/flags/flag.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { JobStore, type KeptJob } from '../../store/job-store.js';
import { MachineStore } from '../../store/machine-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { TripStore } from '../../store/trip-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { merged } from '../input/merged.js';
import { readTrip, type TripInput } from '../input/trip-input.js';
import { completeLoad } from '../machines/complete-load.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

/** What is left out was as booked. */
export type FinishJobInput = Partial<TripInput> & { readonly jobId: string; readonly note?: string | null };

interface JobFinished {
  readonly jobId: string;
  readonly tripId: string;
  readonly raised: readonly Flag[];
}

/**
 * Makes a trip of a booked job. From then on its miles have been driven and are no longer to come, so that no mile
 * is counted twice.
 */
@Injectable()
export class FinishJob {
  constructor(
    private readonly database: Database,
    private readonly jobs: JobStore,
    private readonly trailers: TrailerStore,
    private readonly trips: TripStore,
    private readonly machines: MachineStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: FinishJobInput): Promise<Outcome<JobFinished>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const { jobId: asked, ...told } = input;
    const named = Given.from({ jobId: asked });
    const jobId = named.needId('jobId', 'the job');
    if (named.problems.length > 0) return invalid(named.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const first = await this.jobs.find(tx, jobId);
      if (first === null) return notFound('job');
      const { trailerId } = first;
      if (trailerId === null) return conflict('Choose the trailer that went, then finish the job.');
      await this.trailers.lock(tx, trailerId);
      const job = (await this.jobs.find(tx, jobId)) ?? first;
      if (job.state === 'done') return conflict('This job is done already; correct its trip if something was wrong.');
      if (job.state === 'cancelled') return conflict('This job was called off; record the haul as a trip.');

      const given = Given.from(merged(asBooked(job, caller), told));
      const trip = readTrip(given, caller.today);
      const note = given.text('note', 'the note', TEXT.page);
      const load = await completeLoad(tx, this.machines, given, trip.machineId, trip.load);
      if (given.problems.length > 0) return invalid(given.problems);

      const after = { ...trip, load, jobId };
      const tripId = await this.trips.insert(tx, trailerId, after, { ...recordedBy(caller), note });
      await this.jobs.update(tx, { ...job, state: 'done' });
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'finish-job',
        subject: 'job',
        subjectId: jobId,
        trailerId,
        detail: { before: job, after: { tripId, trip: after, note } },
      });
      const { raised } = await this.reassess.trailer(tx, caller, trailerId);
      return done({ jobId, tripId, raised });
    });
  }
}

/** Back early, it ended today. */
function asBooked(job: KeptJob, caller: Caller): object {
  return {
    startedOn: job.startsOn,
    endedOn: earliest([job.endsOn, caller.today]),
    distanceKm: job.distanceKm,
    machineId: job.machineId,
    load: job.load,
  };
}
