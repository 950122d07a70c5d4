import { Injectable } from '@nestjs/common';
import type { Flag } from '../../rules/flags/flag.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { PartStore } from '../../store/part-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { readRemovedFor } from '../input/part-input.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export interface RemovePartInput {
  readonly trailerId: string;
  readonly partId: string;
  readonly removedOn: string;
  readonly removedFor?: string | null;
}

/** Notes that a part came off and nothing took its place yet. */
@Injectable()
export class RemovePart {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly parts: PartStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(
    caller: Caller,
    input: RemovePartInput,
  ): Promise<Outcome<{ readonly partId: string; readonly raised: readonly Flag[] }>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const given = Given.from(input);
    const trailerId = given.needId('trailerId', 'the trailer');
    const partId = given.needId('partId', 'the part');
    const removedOn = given.needDate('removedOn', 'the day it came off', {
      notAfter: caller.today,
      notAfterIs: 'today',
    });
    const removedFor = readRemovedFor(given, 'removedFor');
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const before = await this.parts.find(tx, trailerId, partId);
      if (before === null) return notFound('part');
      if (before.removedOn !== null) return conflict(`It came off on ${before.removedOn} already.`);
      if (before.fittedOn !== null && removedOn < before.fittedOn) {
        given.refuse('removedOn', `Enter a day on or after ${before.fittedOn}, when it was fitted.`);
        return invalid(given.problems);
      }
      await this.parts.remove(tx, trailerId, partId, { on: removedOn, why: removedFor });
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'remove-part',
        subject: 'part',
        subjectId: partId,
        trailerId,
        detail: { before, after: { ...before, removedOn, removedFor } },
      });
      const { raised } = await this.reassess.trailer(tx, caller, trailerId);
      return done({ partId, raised });
    });
  }
}
