import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { JobStore } from '../../store/job-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { TripStore } from '../../store/trip-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export interface WithdrawTripInput {
  readonly trailerId: string;
  readonly tripId: string;
  readonly reason: string;
}

interface TripWithdrawn {
  readonly tripId: string;
  /** The job this trip had finished, which is booked again; null when it came from none. */
  readonly reopenedJobId: string | null;
}

/** Says that a recorded trip never happened, or was another trailer's. The record stays in the history. */
@Injectable()
export class WithdrawTrip {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly trips: TripStore,
    private readonly jobs: JobStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: WithdrawTripInput): Promise<Outcome<TripWithdrawn>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const given = Given.from(input);
    const trailerId = given.needId('trailerId', 'the trailer');
    const tripId = given.needId('tripId', 'the trip');
    const reason = given.needText('reason', 'why it is taken back', TEXT.line);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const before = await this.trips.find(tx, trailerId, tripId);
      if (before === null) return notFound('trip');
      await this.trips.withdraw(tx, trailerId, tripId, recordedBy(caller));
      const job = before.jobId === null ? null : await this.jobs.find(tx, before.jobId);
      const reopened = job?.state === 'done' ? job : null;
      if (reopened !== null) await this.jobs.update(tx, { ...reopened, state: 'booked' });
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'withdraw-trip',
        subject: 'trip',
        subjectId: tripId,
        trailerId,
        detail: { before, after: null, reason, reopenedJobId: reopened?.id ?? null },
      });
      await this.reassess.trailer(tx, caller, trailerId);
      return done({ tripId, reopenedJobId: reopened?.id ?? null });
    });
  }
}
