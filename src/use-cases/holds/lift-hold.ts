import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { CheckStore } from '../../store/check-store.js';
import { Database } from '../../store/database.js';
import { HoldStore } from '../../store/hold-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export interface LiftHoldInput {
  readonly trailerId: string;
  readonly holdId: string;
  /** Why the trailer may go out again. Needed unless a recorded repair says so. */
  readonly reason?: string | null;
  /** A check that passed since the hold was put on. */
  readonly checkRecordId?: string | null;
}

/** Lets a held trailer go out again, on a recorded repair or on the word of the person who does it. */
@Injectable()
export class LiftHold {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly holds: HoldStore,
    private readonly checks: CheckStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: LiftHoldInput): Promise<Outcome<{ readonly holdId: string }>> {
    // A hold is lifted by somebody who can be asked about it, never by the service itself.
    if (!may(caller, 'shop') || caller.personId === null) return notAllowed('shop');
    const given = Given.from(input);
    const trailerId = given.needId('trailerId', 'the trailer');
    const holdId = given.needId('holdId', 'the hold');
    const reason = given.text('reason', 'why it may go out again', TEXT.line);
    const checkRecordId = given.id('checkRecordId', 'the check that shows the repair');
    if (reason === null && checkRecordId === null && !given.has('checkRecordId')) {
      given.refuse('reason', 'Say why the trailer may go out again, or name the check that shows the repair.');
    }
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const before = await this.holds.find(tx, trailerId, holdId);
      if (before === null) return notFound('hold');
      if (before.liftedOn !== null) return conflict(`This hold was lifted on ${before.liftedOn} already.`);
      const repair = checkRecordId === null ? null : await this.checks.find(tx, trailerId, checkRecordId);
      if (checkRecordId !== null && (repair?.outcome !== 'pass' || repair.doneOn < before.openedOn)) {
        given.refuse('checkRecordId', `Name a check of this trailer that passed on or after ${before.openedOn}.`);
        return invalid(given.problems);
      }
      const lift = {
        liftedOn: caller.today,
        liftedBy: caller.personId,
        liftedByName: caller.name,
        reason,
        checkRecordId,
      };
      await this.holds.lift(tx, trailerId, holdId, lift);
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'lift-hold',
        subject: 'hold',
        subjectId: holdId,
        trailerId,
        detail: { before, after: lift },
      });
      await this.reassess.trailer(tx, caller, trailerId);
      return done({ holdId });
    });
  }
}
