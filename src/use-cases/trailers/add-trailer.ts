import { Injectable } from '@nestjs/common';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { Contradiction } from '../../rules/trailer/contradictions.js';
import { AuditStore } from '../../store/audit-store.js';
import { BuildStore } from '../../store/build-store.js';
import { Database } from '../../store/database.js';
import { PartStore } from '../../store/part-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { type BuildSheetInput, readBuildSheet } from '../input/build-sheet-input.js';
import { Given } from '../input/given.js';
import { type FittedPart, type PartInput, readPart } from '../input/part-input.js';
import { readTrailer, type TrailerInput, type VinDoubt } from '../input/trailer-input.js';
import { done, invalid, notAllowed, type Outcome } from '../outcome.js';

export interface AddTrailerInput extends TrailerInput {
  /** Left out: nobody knows yet what it is made of. */
  readonly build?: BuildSheetInput;
  /** The day from which it was built so; the day it was bought, or today, when left out. */
  readonly builtSince?: string | null;
  readonly parts?: readonly PartInput[];
}

interface AddedTrailer {
  readonly trailerId: string;
  /** What cannot be right in the build as entered. Said, not blocking. */
  readonly contradictions: readonly Contradiction[];
  readonly vinDoubt: VinDoubt | null;
  /** What nobody has said yet, and what each keeps us from working out. */
  readonly unknowns: readonly { readonly lacks: string; readonly stops: string }[];
}

/** Ten axles of dual wheels and a spare, and every other kind of part once or twice. */
const MOST_PARTS = 60;

/** Enters a trailer: what it is, what it is made of, what is fitted to it. Anything unknown may be left out. */
@Injectable()
export class AddTrailer {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly builds: BuildStore,
    private readonly parts: PartStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: AddTrailerInput): Promise<Outcome<AddedTrailer>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const given = Given.from(input);
    const { trailer, vinDoubt } = readTrailer(given, caller.today);
    const build = {
      ...readBuildSheet(given.object('build')),
      effectiveFrom:
        given.date('builtSince', 'the day since which it is built so', {
          notAfter: caller.today,
          notAfterIs: 'today',
        }) ??
        trailer.boughtOn ??
        caller.today,
    };
    const parts = readParts(given, { ...build, id: '' }, caller);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.holdNumber(tx, trailer.yardNumber);
      if ((await this.trailers.findByNumber(tx, trailer.yardNumber)) !== null) {
        return invalid([
          {
            field: 'yardNumber',
            message: `Another trailer of this yard is ${trailer.yardNumber}; enter a number that is free.`,
          },
        ]);
      }
      const recorded = recordedBy(caller);
      const trailerId = await this.trailers.insert(tx, { ...trailer, status: 'in-service' });
      await this.builds.insert(tx, trailerId, build, recorded);
      for (const part of parts)
        await this.parts.insert(tx, trailerId, { ...part, removedOn: null, removedFor: null }, recorded);
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'add-trailer',
        subject: 'trailer',
        subjectId: trailerId,
        trailerId,
        detail: { after: { trailer, build, parts } },
      });
      const { assessment } = await this.reassess.trailer(tx, caller, trailerId);
      return done({
        trailerId,
        contradictions: assessment.contradictions,
        vinDoubt,
        unknowns: assessment.unknowns,
      });
    });
  }
}

function readParts(given: Given, build: BuildSheet, caller: Caller): readonly FittedPart[] {
  const parts = given.list('parts', 'parts', MOST_PARTS).map((part) => readPart(part, build, caller.today));
  parts.forEach((part, place) => {
    const before = parts.findIndex((other) => other.kind === part.kind && other.position === part.position);
    if (part.position !== null && before !== place) {
      given.refuse(
        `parts[${place}].position`,
        `Give each position one ${part.kind}; there are two at ${part.position}.`,
      );
    }
  });
  return parts;
}
