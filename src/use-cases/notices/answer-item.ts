import { Injectable } from '@nestjs/common';
import { Letterhead } from '../../mail/letterhead.js';
import { addDays, type CivilDate, parseCivilDate } from '../../rules/calendar/civil-date.js';
import type { CheckKind } from '../../rules/facts/check.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import type { Job } from '../../rules/facts/use.js';
import type { LetterItem } from '../../rules/notice/plan-letters.js';
import { canPutOff } from '../../rules/notice/put-off.js';
import { AuditStore } from '../../store/audit-store.js';
import { CheckStore } from '../../store/check-store.js';
import { Database, type YardTx } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { NoticeStore } from '../../store/notice-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { YardStore } from '../../store/yard-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { writeLettersOfToday } from './write-letters.js';

export interface ItemAnswer {
  readonly itemKey: string;
  /** `done` is today; null when nothing was chosen. A check with lines to tick or photos to take is recorded on its sheet instead. */
  readonly answer: 'done' | 'already-done' | 'later' | 'not-mine' | null;
  /** For `later`: the day to be told again. */
  readonly until?: CivilDate | null;
  /** For `already-done`: the day it was done. */
  readonly doneOn?: CivilDate | null;
  readonly reason?: string | null;
}

export interface AnsweredItem {
  readonly itemKey: string;
  readonly checkRecordId: string | null;
}

/** The checks a letter asks for; a gate brief or a stop is read, not answered. */
type DueItem = Extract<LetterItem, { kind: 'due-soon' | 'overdue' }>;

/**
 * Takes somebody's answer to something a letter asked for. Whoever answers, it holds for all: a check done moves the
 * due date everywhere at once. A second `done` of another person is kept in the trailer's history beside the first.
 */
@Injectable()
export class AnswerItem {
  constructor(
    private readonly database: Database,
    private readonly notices: NoticeStore,
    private readonly members: MembershipStore,
    private readonly trailers: TrailerStore,
    private readonly checks: CheckStore,
    private readonly yards: YardStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
    private readonly letterhead: Letterhead,
  ) {}

  async run(caller: Caller, input: ItemAnswer): Promise<Outcome<AnsweredItem>> {
    const { personId } = caller;
    if (!may(caller, 'hand') || personId === null) return notAllowed('hand');
    const given = Given.from({ reason: input.reason });
    const reason = given.text('reason', 'why it waits', TEXT.line);
    if (given.problems.length > 0) return invalid(given.problems);
    return this.database.inYard(caller.yardId, async (tx) => {
      const told = (await this.notices.findItems(tx, input.itemKey))[0];
      if (told === undefined) return notFound('notice item');
      const { item } = told;
      if (item.kind !== 'due-soon' && item.kind !== 'overdue') {
        return conflict('Only a check can be answered. A stop is lifted by the repair, a gate brief by its checks.');
      }
      await this.trailers.lock(tx, item.trailerId);
      const facts = await this.trailers.findFacts(tx, item.trailerId);
      const kind = facts?.checkKinds.find(({ id }) => id === item.due.checkKindId);
      if (facts === null || kind === undefined) return notFound('check of this trailer');
      switch (input.answer) {
        case null:
          return invalid([{ field: 'answer', message: 'Choose an answer: done, already done, later, or not mine' }]);
        case 'later':
          return this.later(tx, caller, personId, { ...input, reason }, facts, kind);
        case 'not-mine':
          return this.notMine(tx, caller, personId, item);
        case 'done':
          return this.doneOn(tx, caller, personId, { answer: 'done', reason }, item, caller.today);
        case 'already-done': {
          const doneOn = parseCivilDate(input.doneOn ?? '');
          if (doneOn === null || doneOn > caller.today) {
            return invalid([{ field: 'doneOn', message: 'Give the day it was done, today or before, as YYYY-MM-DD' }]);
          }
          return this.doneOn(tx, caller, personId, { answer: 'already-done', reason }, item, doneOn);
        }
      }
    });
  }

