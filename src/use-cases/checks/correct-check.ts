import { Injectable } from '@nestjs/common';
import type { CheckKind } from '../../rules/facts/check.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import type { Flag } from '../../rules/flags/flag.js';
import { AuditStore } from '../../store/audit-store.js';
import { CheckKindStore } from '../../store/check-kind-store.js';
import { CheckStore } from '../../store/check-store.js';
import { Database, type YardTx } from '../../store/database.js';
import { HoldStore } from '../../store/hold-store.js';
import { MembershipStore } from '../../store/membership-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { type CheckInput, readCheckNotes, readCheckRecord } from '../input/check-input.js';
import { Given } from '../input/given.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { findWhoDidIt } from './find-who-did-it.js';
import { holdForSafety } from './hold-for-safety.js';

export type CorrectCheckInput =
  | (CheckInput & { readonly checkRecordId: string })
  | { readonly trailerId: string; readonly checkRecordId: string; readonly neverDone: true };

interface CheckCorrected {
  /** Null when the record was taken back. */
  readonly checkRecordId: string | null;
  readonly holdId: string | null;
  readonly raised: readonly Flag[];
}

/**
 * Says what a record of a check should have been, or that it was never done. A hold that the mistaken record put on
 * stays until somebody lifts it: a correction alone shows no repair.
 */
@Injectable()
export class CorrectCheck {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly checkKinds: CheckKindStore,
    private readonly checks: CheckStore,
    private readonly holds: HoldStore,
    private readonly members: MembershipStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: CorrectCheckInput): Promise<Outcome<CheckCorrected>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const named = Given.from({
      trailerId: input.trailerId,
      checkRecordId: input.checkRecordId,
      neverDone: 'neverDone' in input ? input.neverDone : null,
    });
    const trailerId = named.needId('trailerId', 'the trailer');
    const correctsId = named.needId('checkRecordId', 'the record to mend');
    const neverDone = named.flag('neverDone', 'was it never done?') === true;
    if (named.problems.length > 0) return invalid(named.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const facts = await this.trailers.findFacts(tx, trailerId);
      const before = facts?.checkRecords.find((record) => record.id === correctsId);
      if (facts === null || before === undefined) return notFound('check record');
      const kind = await this.checkKinds.find(tx, before.checkKindId);
      if (kind === null) return notFound('check');

      const mended = neverDone ? null : await this.mend(tx, caller, input, facts, kind, correctsId);
      if (mended !== null && !mended.ok) return mended;
      if (neverDone) await this.checks.withdraw(tx, trailerId, correctsId, recordedBy(caller));
      const { checkRecordId = null, holdId = null, after = null } = mended?.value ?? {};
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'correct-check',
        subject: 'check-record',
        subjectId: checkRecordId ?? correctsId,
        trailerId,
        detail: { check: kind.code, before, after, holdId },
      });
      const { raised } = await this.reassess.trailer(tx, caller, trailerId);
      return done({ checkRecordId, holdId, raised });
    });
  }

  private async mend(
    tx: YardTx,
    caller: Caller,
    input: CorrectCheckInput,
    facts: TrailerFacts,
    kind: CheckKind,
    correctsId: string,
  ): Promise<Outcome<{ checkRecordId: string; holdId: string | null; after: object }>> {
    const given = Given.from(input);
    given.id('trailerId', 'the trailer');
    given.id('checkRecordId', 'the record to mend');
    const record = { ...readCheckRecord(given, kind, caller.today), checkKindId: kind.id };
    const { pictures, ...notes } = readCheckNotes(given);
    const who = await findWhoDidIt(tx, this.members, given, caller);
    if (given.problems.length > 0) return invalid(given.problems);
    const after = { ...record, ...who, ...notes };
    const recorded = { ...recordedBy(caller), correctsId };
    const checkRecordId = await this.checks.insert(tx, facts.trailer.id, after, pictures, recorded);
    const holdId = await holdForSafety(tx, this.holds, caller, facts, kind, { ...after, id: checkRecordId });
    return done({ checkRecordId, holdId, after });
  }
}
