import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { HandoverStore } from '../../store/handover-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export interface WithdrawHandoverInput {
  readonly trailerId: string;
  readonly handoverId: string;
  readonly reason: string;
}

/**
 * Says that a handover never happened, or was written down wrong: it can then be recorded anew. A hold that a return put
 * on stays until somebody lifts it, and a tire that it put on file until somebody corrects it.
 */
@Injectable()
export class WithdrawHandover {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly handovers: HandoverStore,
    private readonly audit: AuditStore,
  ) {}

  async run(caller: Caller, input: WithdrawHandoverInput): Promise<Outcome<{ readonly handoverId: string }>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const given = Given.from(input);
    const trailerId = given.needId('trailerId', 'the trailer');
    const handoverId = given.needId('handoverId', 'the handover');
    const reason = given.needText('reason', 'why it is taken back', TEXT.line);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const before = await this.handovers.find(tx, trailerId, handoverId);
      if (before === null) return notFound('handover');
      if (before.way === 'out' && (await this.handovers.backOf(tx, trailerId, handoverId)) !== null) {
        return conflict('It came back since. Take the record of its return back first.');
      }
      const out = before.way === 'back' ? await this.handovers.outNow(tx, trailerId) : null;
      if (out !== null) return conflict(`It is with ${out.customer} since ${out.on}: that return is settled.`);
      await this.handovers.withdraw(tx, trailerId, handoverId, recordedBy(caller));
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'withdraw-handover',
        subject: 'handover',
        subjectId: handoverId,
        trailerId,
        detail: { before, reason },
      });
      return done({ handoverId });
    });
  }
}
