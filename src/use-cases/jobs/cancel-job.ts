import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { JobStore } from '../../store/job-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export interface CancelJobInput {
  readonly jobId: string;
  readonly reason?: string | null;
}

/** Calls off a booked job: its miles are no longer to come, and nobody is reminded for it. */
@Injectable()
export class CancelJob {
  constructor(
    private readonly database: Database,
    private readonly jobs: JobStore,
    private readonly trailers: TrailerStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: CancelJobInput): Promise<Outcome<{ readonly jobId: string }>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const given = Given.from(input);
    const jobId = given.needId('jobId', 'the job');
    const reason = given.text('reason', 'the reason', TEXT.line);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const first = await this.jobs.find(tx, jobId);
      if (first === null) return notFound('job');
      if (first.trailerId !== null) await this.trailers.lock(tx, first.trailerId);
      const before = (await this.jobs.find(tx, jobId)) ?? first;
      if (before.state === 'cancelled') return done({ jobId });
      if (before.state === 'done') return conflict('This job is done; take back its trip if it never happened.');
      await this.jobs.update(tx, { ...before, state: 'cancelled' });
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'cancel-job',
        subject: 'job',
        subjectId: jobId,
        trailerId: before.trailerId,
        detail: { before: { state: before.state }, after: { state: 'cancelled' }, reason },
      });
      if (before.trailerId !== null) await this.reassess.trailer(tx, caller, before.trailerId);
      return done({ jobId });
    });
  }
}
