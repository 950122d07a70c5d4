import { Injectable } from '@nestjs/common';
import { buildOn } from '../../rules/facts/build-on.js';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { Handover } from '../../rules/facts/handover.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { fit, type Verdict } from '../../rules/fit/fit.js';
import { loadedMass } from '../../rules/handover/release.js';
import { type ThingToSee, thingsToSee } from '../../rules/handover/things-to-see.js';
import type { Kilograms } from '../../rules/units/mass.js';
import { Database } from '../../store/database.js';
import { HandoverStore } from '../../store/handover-store.js';
import { JobStore, type KeptJob } from '../../store/job-store.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

export interface HandoverFormScreen {
  readonly trailer: KeptTrailer;
  readonly facts: TrailerFacts;
  readonly build: BuildSheet | null;
  /** Set while it is with a customer: what it is held against when it comes back. */
  readonly outNow: Handover | null;
  /** Jobs it may go out for, soonest first. */
  readonly jobs: readonly KeptJob[];
  /** The one it goes out for: the one asked for, or else the first that is on today. */
  readonly job: KeptJob | null;
  readonly verdict: Verdict | null;
  /** What it will weigh loaded: by the job's load, or else by its plate. */
  readonly grossKg: Kilograms | null;
  /** In the order of looking; on the return the same as on the way out. */
  readonly things: readonly ThingToSee[];
}

/** What whoever hands a trailer out, or takes it back, has before them. */
@Injectable()
export class ShowHandoverForm {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly jobs: JobStore,
    private readonly handovers: HandoverStore,
  ) {}

  async run(
    caller: Caller,
    input: { readonly trailerId: string; readonly jobId: string | null },
  ): Promise<Outcome<HandoverFormScreen>> {
    const { trailerId, jobId } = input;
    const { today } = caller;
    return this.database.inYard(caller.yardId, async (tx) => {
      const trailer = await this.trailers.find(tx, trailerId);
      const facts = trailer && (await this.trailers.findFacts(tx, trailerId));
      if (trailer === null || facts === null) return notFound('trailer');
      const build = buildOn(facts.builds, today);
      const outNow = await this.handovers.outNow(tx, trailerId);
      const jobs = await this.jobs.list(tx, { trailerId, state: 'booked', from: today });
      const job = jobs.find(({ id }) => id === jobId) ?? jobs.find(({ startsOn }) => startsOn <= today) ?? null;
      const answer = job === null ? null : fit(facts, job, today);
      return done({
        ...{ trailer, facts, build, outNow, jobs, job },
        verdict: answer?.verdict ?? null,
        grossKg: loadedMass(answer?.loadCheck.grossKg ?? null, build),
        things: withThoseOf(outNow, thingsToSee(build)),
      });
    });
  }
}

/** What was looked at on the way out comes first, so that both ways go in the same order. */
function withThoseOf(out: Handover | null, things: readonly ThingToSee[]): readonly ThingToSee[] {
  const seen = (out?.seen ?? []).map(({ thing, position }) => ({ thing, position }));
  const isSeen = (one: ThingToSee) =>
    seen.some(({ thing, position }) => thing === one.thing && position === one.position);
  return [...seen, ...things.filter((one) => !isSeen(one))];
}
