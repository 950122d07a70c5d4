import { Injectable } from '@nestjs/common';
import type { MeterReading } from '../../rules/facts/use.js';
import type { Flag } from '../../rules/flags/flag.js';
import { byTaken } from '../../rules/history/trailer-on.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { ReadingStore } from '../../store/reading-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { type ReadingInput, readReading } from '../input/reading-input.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { meterOrderProblem } from './meter-order.js';

export type CorrectReadingInput =
  | (ReadingInput & { readonly trailerId: string; readonly readingId: string })
  | { readonly trailerId: string; readonly readingId: string; readonly neverTaken: true };

interface ReadingCorrected {
  /** Null when the reading was taken back. */
  readonly readingId: string | null;
  readonly raised: readonly Flag[];
}

/** Says what a reading should have been, or that it was never taken. The mistaken one stays in the history. */
@Injectable()
export class CorrectReading {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly readings: ReadingStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: CorrectReadingInput): Promise<Outcome<ReadingCorrected>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const given = Given.from(input);
    const trailerId = given.needId('trailerId', 'the trailer');
    const correctsId = given.needId('readingId', 'the reading to mend');
    const neverTaken = given.flag('neverTaken', 'was it never taken?') === true;
    const after = neverTaken ? null : readReading(given, caller.today);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const facts = await this.trailers.findFacts(tx, trailerId);
      const before = facts?.readings.find((reading) => reading.id === correctsId);
      if (facts === null || before === undefined) return notFound('reading');
      const others = facts.readings.filter((reading) => reading.id !== correctsId);
      const problem = after === null ? withoutProblem(before, others) : meterOrderProblem({ id: '', ...after }, others);
      if (problem !== null) {
        return invalid([{ field: after === null ? 'neverTaken' : 'shownKm', message: problem }]);
      }
      const recorded = recordedBy(caller);
      let readingId: string | null = null;
      if (after === null) await this.readings.withdraw(tx, trailerId, correctsId, recorded);
      else readingId = await this.readings.insert(tx, trailerId, after, { ...recorded, correctsId });
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'correct-reading',
        subject: 'reading',
        subjectId: readingId ?? correctsId,
        trailerId,
        detail: { before, after },
      });
      const { raised } = await this.reassess.trailer(tx, caller, trailerId);
      return done({ readingId, raised });
    });
  }
}

/** Without the reading that told of a new or rolled-over meter, the one after it may run backwards. */
function withoutProblem(gone: MeterReading, others: readonly MeterReading[]): string | null {
  const inOrder = [...others, gone].sort(byTaken);
  const next = inOrder[inOrder.indexOf(gone) + 1];
  if (next === undefined) return null;
  const rest = others.filter((other) => other !== next);
  return meterOrderProblem(next, rest) === null
    ? null
    : `The reading of ${next.takenOn} would not fit any more: correct that one first, or mend this one instead.`;
}
