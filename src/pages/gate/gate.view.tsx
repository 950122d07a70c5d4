import type { Caller } from '../../use-cases/caller.js';
import { may } from '../../use-cases/caller.js';
import type { GateScreen } from '../../use-cases/show/show-gate.js';
import { Caution } from '../components/caution.js';
import { DueLine } from '../components/due-line.js';
import { JobCards } from '../components/job-cards.js';
import { ReadinessMark } from '../components/marks.js';
import { Pager } from '../components/pager.js';
import { showCount, showDate, showNearDate, showNumber } from '../components/show-quantity.js';
import { Tally } from '../components/tally.js';
import { TrailerFilterForm } from '../components/trailer-filter.js';
import { YardNumber } from '../components/yard-number.js';
import { addressWith, filterQuery } from '../form/trailer-filter.js';
import { Head, Page } from '../page.js';

interface GateProps {
  readonly caller: Caller;
  readonly screen: GateScreen;
  readonly said: string | null;
}

export function GatePage({ caller, screen, said }: GateProps) {
  const { today, filter } = screen;
  const names = { machines: screen.machineNames, checkKinds: screen.checkKindNames };
  const now = screen.goingOut.rows.filter(({ job }) => job.startsOn === today);
  const later = screen.goingOut.rows.filter(({ job }) => job.startsOn !== today);
  const { ready, due, down } = screen.counts;
  const filtered = Object.keys(filterQuery(filter)).length > 0;
  const hasTrailers = ready + due + down > 0;
  return (
    <Page title="Gate" caller={caller} door="Gate" said={said}>
      <Head title="Gate" lede={`${showDate(today)}, and the week to ${showNearDate(screen.until)}.`}>
        {may(caller, 'hand') && (
          <a class="button button-main" href="/jobs/new">
            Book a job
          </a>
        )}
        <a class="button" href="/fit">
          Check fit
        </a>
      </Head>
      <Tally counts={screen.counts} filter={filter} path="/trailers" />
      {hasTrailers || filtered ? (
        <TrailerFilterForm filter={filter} path="/" />
      ) : (
        <FirstTrailer mayAdd={may(caller, 'shop')} />
      )}
      {screen.found && <Found screen={screen} found={screen.found} />}
      <Jumps screen={screen} />
      <div class="two">
        <div class="stack gate-out">
          <section class="stack" aria-labelledby="out-today">
            <h2 class="chalked" id="out-today">
              Going out today <Count of={screen.goingOutToday} />
            </h2>
            {now.length === 0 ? (
              <p class="empty">{screen.goingOutToday === 0 ? 'Nothing leaves today.' : 'They are on another page.'}</p>
            ) : (
              <JobCards jobs={now} names={names} today={today} />
            )}
          </section>
          <section class="stack" aria-labelledby="out-week">
            <h2 class="chalked" id="out-week">
              Later this week <Count of={screen.goingOut.total - screen.goingOutToday} />
            </h2>
            {later.length === 0 ? (
              <p class="empty">
                {screen.goingOut.total === screen.goingOutToday
                  ? 'Nothing is booked for the days after.'
                  : 'They are on another page.'}
              </p>
            ) : (
              <JobCards jobs={later} names={names} today={today} />
            )}
            <Pager
              paging={{ page: screen.goingOutPage, perPage: screen.perPage, total: screen.goingOut.total }}
              path="/"
              query={filterQuery(filter)}
              what="jobs going out"
            />
          </section>
        </div>
        <div class="stack">
          <Held screen={screen} />
          <ComingBack screen={screen} />
          <DueNow screen={screen} />
        </div>
      </div>
      <Caution />
    </Page>
  );
}

function Count({ of }: { readonly of: number }) {
  return <span class="count">{showNumber(of)}</span>;
}

/** A short way down a long page, by thumb or by keyboard. */
function Jumps({ screen }: { readonly screen: GateScreen }) {
  const places = [
    ['out-today', 'Going out', screen.goingOut.total],
    ['held', 'Held', screen.held.total],
    ['back', 'Coming back', screen.comingBack.total],
    ['due', 'Due', screen.due.total],
  ] as const;
  return (
    <nav class="jumps" aria-label="On this page">
      {places.map(([id, name, count]) => (
        <a key={id} href={`#${id}`}>
          {name}&nbsp;
          <Count of={count} />
        </a>
      ))}
    </nav>
  );
}