  private async later(
    tx: YardTx,
    caller: Caller,
    personId: string,
    input: ItemAnswer,
    facts: TrailerFacts,
    kind: CheckKind,
  ): Promise<Outcome<AnsweredItem>> {
    const reason = input.reason ?? '';
    const until = parseCivilDate(input.until ?? '');
    const tomorrow = addDays(caller.today, 1);
    const next = nextJob(facts.jobs, caller.today);
    const because = `${facts.trailer.yardNumber} goes to ${next?.name} on ${next?.startsOn}, and someone can be hurt if it is left out`;
    if (canPutOff(kind, tomorrow, next).kind === 'refused')
      return conflict(`${kind.name} cannot be put off: ${because}.`);
    const wanted = canPutOff(kind, until ?? tomorrow, next);
    if (wanted.kind === 'refused') {
      return invalid([{ field: 'until', message: `Put it off to ${wanted.latest} at the latest: ${because}` }]);
    }
    const problems = [
      ...(until === null || until <= caller.today
        ? [{ field: 'until', message: `Give the day to be told again, ${tomorrow} or later` }]
        : []),
      ...(reason === '' ? [{ field: 'reason', message: 'Say in a few words why it waits' }] : []),
    ];
    if (problems.length > 0) return invalid(problems);
    const answer = { itemKey: input.itemKey, answer: 'later' as const };
    await this.keep(tx, caller, personId, answer, { trailerId: facts.trailer.id, until, reason, checkRecordId: null });
    return done({ itemKey: input.itemKey, checkRecordId: null });
  }

  /** It goes to the backup and the owner hears of it: the rules read the answer when the next letters are planned. */
  private async notMine(tx: YardTx, caller: Caller, personId: string, item: DueItem): Promise<Outcome<AnsweredItem>> {
    await this.keep(
      tx,
      caller,
      personId,
      { itemKey: item.key, answer: 'not-mine' },
      { trailerId: item.trailerId, until: null, reason: null, checkRecordId: null },
    );
    if ((await this.notices.plannedOn(tx)) === caller.today) {
      const { notices, members, trailers, letterhead } = this;
      const needs = { notices, members, trailers, letterhead };
      await writeLettersOfToday(tx, needs, caller, await this.yards.get(tx));
    }
    return done({ itemKey: item.key, checkRecordId: null });
  }

  private async doneOn(
    tx: YardTx,
    caller: Caller,
    personId: string,
    { answer, reason }: { readonly answer: 'done' | 'already-done'; readonly reason: string | null },
    item: DueItem,
    doneOn: CivilDate,
  ): Promise<Outcome<AnsweredItem>> {
    const checkRecordId = await this.checks.insert(
      tx,
      item.trailerId,
      {
        checkKindId: item.due.checkKindId,
        doneOn,
        outcome: 'pass',
        byPersonId: personId,
        byName: caller.name,
        lines: [],
        inspectedBy: null,
        proofOnTrailer: null,
        note: reason,
      },
      [],
      recordedBy(caller),
    );
    const kept = { trailerId: item.trailerId, until: null, reason, checkRecordId };
    await this.keep(tx, caller, personId, { itemKey: item.key, answer }, kept);
    await this.reassess.trailer(tx, caller, item.trailerId);
    return done({ itemKey: item.key, checkRecordId });
  }

  private async keep(
    tx: YardTx,
    caller: Caller,
    personId: string,
    { itemKey, answer }: { readonly itemKey: string; readonly answer: NonNullable<ItemAnswer['answer']> },
    kept: {
      readonly trailerId: string;
      readonly until: CivilDate | null;
      readonly reason: string | null;
      readonly checkRecordId: string | null;
    },
  ): Promise<void> {
    const { trailerId, until, reason, checkRecordId } = kept;
    await this.notices.insertAnswer(tx, {
      itemKey,
      personId,
      answer,
      until,
      reason,
      checkRecordId,
      answeredOn: caller.today,
    });
    await this.audit.append(tx, {
      ...signed(caller),
      at: caller.now,
      action: 'answer-item',
      subject: 'notice-item',
      subjectId: null,
      trailerId,
      detail: { itemKey, answer, until, reason, checkRecordId },
    });
  }
}

function nextJob(jobs: readonly Job[], today: CivilDate): Job | null {
  const coming = jobs.filter((job) => job.state === 'booked' && job.endsOn >= today);
  return coming.reduce<Job | null>(
    (first, job) => (first === null || job.startsOn < first.startsOn ? job : first),
    null,
  );
}
