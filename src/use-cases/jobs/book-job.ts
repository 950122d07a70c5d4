import { Injectable } from '@nestjs/common';
import { type Fit, fit } from '../../rules/fit/fit.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { JobStore } from '../../store/job-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { type JobInput, readJob } from '../input/job-input.js';
import { isSentAgain, readSendId, type Sending } from '../input/send-id.js';
import { done, invalid, notAllowed, type Outcome } from '../outcome.js';
import { FindJobNames } from './find-job-names.js';

interface JobBooked {
  readonly jobId: string;
  /** Whether its trailer may take it; null while no trailer is chosen. */
  readonly fit: Fit | null;
}

/** Books a haul to come. A job that its trailer may not take is booked all the same, and the answer says why not. */
@Injectable()
export class BookJob {
  constructor(
    private readonly database: Database,
    private readonly jobs: JobStore,
    private readonly trailers: TrailerStore,
    private readonly names: FindJobNames,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: JobInput & Sending): Promise<Outcome<JobBooked>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const given = Given.from(input);
    const plan = readJob(given, caller.today);
    const sendId = readSendId(given, caller.yardId);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      if (plan.trailerId !== null) await this.trailers.lock(tx, plan.trailerId);
      const job = await this.names.complete(tx, given, plan);
      if (given.problems.length > 0) return invalid(given.problems);
      const kept = sendId === null ? null : await this.jobs.find(tx, sendId);
      if (kept !== null && isSentAgain(kept, { ...job, state: 'booked' })) return done({ jobId: kept.id, fit: null });
      const id = kept === null && sendId !== null ? sendId : undefined;
      const jobId = await this.jobs.insert(tx, { ...job, id, state: 'booked' }, recordedBy(caller));
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'book-job',
        subject: 'job',
        subjectId: jobId,
        trailerId: job.trailerId,
        detail: { after: job },
      });
      if (job.trailerId === null) return done({ jobId, fit: null });
      const { facts } = await this.reassess.trailer(tx, caller, job.trailerId);
      return done({ jobId, fit: fit(facts, job, caller.today) });
    });
  }
}
