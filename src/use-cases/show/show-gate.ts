import { Injectable } from '@nestjs/common';
import { addDays, type CivilDate } from '../../rules/calendar/civil-date.js';
import { Database } from '../../store/database.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { ChoicesView } from '../../store/views/choices.view.js';
import { DueListView, type DueRow } from '../../store/views/due-list.view.js';
import { HoldListView, type OpenHoldRow } from '../../store/views/hold-list.view.js';
import { JobListView, type JobRow } from '../../store/views/job-list.view.js';
import type { ListPage } from '../../store/views/paging.js';
import { narrows, type TrailerFilter } from '../../store/views/trailer-filter.js';
import { type ReadinessCounts, TrailerListView, type TrailerRow } from '../../store/views/trailer-list.view.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';
import { type JobWithFit, jobsWithFits } from './jobs-with-fits.js';

export interface GateScreen {
  readonly today: CivilDate;
  /** Last day of the week shown: six days on. */
  readonly until: CivilDate;
  readonly filter: TrailerFilter;
  readonly counts: ReadinessCounts;
  /** The first trailers that were searched for; null when all of the yard is shown. */
  readonly found: ListPage<TrailerRow> | null;
  readonly goingOut: ListPage<JobWithFit>;
  /** How many of them leave today, on whatever page. */
  readonly goingOutToday: number;
  readonly goingOutPage: number;
  readonly perPage: number;
  readonly comingBack: ListPage<JobRow>;
  readonly held: ListPage<OpenHoldRow>;
  readonly due: ListPage<DueRow>;
  readonly machineNames: ReadonlyMap<string, string>;
  readonly checkKindNames: ReadonlyMap<string, string>;
}

/** More jobs than this are turned to page by page: each asks for the facts of its trailer and has its fit worked out. */
const FITS_A_PAGE = 12;
/** The other lists are cut here, with the way to the whole of them. */
const FIRST_LINES = 12;
const FIRST_FOUND = 6;

/** What goes out, what comes back, what is held and what is due, today and this week. */
@Injectable()
export class ShowGate {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly trailerList: TrailerListView,
    private readonly jobs: JobListView,
    private readonly holds: HoldListView,
    private readonly dueList: DueListView,
    private readonly choices: ChoicesView,
  ) {}

  async run(
    caller: Caller,
    { filter, page }: { readonly filter: TrailerFilter; readonly page: number },
  ): Promise<Outcome<GateScreen>> {
    const { today } = caller;
    const until = addDays(today, 6);
    const first = { page: 1, perPage: FIRST_LINES };
    return this.database.inYard(caller.yardId, async (tx) => {
      const leaving = await this.jobs.leaving(tx, today, until, { page, perPage: FITS_A_PAGE }, filter);
      const found = { page: 1, perPage: FIRST_FOUND };
      return done({
        today,
        until,
        filter,
        counts: await this.trailerList.counts(tx, filter),
        found: narrows(filter) ? await this.trailerList.page(tx, filter, found, today) : null,
        goingOut: { rows: await jobsWithFits(tx, this.trailers, leaving.rows, today), total: leaving.total },
        goingOutToday: await this.jobs.leavingCount(tx, today, today, filter),
        goingOutPage: page,
        perPage: FITS_A_PAGE,
        comingBack: await this.jobs.returning(tx, today, until, first, filter),
        held: await this.holds.open(tx, today, first, filter),
        due: await this.dueList.page(tx, { text: null, state: 'now' }, first, filter),
        machineNames: await this.choices.machineNames(tx),
        checkKindNames: await this.choices.checkKindNames(tx),
      });
    });
  }
}
