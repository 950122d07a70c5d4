import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { HoldStore } from '../../store/hold-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export interface OpenHoldInput {
  readonly trailerId: string;
  /** What is wrong, as whoever wants to take the trailer should read it. */
  readonly reason: string;
}

/** Keeps a trailer from going out. Whoever sees the fault may do it; lifting takes the shop. */
@Injectable()
export class OpenHold {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly holds: HoldStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: OpenHoldInput): Promise<Outcome<{ readonly holdId: string }>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const given = Given.from(input);
    const trailerId = given.needId('trailerId', 'the trailer');
    const reason = given.needText('reason', 'what is wrong', TEXT.line);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const facts = await this.trailers.findFacts(tx, trailerId);
      if (facts === null) return notFound('trailer');
      if (facts.trailer.status !== 'in-service') {
        return conflict(`${facts.trailer.yardNumber} is ${facts.trailer.status}; it goes nowhere.`);
      }
      const same = facts.holds.find((hold) => hold.liftedOn === null && hold.reason === reason);
      if (same !== undefined) return done({ holdId: same.id });
      const holdId = await this.holds.open(tx, trailerId, {
        openedOn: caller.today,
        reason,
        openedBy: caller.personId,
        openedByName: caller.name,
        recordedAt: caller.now,
      });
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'open-hold',
        subject: 'hold',
        subjectId: holdId,
        trailerId,
        detail: { reason },
      });
      await this.reassess.trailer(tx, caller, trailerId);
      return done({ holdId });
    });
  }
}
