import { Injectable } from '@nestjs/common';
import type { CheckKind, CheckRecord } from '../../rules/facts/check.js';
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
import { type RecordCheckInput, readCheckNotes, readCheckRecord } from '../input/check-input.js';
import { Given } from '../input/given.js';
import { isSentAgain, readSendId } from '../input/send-id.js';
import { readPaintedNumber, readSeenSheet } from '../input/sheet-input.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { type ChangedSince, changedSince } from './changed-since.js';
import { findWhoDidIt } from './find-who-did-it.js';
import { holdForSafety } from './hold-for-safety.js';

const SENT_OTHERWISE =
  'This sheet was recorded before and said something else then. If both are right, send it once more: it becomes a record of its own.';

interface CheckRecorded {
  readonly checkRecordId: string;
  /** The hold this check put on the trailer. */
  readonly holdId: string | null;
  /** Records of the same check, done on that day or later, that stood before: this one is kept beside them. */
  readonly besides: readonly string[];
  /** What had changed since the sheet was opened, when the sending said what it had seen. */
  readonly changed: readonly ChangedSince[];
  /** It had come in before, under the same send id; nothing was recorded anew. */
  readonly sentAgain: boolean;
  readonly raised: readonly Flag[];
}

/**
 * Records a check done. A bad line that keeps people safe holds the trailer at once. A second record of another
 * person is kept too. A sheet with a send id is recorded once however often it arrives, also after somebody has mended
 * or taken back what it became; one without is held to be the same when the same person says it word for word.
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
      const { pictures, ...notes } = readCheckNotes(given);
      const seen = readSeenSheet(given);
      readPaintedNumber(given, facts.trailer, seen);
      const sendId = readSendId(given, caller.yardId);
      const who = await findWhoDidIt(tx, this.members, given, caller);
      if (given.problems.length > 0) return invalid(given.problems);
      const changed = changedSince(seen, facts, kind, caller.today);
      const sheet = { facts, kind, kept: { ...record, ...who, ...notes }, pictures, sendId, changed };
      return (await this.sentBefore(tx, sheet)) ?? done(await this.recordAnew(tx, caller, sheet));
    });
  }

  /** What became of this sheet when it came in before; null when it has not. */
  private async sentBefore(tx: YardTx, sheet: Sheet): Promise<Outcome<CheckRecorded> | null> {
    const { kept, pictures, sendId } = sheet;
    if (sendId === null) {
      const twin = besides(sheet).find((other) => pictures.length === 0 && isSame(other, kept));
      return twin === undefined ? null : done(again(sheet, twin.id, null));
    }
    const sent = await this.checks.findSent(tx, sendId);
    if (sent === null) return null;
    return saysTheSame(sent, sheet) ? done(again(sheet, sent.record.id, sent.holdId)) : conflict(SENT_OTHERWISE);
  }

  private async recordAnew(tx: YardTx, caller: Caller, sheet: Sheet): Promise<CheckRecorded> {
    const { facts, kind, kept, pictures, sendId, changed } = sheet;
    const trailerId = facts.trailer.id;
    const fact = { ...kept, id: sendId ?? undefined };
    const checkRecordId = await this.checks.insert(tx, trailerId, fact, pictures, recordedBy(caller));
    const holdId = await holdForSafety(tx, this.holds, caller, facts, kind, { ...kept, id: checkRecordId });
    await this.audit.append(tx, {
      ...signed(caller),
      at: caller.now,
      action: 'record-check',
      subject: 'check-record',
      subjectId: checkRecordId,
      trailerId,
      detail: { check: kind.code, after: kept, photos: pictures.length, holdId },
    });
    const { raised } = await this.reassess.trailer(tx, caller, trailerId);
    const others = besides(sheet).map((one) => one.id);
    return { checkRecordId, holdId, besides: others, changed, sentAgain: false, raised };
  }
}

/** A sheet read, and what it is laid beside. */
interface Sheet {
  readonly facts: TrailerFacts;
  readonly kind: CheckKind;
  readonly kept: Omit<CheckRecord, 'id'> & {
    readonly byName: string;
    readonly note: string | null;
    readonly signedName: string | null;
  };
  readonly pictures: ReturnType<typeof readCheckNotes>['pictures'];
  readonly sendId: string | null;
  readonly changed: readonly ChangedSince[];
}

function besides({ facts, kind, kept }: Sheet): readonly CheckRecord[] {
  return facts.checkRecords.filter((other) => other.checkKindId === kind.id && other.doneOn >= kept.doneOn);
}

/** The answer to a sheet that is recorded already: as it was, and nothing of itself among what has changed. */
function again(sheet: Sheet, checkRecordId: string, holdId: string | null): CheckRecorded {
  const changed = sheet.changed.filter(
    (one) =>
      !(one.kind === 'checked' && one.checkRecordId === checkRecordId) &&
      !(one.kind === 'held' && one.holdId === holdId),
  );
  const others = besides(sheet).map((one) => one.id);
  return { checkRecordId, holdId, besides: others, changed, sentAgain: true, raised: [] };
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

/** Whether what came in under a send id before is what comes in now. */
function saysTheSame(sent: NonNullable<Awaited<ReturnType<CheckStore['findSent']>>>, now: Sheet): boolean {
  const { byName, note, signedName, ...record } = now.kept;
  return (
    sent.trailerId === now.facts.trailer.id &&
    sent.byName === byName &&
    sent.note === note &&
    sent.signedName === signedName &&
    sent.pictures === now.pictures.length &&
    isSentAgain(sent.record, record)
  );
}
