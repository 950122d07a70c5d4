import { addDays } from '../../rules/calendar/civil-date.js';
import { type Caller, may } from '../../use-cases/caller.js';
import type { TimelineScreen } from '../../use-cases/show/show-timeline.js';
import { Choice, Field } from '../components/field.js';
import { Island } from '../components/island.js';
import { Pager } from '../components/pager.js';
import { showCount, showDates } from '../components/show-quantity.js';
import { TrailerFilterForm } from '../components/trailer-filter.js';
import { addressWith, filterQuery } from '../form/trailer-filter.js';
import { Head, Page } from '../page.js';
import { LaneTable } from './lane-table.js';
import { LaneWords } from './lane-words.js';
import { dayColumns, lanesOf } from './lanes.js';

interface TimelineProps {
  readonly caller: Caller;
  readonly screen: TimelineScreen;
  readonly said: string | null;
}

/** What the island starts from. */
export interface TimelineData {
  /** The address of the page as it stands: there a job moved leads back to. */
  readonly back: string;
}

export function TimelinePage({ caller, screen, said }: TimelineProps) {
  const lanes = lanesOf(screen);
  const query = queryOf(screen);
  const { days, today, weeks, which } = screen;
  const moves = may(caller, 'hand');
  const back = addressWith('/timeline', { ...query, ...(screen.page > 1 && { page: String(screen.page) }) });
  const typed = { values: { weeks: String(weeks), show: which, from: days.from }, problems: [] };
  const table = <LaneTable lanes={lanes} columns={dayColumns(days, today)} weeks={weeks} />;
  return (
    <Page title="Time line" caller={caller} door="Time line" said={said}>
      <Head title="Time line" lede={`${showDates(days.from, days.to)}: jobs, checks due and holds.`}>
        {moves && (
          <a class="button button-main" href="/jobs/new">
            Book a job
          </a>
        )}
      </Head>
      <TrailerFilterForm filter={screen.filter} path="/timeline" asked={Object.keys(query).length > 0}>
        <Field typed={typed} name="from" label="First day" type="date" />
        <Choice
          typed={typed}
          name="weeks"
          label="How long"
          none={null}
          options={[2, 3, 4].map((count) => ({ value: String(count), label: showCount(count, 'week') }))}
        />
        <Choice
          typed={typed}
          name="show"
          label="Trailers"
          none={null}
          options={[
            { value: 'busy', label: 'With a job or a hold' },
            { value: 'all', label: 'All of them' },
          ]}
        />
      </TrailerFilterForm>
      <nav class="pager" aria-label="Other days">
        <a class="button" href={at(query, addDays(days.from, -7 * weeks))}>
          {showCount(weeks, 'week')} back
        </a>
        {days.from !== today && <a href={at(query, null)}>From today</a>}
        <a class="button" href={at(query, addDays(days.from, 7 * weeks))}>
          {showCount(weeks, 'week')} on
        </a>
      </nav>
      {lanes.length === 0 ? (
        <p class="empty">
          {which === 'busy' ? 'No trailer like that has a job or a hold on these days. ' : 'No trailer is like that. '}
          {which === 'busy' && <a href={addressWith('/timeline', { ...query, show: 'all' })}>Show all of them</a>}
        </p>
      ) : moves ? (
        <Island name="timeline" data={{ back } satisfies TimelineData}>
          {table}
          <p class="lane-answer" role="status" data-lane-answer>
            A job opens when it is clicked. To move one, drag it onto another row; or, by keyboard, stand on it, press
            Space, go to a row with the arrow keys and press Enter. The answer of that trailer stands here before it
            takes the job.
          </p>
        </Island>
      ) : (
        table
      )}
      <Pager
        paging={{ page: screen.page, perPage: screen.perPage, total: screen.trailers.total }}
        path="/timeline"
        query={query}
        what="trailers"
      />
      <LaneWords lanes={lanes} today={today} moves={moves} />
    </Page>
  );
}

/** What the page was asked by, page aside; what is as usual is left out. */
function queryOf({ filter, which, weeks, days, today }: TimelineScreen): Readonly<Record<string, string>> {
  return {
    ...filterQuery(filter),
    ...(which === 'all' && { show: 'all' }),
    ...(weeks !== 2 && { weeks: String(weeks) }),
    ...(days.from !== today && { from: days.from }),
  };
}

function at({ from: _from, ...query }: Readonly<Record<string, string>>, from: string | null): string {
  return addressWith('/timeline', { ...query, ...(from && { from }) });
}