/** The trailers searched for, ahead of what they are to do. */
function Found({ screen, found }: { readonly screen: GateScreen; readonly found: NonNullable<GateScreen['found']> }) {
  return (
    <section class="stack-tight" aria-labelledby="found">
      <h2 class="chalked" id="found">
        Trailers like that <Count of={found.total} />
      </h2>
      {found.rows.length === 0 ? (
        <p class="empty">No trailer is like that. Widen the search.</p>
      ) : (
        <ul class="lines sheet">
          {found.rows.map((row) => (
            <li class="apart" key={row.id}>
              <span class="row">
                <YardNumber number={row.number} id={row.id} />
                {row.name && <span>{row.name}</span>}
              </span>
              <ReadinessMark readiness={row.readiness} />
            </li>
          ))}
        </ul>
      )}
      {found.total > found.rows.length && (
        <a href={addressWith('/trailers', filterQuery(screen.filter))}>All {showNumber(found.total)} of them</a>
      )}
    </section>
  );
}

/** A yard just set up has nothing to show yet, so the page says where to begin. */
function FirstTrailer({ mayAdd }: { readonly mayAdd: boolean }) {
  return (
    <p class="empty">
      No trailer yet.{' '}
      {mayAdd ? (
        <a href="/trailers/new">Add the first one from its plate.</a>
      ) : (
        'An owner or the shop adds the first one.'
      )}
    </p>
  );
}

function Held({ screen }: { readonly screen: GateScreen }) {
  const { rows, total } = screen.held;
  return (
    <section class="stack-tight" aria-labelledby="held">
      <h2 class="chalked" id="held">
        Held <Count of={total} />
      </h2>
      {rows.length === 0 ? (
        <p class="empty">No trailer is on hold.</p>
      ) : (
        <ul class="lines sheet">
          {rows.map((hold) => (
            <li class="stack-tight" key={hold.id}>
              <div class="row">
                <YardNumber number={hold.trailer.number} id={hold.trailer.id} />
                <span class="soft small">
                  since {showNearDate(hold.openedOn)}, {hold.openedByName}
                </span>
              </div>
              <p>{hold.reason}</p>
              {hold.nextJob && (
                <p class="small">
                  Breaks <a href={`/jobs/${hold.nextJob.id}`}>{hold.nextJob.name}</a>,{' '}
                  {showNearDate(hold.nextJob.startsOn)}.{' '}
                  <a href={`/jobs/${hold.nextJob.id}/move`}>Find another trailer</a>
                </p>
              )}
            </li>
          ))}
        </ul>
      )}
      {total > rows.length && <a href="/trailers?readiness=down">All trailers that are down</a>}
    </section>
  );
}

function ComingBack({ screen }: { readonly screen: GateScreen }) {
  const { rows, total } = screen.comingBack;
  return (
    <section class="stack-tight" aria-labelledby="back">
      <h2 class="chalked" id="back">
        Coming back <Count of={total} />
      </h2>
      {rows.length === 0 ? (
        <p class="empty">Nothing is out that comes back this week.</p>
      ) : (
        <ul class="lines sheet">
          {rows.map((job) => (
            <li class="apart" key={job.id}>
              <span class="row">
                {job.trailer && <YardNumber number={job.trailer.number} id={job.trailer.id} />}
                <span>
                  <a href={`/jobs/${job.id}`}>{job.name}</a>
                  <br />
                  <span class="soft small">
                    {job.endsOn === screen.today ? 'back today' : `back ${showNearDate(job.endsOn)}`}
                  </span>
                </span>
              </span>
              {job.work === 'hire' && job.trailer && (
                <a class="button" href={`/trailers/${job.trailer.id}/take-back`}>
                  Take back<span class="hidden-words"> {job.trailer.number}</span>
                </a>
              )}
            </li>
          ))}
        </ul>
      )}
      {total > rows.length && (
        <p class="soft">
          and {showCount(total - rows.length, 'more', 'more')}, all on the <a href="/timeline">time line</a>
        </p>
      )}
    </section>
  );
}

function DueNow({ screen }: { readonly screen: GateScreen }) {
  const { rows, total } = screen.due;
  return (
    <section class="stack-tight" aria-labelledby="due">
      <h2 class="chalked" id="due">
        Due <Count of={total} />
      </h2>
      {rows.length === 0 ? (
        <p class="empty">Nothing is due now.</p>
      ) : (
        <ul class="lines sheet">
          {rows.map((row) => (
            <DueLine key={`${row.trailer.id} ${row.checkKind.id}`} row={row} today={screen.today} />
          ))}
        </ul>
      )}
      {total > rows.length && (
        <p>
          <a href="/due">All {showNumber(total)} that are due</a>
        </p>
      )}
    </section>
  );
}
