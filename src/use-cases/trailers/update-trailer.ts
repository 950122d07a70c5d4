import { Injectable } from '@nestjs/common';
import type { Trailer } from '../../rules/facts/trailer.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database, type YardTx } from '../../store/database.js';
import { JobStore } from '../../store/job-store.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { merged } from '../input/merged.js';
import { readTrailer, type TrailerInput, type VinDoubt } from '../input/trailer-input.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export type UpdateTrailerInput = Partial<TrailerInput> & {
  readonly trailerId: string;
  readonly status?: Trailer['status'];
};

interface UpdatedTrailer {
  readonly trailerId: string;
  readonly vinDoubt: VinDoubt | null;
  /** Jobs that were booked with a trailer that has now gone; they wait for another. */
  readonly jobsWithoutTrailer: readonly string[];
}

const STATUSES = ['in-service', 'sold', 'scrapped'] as const satisfies readonly Trailer['status'][];

/**
 * Changes what is known of a trailer as a thing owned; fields left out stay. Sold or scrapped, it is reminded of no
 * more, its history stays, and its coming jobs wait for another trailer.
 */
@Injectable()
export class UpdateTrailer {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly jobs: JobStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: UpdateTrailerInput): Promise<Outcome<UpdatedTrailer>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const { trailerId: asked, status: newStatus, ...changes } = input;
    const given = Given.from({ trailerId: asked, status: newStatus });
    const trailerId = given.needId('trailerId', 'the trailer');
    const status = given.choice('status', 'whether it is in service', STATUSES);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const before = await this.trailers.find(tx, trailerId);
      if (before === null) return notFound('trailer');
      const goes = (status ?? before.status) !== before.status;
      if (goes && !may(caller, 'owner')) return notAllowed('owner');

      const { id: _id, status: _status, ...known } = before;
      const whole = Given.from(merged(known, changes));
      const { trailer, vinDoubt } = readTrailer(whole, caller.today);
      // Read above; asked for here too, so that it is among the names told to whoever misspells one.
      whole.has('status');
      await this.trailers.holdNumber(tx, trailer.yardNumber);
      const taken = await this.trailers.findByNumber(tx, trailer.yardNumber);
      if (taken !== null && taken.id !== trailerId) {
        whole.refuse(
          'yardNumber',
          `Another trailer of this yard is ${trailer.yardNumber}; enter a number that is free.`,
        );
      }
      if (whole.problems.length > 0) return invalid(whole.problems);

      const after: KeptTrailer = { ...trailer, id: trailerId, status: status ?? before.status };
      await this.trailers.update(tx, trailerId, after);
      const jobsWithoutTrailer = goes && after.status !== 'in-service' ? await this.freeJobs(tx, caller, after) : [];
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'update-trailer',
        subject: 'trailer',
        subjectId: trailerId,
        trailerId,
        detail: { before, after, jobsWithoutTrailer },
      });
      await this.reassess.trailer(tx, caller, trailerId);
      return done({ trailerId, vinDoubt, jobsWithoutTrailer });
    });
  }

  private async freeJobs(tx: YardTx, caller: Caller, trailer: KeptTrailer): Promise<readonly string[]> {
    const booked = await this.jobs.list(tx, { trailerId: trailer.id, state: 'booked', from: caller.today });
    for (const job of booked) await this.jobs.update(tx, { ...job, trailerId: null });
    return booked.map((job) => job.id);
  }
}
