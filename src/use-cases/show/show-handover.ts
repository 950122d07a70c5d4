import { Injectable } from '@nestjs/common';
import type { Handover } from '../../rules/facts/handover.js';
import { type TakenBack, takeBack } from '../../rules/handover/take-back.js';
import { Database, type YardTx } from '../../store/database.js';
import { HandoverStore } from '../../store/handover-store.js';
import { JobStore } from '../../store/job-store.js';
import type { HistoryOf } from '../../store/recorded.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import { YardStore } from '../../store/yard-store.js';
import { RankYard } from '../assessments/rank-yard.js';
import type { Caller } from '../caller.js';
import { type JobAtRisk, nextAtRisk } from '../handovers/next-at-risk.js';
import { done, notFound, type Outcome } from '../outcome.js';

export interface HandoverScreen {
  readonly yardName: string;
  readonly trailer: KeptTrailer;
  readonly record: HistoryOf<Handover>;
  readonly out: Handover;
  /** Null while the trailer is still with the customer. */
  readonly back: Handover | null;
  readonly taken: TakenBack | null;
  readonly jobName: string | null;
  /** The next booking, where this is the latest return and the trailer is in the yard. */
  readonly atRisk: JobAtRisk | null;
}

/** One time that a trailer was out: how it went, how it came back, and what changed. */
@Injectable()
export class ShowHandover {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly handovers: HandoverStore,
    private readonly jobs: JobStore,
    private readonly yards: YardStore,
    private readonly rankYard: RankYard,
  ) {}

  async run(
    caller: Caller,
    input: { readonly trailerId: string; readonly handoverId: string },
  ): Promise<Outcome<HandoverScreen>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const trailer = await this.trailers.find(tx, input.trailerId);
      if (trailer === null) return notFound('trailer');
      const history = await this.handovers.history(tx, input.trailerId);
      const record = history.find((row) => row.fact.id === input.handoverId && !row.withdrawn);
      const out = record && outOf(history, record.fact);
      if (record === undefined || out === undefined) return notFound('handover');
      const back = record.fact.way === 'back' ? record.fact : await this.handovers.backOf(tx, trailer.id, out.id);
      const job = out.jobId === null ? null : await this.jobs.find(tx, out.jobId);
      return done({
        yardName: (await this.yards.get(tx)).name,
        ...{ trailer, record, out, back },
        taken: back === null ? null : takeBack(out, back),
        jobName: job?.name ?? null,
        atRisk: record.standing && back !== null ? await this.atRisk(tx, caller, history, out, back) : null,
      });
    });
  }

  private async atRisk(
    tx: YardTx,
    caller: Caller,
    history: readonly HistoryOf<Handover>[],
    out: Handover,
    back: Handover,
  ): Promise<JobAtRisk | null> {
    const since = history.slice(history.findIndex(({ fact }) => fact.id === back.id) + 1);
    const wentAgain = since.some(({ fact, standing }) => standing && fact.way === 'out');
    const facts = wentAgain ? null : await this.trailers.findFacts(tx, back.trailerId);
    if (facts === null) return null;
    const { rankYard, handovers } = this;
    return nextAtRisk(tx, { rankYard, handovers }, facts, caller.today, out.jobId);
  }
}

function outOf(history: readonly HistoryOf<Handover>[], handover: Handover): Handover | undefined {
  if (handover.way === 'out') return handover;
  return history.find(({ fact }) => fact.id === handover.outId)?.fact;
}
