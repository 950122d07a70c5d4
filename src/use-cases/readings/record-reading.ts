import { Injectable } from '@nestjs/common';
import type { Flag } from '../../rules/flags/flag.js';
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

export type RecordReadingInput = ReadingInput & { readonly trailerId: string };

/** Records what the hub meter showed. A lower reading must say why. */
@Injectable()
export class RecordReading {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly readings: ReadingStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(
    caller: Caller,
    input: RecordReadingInput,
  ): Promise<Outcome<{ readonly readingId: string; readonly raised: readonly Flag[] }>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const given = Given.from(input);
    const trailerId = given.needId('trailerId', 'the trailer');
    const reading = readReading(given, caller.today);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const facts = await this.trailers.findFacts(tx, trailerId);
      if (facts === null) return notFound('trailer');
      const problem = meterOrderProblem({ id: '', ...reading }, facts.readings);
      if (problem !== null) return invalid([{ field: 'shownKm', message: problem }]);
      const readingId = await this.readings.insert(tx, trailerId, reading, recordedBy(caller));
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'record-reading',
        subject: 'reading',
        subjectId: readingId,
        trailerId,
        detail: { after: reading },
      });
      const { raised } = await this.reassess.trailer(tx, caller, trailerId);
      return done({ readingId, raised });
    });
  }
}
