import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { CheckKindStore } from '../../store/check-kind-store.js';
import { Database, type YardTx } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { ResultStore } from '../../store/result-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type WokenYard, wakeYard } from '../assessments/wake-yard.js';
import { type Caller, may, signed } from '../caller.js';
import { type CheckKindInput, readCheckKind } from '../input/check-kind-input.js';
import { Given } from '../input/given.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

/** With `checkKindId` that kind is written anew, whole; without, it is a new kind. */
export type SetCheckKindInput = CheckKindInput & { readonly checkKindId?: string | null };

/** Sets a kind of check: its triggers, its sheet, who does it and who stands in. Every trailer is judged anew by it. */
@Injectable()
export class SetCheckKind {
  constructor(
    private readonly database: Database,
    private readonly checkKinds: CheckKindStore,
    private readonly members: MembershipStore,
    private readonly results: ResultStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: SetCheckKindInput): Promise<Outcome<WokenYard & { readonly checkKindId: string }>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    const given = Given.from(input);
    const asked = given.id('checkKindId', 'the check');
    const kind = readCheckKind(given);
    if (given.problems.length > 0) return invalid(given.problems);

    const saved = await this.database.inYard(caller.yardId, async (tx) => {
      const before = asked === null ? null : await this.checkKinds.find(tx, asked);
      if (asked !== null && before === null) return notFound('check');
      const sameCode = await this.checkKinds.findByCode(tx, kind.code);
      if (sameCode !== null && sameCode.id !== asked) {
        given.refuse(
          'code',
          `Another check of this yard has the code ${kind.code}; choose another, or change that one.`,
        );
      }
      await this.lookForPerson(tx, given, 'ownerPersonId', kind.ownerPersonId);
      await this.lookForPerson(tx, given, 'backupPersonId', kind.backupPersonId);
      if (given.problems.length > 0) return invalid(given.problems);
      const checkKindId = await this.checkKinds.save(tx, { ...kind, id: asked ?? undefined });
      await this.results.wakeAllOn(tx, caller.today);
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'set-check-kind',
        subject: 'check-kind',
        subjectId: checkKindId,
        trailerId: null,
        detail: { before, after: kind },
      });
      return done({ checkKindId });
    });
    if (!saved.ok) return saved;
    const { database, results, reassess } = this;
    return done({ ...saved.value, ...(await wakeYard({ database, results, reassess }, caller)) });
  }

  private async lookForPerson(tx: YardTx, given: Given, key: string, personId: string | null): Promise<void> {
    if (personId === null) return;
    const member = await this.members.find(tx, personId);
    if (member === null || member.leftOn !== null) {
      given.refuse(key, "Choose one of the yard's people, who has not left.");
    }
  }
}
