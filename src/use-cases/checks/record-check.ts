import { Injectable } from '@nestjs/common';
import type { CheckRecord } from '../../rules/facts/check.js';
import type { Flag } from '../../rules/flags/flag.js';
import { AuditStore } from '../../store/audit-store.js';
import { CheckKindStore } from '../../store/check-kind-store.js';
import { CheckStore } from '../../store/check-store.js';
import { Database } from '../../store/database.js';
import { HoldStore } from '../../store/hold-store.js';
import { MembershipStore } from '../../store/membership-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { type RecordCheckInput, readCheckNotes, readCheckRecord } from '../input/check-input.js';
import { Given } from '../input/given.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { findWhoDidIt } from './find-who-did-it.js';
import { holdForSafety } from './hold-for-safety.js';

interface CheckRecorded {
  readonly checkRecordId: string;
  /** The hold this check put on the trailer. */
  readonly holdId: string | null;
  /** Records of the same check, done on that day or later, that stood before: this one is kept beside them. */
  readonly besides: readonly string[];
  readonly raised: readonly Flag[];
}

/**
 * Records a check done. A bad line that keeps people safe holds the trailer at once. A second record of another
 * person is kept too; sent twice by the same person, word for word, it stays one.
 */
@Injectable()
export class RecordCheck {
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

  async run(caller: Caller, input: RecordCheckInput): Promise<Outcome<CheckRecorded>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const named = Given.from({ trailerId: input.trailerId, checkKindId: input.checkKindId });
    const trailerId = named.needId('trailerId', 'the trailer');
    const checkKindId = named.needId('checkKindId', 'the check');
    if (named.problems.length > 0) return invalid(named.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const facts = await this.trailers.findFacts(tx, trailerId);
      if (facts === null) return notFound('trailer');
      const kind = await this.checkKinds.find(tx, checkKindId);
      if (kind === null) return notFound('check');
      const given = Given.from(input);
      given.id('trailerId', 'the trailer');
      given.id('checkKindId', 'the check');
      const record = { ...readCheckRecord(given, kind, caller.today), checkKindId };
      const { photos, ...notes } = readCheckNotes(given);
      const who = await findWhoDidIt(tx, this.members, given, caller);
      if (given.problems.length > 0) return invalid(given.problems);

      const besides = facts.checkRecords.filter(
        (other) => other.checkKindId === checkKindId && other.doneOn >= record.doneOn,
      );
      const twin = besides.find((other) => photos.length === 0 && isSame(other, { ...record, ...who }));
      if (twin !== undefined) {
        return done({ checkRecordId: twin.id, holdId: null, besides: besides.map((one) => one.id), raised: [] });
      }
      const kept = { ...record, ...who, ...notes };
      const checkRecordId = await this.checks.insert(tx, trailerId, kept, photos, recordedBy(caller));
      const holdId = await holdForSafety(tx, this.holds, caller, facts, kind, { ...kept, id: checkRecordId });
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'record-check',
        subject: 'check-record',
        subjectId: checkRecordId,
        trailerId,
        detail: { check: kind.code, after: kept, photos: photos.length, holdId },
      });
      const { raised } = await this.reassess.trailer(tx, caller, trailerId);
      return done({ checkRecordId, holdId, besides: besides.map((one) => one.id), raised });
    });
  }
}

function isSame(a: CheckRecord, b: Omit<CheckRecord, 'id' | 'costCents'>): boolean {
  return (
    a.byPersonId !== null &&
    a.byPersonId === b.byPersonId &&
    a.doneOn === b.doneOn &&
    a.outcome === b.outcome &&
    a.inspectedBy === b.inspectedBy &&
    a.proofOnTrailer === b.proofOnTrailer &&
    JSON.stringify(a.lines.map(inOneOrder)) === JSON.stringify(b.lines.map(inOneOrder))
  );
}

function inOneOrder({ code, position, result, measured }: CheckRecord['lines'][number]): readonly unknown[] {
  return [code, position, result, measured?.quantity ?? null, measured?.value ?? null];
}
