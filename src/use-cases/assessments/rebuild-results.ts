import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { type Caller, may, signed } from '../caller.js';
import { done, notAllowed, type Outcome } from '../outcome.js';
import { Reassess } from './reassess.js';

const BATCH = 100;

/**
 * Throws away what is kept about every trailer of the yard and works it out again from the facts, a batch at a time,
 * so that nobody ever finds the yard without results. A yard whose results were right reads the same afterwards.
 */
@Injectable()
export class RebuildResults {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller): Promise<Outcome<{ readonly rebuilt: number }>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    const trailers = await this.database.inYard(caller.yardId, (tx) => this.trailers.list(tx));
    let rebuilt = 0;
    for (let start = 0; start < trailers.length; start += BATCH) {
      const ids = trailers.slice(start, start + BATCH).map((trailer) => trailer.id);
      rebuilt += await this.database.inYard(caller.yardId, (tx) => this.reassess.each(tx, caller, ids));
    }
    await this.database.inYard(caller.yardId, (tx) =>
      this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'rebuild-results',
        subject: 'yard',
        subjectId: caller.yardId,
        trailerId: null,
        detail: { rebuilt },
      }),
    );
    return done({ rebuilt });
  }
}
