import { Injectable } from '@nestjs/common';
import { type Assessment, assess } from '../../rules/assess.js';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { explain } from '../../rules/explain/explain.js';
import type { Working } from '../../rules/explain/working.js';
import { buildOn } from '../../rules/facts/build-on.js';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { type Fit, fit as judge } from '../../rules/fit/fit.js';
import { type LoadedTrip, loadsOfQuarter } from '../../rules/flags/loads-of-quarter.js';
import { trailerOn } from '../../rules/history/trailer-on.js';
import type { RankedTrailer } from '../../rules/ranking/ranked-trailer.js';
import { Database, type YardTx } from '../../store/database.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import { ChoicesView } from '../../store/views/choices.view.js';
import { type HistoryEntry, HistoryView } from '../../store/views/history.view.js';
import { HoldListView, type HoldRow } from '../../store/views/hold-list.view.js';
import type { ListPage } from '../../store/views/paging.js';
import { RankYard } from '../assessments/rank-yard.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

export interface BrokenJob {
  readonly job: TrailerFacts['jobs'][number];
  readonly substitutes: readonly RankedTrailer[];
}

export interface TrailerScreen {
  readonly trailer: KeptTrailer;
  readonly facts: TrailerFacts;
  /** The build of today; null while none is recorded. */
  readonly build: BuildSheet | null;
  readonly assessment: Assessment;
  /** How it was worked out. */
  readonly workings: readonly Working[];
  /** The loads of late that its use is judged by, in the order of time. */
  readonly loads: readonly LoadedTrip[];
  /** Booked jobs from today on, each with its answer. */
  readonly jobs: readonly { readonly job: TrailerFacts['jobs'][number]; readonly fit: Fit }[];
  readonly holds: readonly HoldRow[];
  /** The first job that an open hold breaks, and the first trailers that could take it; null when it breaks none. */
  readonly broken: BrokenJob | null;
  /** The latest entries; the rest is on the history page. */
  readonly history: ListPage<HistoryEntry>;
  readonly machineNames: ReadonlyMap<string, string>;
  readonly checkKindNames: ReadonlyMap<string, string>;
}

const LATEST_ENTRIES = 8;
const JOBS_JUDGED = 12;

/** All about one trailer, worked out from its facts as they stand now. */
@Injectable()
export class ShowTrailer {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly holds: HoldListView,
    private readonly history: HistoryView,
    private readonly choices: ChoicesView,
    private readonly rankYard: RankYard,
  ) {}

  async run(caller: Caller, input: { readonly trailerId: string }): Promise<Outcome<TrailerScreen>> {
    const { trailerId } = input;
    const { today } = caller;
    return this.database.inYard(caller.yardId, async (tx) => {
      const trailer = await this.trailers.find(tx, trailerId);
      const facts = trailer && (await this.trailers.findFacts(tx, trailerId));
      if (trailer === null || facts === null) return notFound('trailer');
      const coming = facts.jobs
        .filter((job) => job.state === 'booked' && job.endsOn >= today)
        .sort((a, b) => (a.startsOn < b.startsOn ? -1 : 1));
      const jobs = coming.slice(0, JOBS_JUDGED).map((job) => ({ job, fit: judge(facts, job, today) }));
      return done({
        trailer,
        facts,
        build: buildOn(facts.builds, today),
        assessment: assess(facts, today),
        workings: explain(facts, today),
        loads: loadsOfQuarter(trailerOn(facts, today), facts.policy.driftTrips),
        jobs,
        broken: await this.brokenByHold(tx, trailerId, jobs, today),
        holds: await this.holds.ofTrailer(tx, trailerId),
        history: await this.history.ofTrailer(tx, trailerId, { page: 1, perPage: LATEST_ENTRIES }),
        machineNames: await this.choices.machineNames(tx),
        checkKindNames: await this.choices.checkKindNames(tx),
      });
    });
  }

  private async brokenByHold(
    tx: YardTx,
    trailerId: string,
    jobs: TrailerScreen['jobs'],
    today: CivilDate,
  ): Promise<BrokenJob | null> {
    const job = jobs.find(({ fit }) => fit.reasons.some((reason) => reason.kind === 'hold'))?.job;
    if (job === undefined) return null;
    const haul = { ...job, jobId: job.id, plannedTrailerId: trailerId };
    return { job, substitutes: await this.rankYard.substitutes(tx, haul, today) };
  }
}
