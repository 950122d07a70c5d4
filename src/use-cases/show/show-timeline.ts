import { Injectable } from '@nestjs/common';
import { addDays, type CivilDate } from '../../rules/calendar/civil-date.js';
import { Database } from '../../store/database.js';
import type { ListPage } from '../../store/views/paging.js';
import {
  type Days,
  type LaneDue,
  type LaneHold,
  type LaneJob,
  type LaneTrailer,
  TimelineView,
} from '../../store/views/timeline.view.js';
import type { TrailerFilter } from '../../store/views/trailer-filter.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';

export interface TimelineInput {
  readonly filter: TrailerFilter;
  /** `busy`: only trailers with a job on these days, or on hold. */
  readonly which: 'busy' | 'all';
  /** The first day; null for today. */
  readonly from: CivilDate | null;
  readonly weeks: 2 | 3 | 4;
  readonly page: number;
}

export interface TimelineScreen extends Omit<TimelineInput, 'from'> {
  readonly today: CivilDate;
  /** Both days are shown. */
  readonly days: Days;
  readonly perPage: number;
  readonly trailers: ListPage<LaneTrailer>;
  readonly jobs: readonly LaneJob[];
  readonly holds: readonly LaneHold[];
  readonly due: readonly LaneDue[];
  /** Booked on these days without a trailer: the first of them. */
  readonly unplaced: readonly LaneJob[];
}

const TRAILERS_A_PAGE = 20;
/** Twenty trailers out every day of four weeks, and as many again double booked. */
const MOST_MARKS = 1_000;
const MOST_UNPLACED = 12;

/** What the trailers do over some weeks: jobs, checks due and holds. */
@Injectable()
export class ShowTimeline {
  constructor(
    private readonly database: Database,
    private readonly view: TimelineView,
  ) {}

  async run(caller: Caller, input: TimelineInput): Promise<Outcome<TimelineScreen>> {
    const from = input.from ?? caller.today;
    const days = { from, to: addDays(from, input.weeks * 7 - 1) };
    const paging = { page: input.page, perPage: TRAILERS_A_PAGE };
    return this.database.inYard(caller.yardId, async (tx) => {
      const trailers = await this.view.trailers(tx, days, input.filter, input.which, paging);
      const ids = trailers.rows.map(({ id }) => id);
      return done({
        ...input,
        ...paging,
        today: caller.today,
        days,
        trailers,
        jobs: await this.view.jobs(tx, ids, days, MOST_MARKS),
        holds: await this.view.holds(tx, ids, MOST_MARKS),
        due: await this.view.due(tx, ids, days.to, MOST_MARKS),
        unplaced: await this.view.unplaced(tx, days, MOST_UNPLACED),
      });
    });
  }
}
