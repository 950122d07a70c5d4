import { Injectable } from '@nestjs/common';
import { ballSize } from '../../mail/words/show.js';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { buildOn } from '../../rules/facts/build-on.js';
import type { Handover } from '../../rules/facts/handover.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import type { Flag } from '../../rules/flags/flag.js';
import { type TakenBack, takeBack } from '../../rules/handover/take-back.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database, type YardTx } from '../../store/database.js';
import { HandoverStore } from '../../store/handover-store.js';
import { HoldStore } from '../../store/hold-store.js';
import { PartStore } from '../../store/part-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { RankYard } from '../assessments/rank-yard.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { type HandoverInput, readPhotosOf, readSeen, readSignature, type SeenNow } from '../input/handover-input.js';
import { readSendId, type Sending } from '../input/send-id.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { fitSwappedTires, type SwappedTire, tiresToFit } from './fit-swapped-tires.js';
import { holdForChanges } from './hold-for-changes.js';
import { type JobAtRisk, nextAtRisk } from './next-at-risk.js';
import { saysTheSame } from './says-the-same.js';

export type TakeBackInput = HandoverInput &
  Sending & {
    /** Where the yard changed the ball on the customer's mount: whether theirs is back on it. */
    readonly ballBack?: boolean | null;
  };

interface TakenBackAndKept {
  readonly handoverId: string;
  readonly taken: TakenBack;
  /** The hold that what changed put on the trailer. */
  readonly holdId: string | null;
  /** Tires put on file in place of those that went out. */
  readonly fittedPartIds: readonly string[];
  readonly atRisk: JobAtRisk | null;
  readonly raised: readonly Flag[];
}

/**
 * Takes a hired trailer back: holds what is seen against what went out. A tire that was swapped is the tire on that
 * wheel from this day, what can hurt someone puts the trailer on hold, and the next booking is looked at, all at once.
 */
@Injectable()
export class TakeBack {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly handovers: HandoverStore,
    private readonly parts: PartStore,
    private readonly holds: HoldStore,
    private readonly rankYard: RankYard,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: TakeBackInput): Promise<Outcome<TakenBackAndKept>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const named = Given.from({ trailerId: input.trailerId });
    const trailerId = named.needId('trailerId', 'the trailer');
    if (named.problems.length > 0) return invalid(named.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const facts = await this.trailers.findFacts(tx, trailerId);
      if (facts === null) return notFound('trailer');
      const given = Given.from(input);
      given.id('trailerId', 'the trailer');
      const sendId = readSendId(given, caller.yardId);
      const again = sendId === null ? null : await this.handovers.find(tx, trailerId, sendId);
      const out = await this.outOf(tx, facts, again);
      if (out === null) return conflict(notOut(facts));

      const { photos, ...back } = readBack(given, facts, out, caller);
      const taken = takeBack(out, { seen: back.seen.map((one) => ({ ...one, photoIds: [] })) });
      if (again !== null && saysTheSame(again, back)) return this.asKept(tx, caller, facts, again.id, taken, out);
      const tires = tiresToFit(facts, taken);
      refuseOwedBall(given, out, back, taken);
      refuseLaterTires(given, back.seen, back.on, tires);
      if (given.problems.length > 0) return invalid(given.problems);

      const id = sendId === null || (await this.handovers.isKnown(tx, sendId)) ? undefined : sendId;
      const kept = { ...back, id, byPersonId: caller.personId };
      const handoverId = await this.handovers.insert(tx, trailerId, kept, photos, recordedBy(caller));
      const fittedPartIds = await fitSwappedTires(tx, this.parts, caller, trailerId, back.on, tires);
      const holdId = await holdForChanges(tx, this.holds, caller, { id: handoverId, trailerId, on: back.on }, taken);
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'take-back',
        subject: 'handover',
        subjectId: handoverId,
        trailerId,
        detail: { after: back, photos: photos.length, changes: taken.changes, holdId, fittedPartIds },
      });
      const { facts: after, raised } = await this.reassess.trailer(tx, caller, trailerId);
      const atRisk = await this.nextAtRisk(tx, caller, after, out);
      return done({ handoverId, taken, holdId, fittedPartIds, atRisk, raised });
    });
  }

  /** The way out that this return ends, or ended when it was sent before. */
  private outOf(tx: YardTx, { trailer }: TrailerFacts, again: Handover | null): Promise<Handover | null> {
    const outId = again?.outId ?? null;
    return outId === null ? this.handovers.outNow(tx, trailer.id) : this.handovers.find(tx, trailer.id, outId);
  }

  private nextAtRisk(tx: YardTx, caller: Caller, facts: TrailerFacts, out: Handover): Promise<JobAtRisk | null> {
    const { rankYard, handovers } = this;
    return nextAtRisk(tx, { rankYard, handovers }, facts, caller.today, out.jobId);
  }

  private async asKept(
    tx: YardTx,
    caller: Caller,
    facts: TrailerFacts,
    handoverId: string,
    taken: TakenBack,
    out: Handover,
  ): Promise<Outcome<TakenBackAndKept>> {
    const atRisk = await this.nextAtRisk(tx, caller, facts, out);
    return done({ handoverId, taken, holdId: null, fittedPartIds: [], atRisk, raised: [] });
  }
}

