import { Injectable } from '@nestjs/common';
import { buildOn } from '../../rules/facts/build-on.js';
import type { Part } from '../../rules/facts/part.js';
import type { Flag } from '../../rules/flags/flag.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { PartStore } from '../../store/part-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { type PartInput, readPart, readRemovedFor } from '../input/part-input.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export type CorrectPartInput =
  | (PartInput & {
      readonly trailerId: string;
      readonly partId: string;
      readonly removedOn?: string | null;
      readonly removedFor?: string | null;
    })
  | { readonly trailerId: string; readonly partId: string; readonly neverFitted: true };

interface PartCorrected {
  /** Null when the part was taken back. */
  readonly partId: string | null;
  readonly raised: readonly Flag[];
}

/** Says what the record of a part should have been: other marks or days, or that it was never fitted. */
@Injectable()
export class CorrectPart {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly parts: PartStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: CorrectPartInput): Promise<Outcome<PartCorrected>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const named = Given.from({ trailerId: input.trailerId, partId: input.partId });
    const trailerId = named.needId('trailerId', 'the trailer');
    const partId = named.needId('partId', 'the part');
    if (named.problems.length > 0) return invalid(named.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const facts = await this.trailers.findFacts(tx, trailerId);
      if (facts === null) return notFound('trailer');
      const before = facts.parts.find((part) => part.id === partId);
      if (before === undefined) return notFound('part');

      let after: Omit<Part, 'id'> | null = null;
      let correctedId: string | null = null;
      if ('neverFitted' in input && input.neverFitted === true) {
        await this.parts.withdraw(tx, trailerId, partId, recordedBy(caller));
      } else {
        const given = Given.from(input);
        given.id('trailerId', 'the trailer');
        given.id('partId', 'the part');
        const part = readPart(given, buildOn(facts.builds, caller.today), caller.today);
        const removedOn = given.date('removedOn', 'the day it came off', {
          notBefore: part.fittedOn,
          notBeforeIs: 'the day it was fitted',
          notAfter: caller.today,
          notAfterIs: 'today',
        });
        const removedFor = readRemovedFor(given, 'removedFor');
        if (removedFor !== null && removedOn === null) {
          given.refuse('removedFor', 'Enter the day it came off too, or leave the reason out.');
        }
        if (given.problems.length > 0) return invalid(given.problems);
        after = { ...part, removedOn, removedFor };
        correctedId = await this.parts.insert(
          tx,
          trailerId,
          { ...part, removedOn, removedFor },
          {
            ...recordedBy(caller),
            correctsId: partId,
          },
        );
      }
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'correct-part',
        subject: 'part',
        subjectId: partId,
        trailerId,
        detail: { before, after },
      });
      const { raised } = await this.reassess.trailer(tx, caller, trailerId);
      return done({ partId: correctedId, raised });
    });
  }
}
