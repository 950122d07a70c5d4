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
import { type FittedPart, type PartInput, readPart, readRemovedFor } from '../input/part-input.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export type FitPartInput = PartInput & {
  readonly trailerId: string;
  /** Why the part came off whose place this one took. */
  readonly replacedFor?: string | null;
};

interface PartFitted {
  readonly partId: string;
  /** The part that was in this place and came off on the day this one was fitted. */
  readonly removedPartId: string | null;
  readonly raised: readonly Flag[];
}

/** Of these a trailer has one at a time in each place; jacks and lamps may be several. */
const ONE_IN_A_PLACE: ReadonlySet<Part['kind']> = new Set([
  'tire',
  'hub-bearings',
  'brake-set',
  'deck',
  'coupler',
  'battery',
]);

/** Notes what was fitted, and takes off what was in that place. */
@Injectable()
export class FitPart {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly parts: PartStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: FitPartInput): Promise<Outcome<PartFitted>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const named = Given.from({ trailerId: input.trailerId });
    const trailerId = named.needId('trailerId', 'the trailer');
    if (named.problems.length > 0) return invalid(named.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const facts = await this.trailers.findFacts(tx, trailerId);
      if (facts === null) return notFound('trailer');
      const given = Given.from(input);
      given.id('trailerId', 'the trailer');
      const part = readPart(given, buildOn(facts.builds, caller.today), caller.today);
      const inPlace = standsInPlace(facts.parts, part);
      if (inPlace !== null && (part.fittedOn === null || (inPlace.fittedOn ?? '') > part.fittedOn)) {
        given.refuse('fittedOn', whenToSay(part, inPlace));
      }
      const replacedFor = readRemovedFor(given, 'replacedFor');
      if (replacedFor !== null && inPlace === null) {
        given.refuse('replacedFor', 'Leave the reason out: nothing that we know of came off for this part.');
      }
      if (given.problems.length > 0) return invalid(given.problems);

      if (inPlace !== null && part.fittedOn !== null) {
        await this.parts.remove(tx, trailerId, inPlace.id, { on: part.fittedOn, why: replacedFor });
      }
      const partId = await this.parts.insert(
        tx,
        trailerId,
        { ...part, removedOn: null, removedFor: null },
        recordedBy(caller),
      );
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'fit-part',
        subject: 'part',
        subjectId: partId,
        trailerId,
        detail: { before: inPlace, after: part },
      });
      const { raised } = await this.reassess.trailer(tx, caller, trailerId);
      return done({ partId, removedPartId: inPlace?.id ?? null, raised });
    });
  }
}

function standsInPlace(parts: readonly Part[], part: FittedPart): Part | null {
  if (!ONE_IN_A_PLACE.has(part.kind)) return null;
  return (
    parts.find((one) => one.kind === part.kind && one.position === part.position && one.removedOn === null) ?? null
  );
}

function whenToSay(part: FittedPart, inPlace: Part): string {
  const place = part.position === null ? 'there' : `at ${part.position}`;
  return part.fittedOn === null
    ? `A ${part.kind} is ${place} already: enter the day this one took its place, or take that one off first.`
    : `The ${part.kind} ${place} was fitted later, on ${inPlace.fittedOn}: enter a day on or after it, or correct that one.`;
}
