import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { CheckKindStore } from '../../store/check-kind-store.js';
import { Database } from '../../store/database.js';
import { ResultStore } from '../../store/result-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type WokenYard, wakeYard } from '../assessments/wake-yard.js';
import { type Caller, may, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

/** Says that no trailer owes a kind of check any more. Its records stay; setting it again brings it back. */
@Injectable()
export class RetireCheckKind {
  constructor(
    private readonly database: Database,
    private readonly checkKinds: CheckKindStore,
    private readonly results: ResultStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: { readonly checkKindId: string }): Promise<Outcome<WokenYard>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    const given = Given.from(input);
    const checkKindId = given.needId('checkKindId', 'the check');
    if (given.problems.length > 0) return invalid(given.problems);

    const saved = await this.database.inYard(caller.yardId, async (tx) => {
      const before = await this.checkKinds.find(tx, checkKindId);
      if (before === null) return notFound('check');
      await this.checkKinds.retire(tx, checkKindId);
      await this.results.wakeAllOn(tx, caller.today);
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'retire-check-kind',
        subject: 'check-kind',
        subjectId: checkKindId,
        trailerId: null,
        detail: { before },
      });
      return done(null);
    });
    const { database, results, reassess } = this;
    return saved.ok ? done(await wakeYard({ database, results, reassess }, caller)) : saved;
  }
}