type Back = Omit<Handover, 'id' | 'trailerId' | 'seen'> & { readonly seen: readonly SeenNow[] };

function readBack(
  given: Given,
  facts: TrailerFacts,
  out: Handover,
  caller: Caller,
): Back & { readonly photos: ReturnType<typeof readPhotosOf> } {
  const on = given.needDate('on', 'the day it came back', {
    notBefore: out.on,
    notBeforeIs: `${out.on}, when it went out`,
    notAfter: caller.today,
    notAfterIs: 'today',
  });
  const looked = readSeen(given, buildOn(facts.builds, caller.today), caller.today);
  const ballBack = given.flag('ballBack', "is the customer's own ball back on their mount?");
  const swapped = out.hitch?.swappedTo ?? null;
  if (ballBack !== null && swapped === null) {
    given.refuse('ballBack', 'Leave this out: no ball was changed when it went out.');
  }
  const ball: SeenNow = {
    ...{ thing: 'customer-ball', position: null, condition: 'sound', tire: null, note: null },
    ballSizeM: out.hitch?.ball.sizeM ?? null,
  };
  return {
    ...{ jobId: out.jobId, way: 'back', outId: out.id, on, customer: out.customer, byName: caller.name, hitch: null },
    seen: ballBack === true ? [...looked, ball] : looked,
    photos: readPhotosOf(given, looked),
    signature: readSignature(given),
  };
}

function notOut({ trailer }: TrailerFacts): string {
  return `Nobody handed ${trailer.yardNumber} out, so there is nothing to hold it against. Record a check instead.`;
}

/** The customer's own ball goes back on their mount before they leave, or they sign that it did not. */
function refuseOwedBall(given: Given, out: Handover, back: Back, taken: TakenBack): void {
  if (!taken.owesBall || back.signature !== null) return;
  const sizeM = out.hitch?.ball.sizeM ?? null;
  const theirs = sizeM === null ? 'Their own ball' : `Their own ${ballSize(sizeM)} ball`;
  given.refuse('ballBack', `${theirs} was taken off when it went out. Say that it is back, or have the customer sign.`);
}

function refuseLaterTires(given: Given, seen: readonly SeenNow[], on: CivilDate, tires: readonly SwappedTire[]): void {
  for (const { position, onFile } of tires) {
    const fittedOn = onFile?.fittedOn ?? null;
    if (fittedOn === null || fittedOn <= on) continue;
    const place = seen.findIndex(
      (one) => (one.thing === 'tire' && one.position === position) || (one.thing === 'spare' && position === 'spare'),
    );
    const fix = 'Read the sidewall again, or correct the tire on file first.';
    given.refuse(`seen[${place}].tire`, `The tire on file at ${position} was fitted later, on ${fittedOn}. ${fix}`);
  }
}
