import { Injectable } from '@nestjs/common';
import { ballSize, pounds } from '../../mail/words/show.js';
import { buildOn } from '../../rules/facts/build-on.js';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { CustomerHitch, Handover } from '../../rules/facts/handover.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { fit } from '../../rules/fit/fit.js';
import { loadedMass, type Release, release } from '../../rules/handover/release.js';
import type { Kilograms } from '../../rules/units/mass.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database, type YardTx } from '../../store/database.js';
import { HandoverStore } from '../../store/handover-store.js';
import { JobStore, type KeptJob } from '../../store/job-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import {
  type HandoverInput,
  readHitch,
  readPhotosOf,
  readSeen,
  readSignature,
  withMarksOnFile,
} from '../input/handover-input.js';
import type { Incoming } from '../input/incoming.js';
import { readSendId, type Sending } from '../input/send-id.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { saysTheSame } from './says-the-same.js';

export type HandOutInput = HandoverInput &
  Sending & {
    readonly jobId?: string | null;
    /** The job's customer when left out. */
    readonly customer?: string | null;
    readonly hitch: Incoming<CustomerHitch>;
  };

interface HandedOut {
  readonly handoverId: string;
  /** What is not known of ball and plug is in here; what does not match was refused. */
  readonly release: Release;
}

/**
 * Hands a hired trailer to its customer: what was seen of it, and what it is coupled to. Refused while it is on hold or
 * out, and where ball or plug do not serve it.
 */
@Injectable()
export class HandOut {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly jobs: JobStore,
    private readonly handovers: HandoverStore,
    private readonly audit: AuditStore,
  ) {}

  async run(caller: Caller, input: HandOutInput): Promise<Outcome<HandedOut>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const named = Given.from({ trailerId: input.trailerId });
    const trailerId = named.needId('trailerId', 'the trailer');
    if (named.problems.length > 0) return invalid(named.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const facts = await this.trailers.findFacts(tx, trailerId);
      if (facts === null) return notFound('trailer');
      const build = buildOn(facts.builds, caller.today);
      const given = Given.from(input);
      given.id('trailerId', 'the trailer');
      const job = await this.readJob(tx, given, trailerId);
      const { photos, ...handover } = readOut(given, facts, build, job, caller);
      const sendId = readSendId(given, caller.yardId);
      const grossKg = loadedMass(job === null ? null : grossOf(facts, job, caller), build);
      const answer = release(build, handover.hitch, grossKg);
      if (given.problems.length > 0) return invalid(given.problems);

      const again = sendId === null ? null : await this.handovers.find(tx, trailerId, sendId);
      if (again !== null && saysTheSame(again, handover)) return done({ handoverId: again.id, release: answer });
      const stays = await this.whyItStays(tx, facts);
      if (stays !== null) return conflict(stays);
      refuseMismatch(given, answer, handover.hitch, build, grossKg);
      if (given.problems.length > 0) return invalid(given.problems);

      const id = sendId === null || (await this.handovers.isKnown(tx, sendId)) ? undefined : sendId;
      const kept = { ...handover, id, byPersonId: caller.personId };
      const handoverId = await this.handovers.insert(tx, trailerId, kept, photos, recordedBy(caller));
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'hand-out',
        subject: 'handover',
        subjectId: handoverId,
        trailerId,
        detail: { after: handover, photos: photos.length, release: answer },
      });
      return done({ handoverId, release: answer });
    });
  }

  private async readJob(tx: YardTx, given: Given, trailerId: string): Promise<KeptJob | null> {
    const jobId = given.id('jobId', 'the job');
    const job = jobId === null ? null : await this.jobs.find(tx, jobId);
    if (jobId !== null && (job === null || job.trailerId !== trailerId || job.state !== 'booked')) {
      given.refuse('jobId', 'Choose a job that is booked on this trailer, or leave the job out.');
    }
    return job;
  }

  private async whyItStays(tx: YardTx, { trailer, holds }: TrailerFacts): Promise<string | null> {
    if (trailer.status !== 'in-service') return `${trailer.yardNumber} is ${trailer.status}; it goes nowhere.`;
    const hold = holds.find((one) => one.liftedOn === null);
    if (hold !== undefined) {
      return `${trailer.yardNumber} is on hold: ${hold.reason}. Lift the hold first, or hand out another.`;
    }
    const out = await this.handovers.outNow(tx, trailer.id);
    return out === null ? null : `${trailer.yardNumber} is with ${out.customer} since ${out.on}. Take it back first.`;
  }
}

type Out = Omit<Handover, 'id' | 'trailerId' | 'seen' | 'hitch'> & {
  readonly hitch: CustomerHitch;
  readonly seen: ReturnType<typeof readSeen>;
  readonly photos: ReturnType<typeof readPhotosOf>;
};

function readOut(
  given: Given,
  facts: TrailerFacts,
  build: BuildSheet | null,
  job: KeptJob | null,
  caller: Caller,
): Out {
  const seen = withMarksOnFile(readSeen(given, build, caller.today), facts.parts);
  const customer = given.text('customer', 'whom it is handed to', TEXT.name) ?? job?.customer ?? null;
  if (customer === null && !given.has('customer')) given.refuse('customer', 'Enter whom it is handed to.');
  return {
    jobId: job?.id ?? null,
    way: 'out',
    outId: null,
    on: given.needDate('on', 'the day it goes out', { notAfter: caller.today, notAfterIs: 'today' }),
    customer: customer ?? '',
    byName: caller.name,
    seen,
    photos: readPhotosOf(given, seen),
    hitch: readHitch(given, build),
    signature: readSignature(given),
  };
}

function grossOf(facts: TrailerFacts, job: KeptJob, caller: Caller): Kilograms | null {
  return fit(facts, job, caller.today).loadCheck.grossKg;
}

/** Says why it may not go out on this ball or plug, and what would let it. */
function refuseMismatch(
  given: Given,
  { ball, plug }: Release,
  hitch: CustomerHitch,
  build: BuildSheet | null,
  grossKg: Kilograms | null,
): void {
  const on = hitch.swappedTo ?? hitch.ball;
  const at = hitch.swappedTo === null ? 'hitch.ball' : 'hitch.swappedTo';
  const wanted = build?.hitch.ballSizeM ?? null;
  if (ball?.sizesDiffer === true && wanted !== null && on.sizeM !== null) {
    const fix = `Put a ${ballSize(wanted)} ball on and record the change, or hand out a trailer for ${ballSize(on.sizeM)}.`;
    given.refuse(`${at}.sizeM`, `The coupler takes ${ballSize(wanted)} and the ball is ${ballSize(on.sizeM)}. ${fix}`);
  }
  const overKg = ball?.overKg ?? null;
  if (overKg !== null && grossKg !== null && on.ratingKg !== null) {
    const why = `The ball is rated ${pounds(on.ratingKg)} and the loaded trailer weighs ${pounds(grossKg)}, ${pounds(overKg)} more.`;
    given.refuse(`${at}.ratingKg`, `${why} Put a stronger ball on and record the change, or load less.`);
  }
  if (plug.dead === 'lamps') {
    given.refuse('hitch.plug', 'Its lamps do not work on this plug. Mend the plug or its adapter and try again.');
  }
  if (plug.dead === 'brakes') {
    const fix = 'Use a plug with brake and charge lines and a controller, and try again.';
    given.refuse('hitch.plug', `It has electric brakes and this plug works the lamps alone. ${fix}`);
  }
}
