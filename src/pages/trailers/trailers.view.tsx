import type { Caller } from '../../use-cases/caller.js';
import { may } from '../../use-cases/caller.js';
import type { TrailersScreen } from '../../use-cases/show/show-trailers.js';
import { ReadinessMark } from '../components/marks.js';
import { Pager } from '../components/pager.js';
import { showCount, showMass, showNearDate } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { Tally } from '../components/tally.js';
import { TrailerFilterForm } from '../components/trailer-filter.js';
import { YardNumber } from '../components/yard-number.js';
import { filterQuery } from '../form/trailer-filter.js';
import { Head, Page } from '../page.js';
import { CLASS_WORDS } from '../words/build-words.js';

interface TrailersProps {
  readonly caller: Caller;
  readonly screen: TrailersScreen;
  readonly said: string | null;
}

type Row = TrailersScreen['trailers']['rows'][number];

export function TrailersPage({ caller, screen, said }: TrailersProps) {
  const { filter, trailers, counts } = screen;
  const query = filterQuery(filter);
  const filtered = Object.keys(query).length > 0;
  return (
    <Page title="Trailers" caller={caller} door="Trailers" said={said}>
      <Head title="Trailers">
        {may(caller, 'shop') && (
          <a class="button button-main" href="/trailers/new">
            Add a trailer
          </a>
        )}
      </Head>
      <Tally counts={counts} filter={filter} path="/trailers" />
      <TrailerFilterForm filter={filter} path="/trailers" />
      {trailers.rows.length === 0 ? (
        <p class="empty">
          {filtered
            ? 'No trailer is like that. Widen the filter.'
            : 'No trailer yet. Add the first one from its plate.'}
        </p>
      ) : (
        <Table
          caption={`${showCount(trailers.total, 'trailer')}${filtered ? ' like that' : ' in service'}`}
          rows={trailers.rows}
          rowKey={(row) => row.id}
          columns={[
            { label: 'Trailer', lead: true, cell: (row) => <Named row={row} /> },
            { label: 'Readiness', cell: (row) => <ReadinessMark readiness={row.readiness} /> },
            { label: 'Flags', cell: flagCount },
            { label: 'Due', cell: dueCount },
            { label: 'Next job', cell: (row) => <NextJob row={row} /> },
            { label: 'Class', cell: (row) => (row.trailerClass ? CLASS_WORDS[row.trailerClass] : <Unknown />) },
            {
              label: 'Payload',
              right: true,
              cell: (row) => (row.payloadKg === null ? <Unknown /> : showMass(row.payloadKg)),
            },
          ]}
        />
      )}
      <Pager
        paging={{ page: screen.page, perPage: screen.perPage, total: trailers.total }}
        path="/trailers"
        query={query}
        what="trailers"
      />
    </Page>
  );
}

function Unknown() {
  return <span class="unknown">unknown</span>;
}

function Named({ row }: { readonly row: Row }) {
  return (
    <span class="row">
      <YardNumber number={row.number} id={row.id} />
      {row.name && <span class="small">{row.name}</span>}
    </span>
  );
}

function NextJob({ row }: { readonly row: Row }) {
  if (row.nextJob === null) return <span class="soft">none booked</span>;
  return (
    <span>
      <a href={`/jobs/${row.nextJob.id}`}>{row.nextJob.name}</a>
      <span class="soft small"> {showNearDate(row.nextJob.startsOn)}</span>
    </span>
  );
}

function flagCount(row: Row): string {
  const parts = [
    row.stopFlags > 0 ? `${row.stopFlags} stop` : null,
    row.limitFlags > 0 ? `${row.limitFlags} over a limit` : null,
    row.watchFlags > 0 ? `${row.watchFlags} to watch` : null,
  ].filter((part) => part !== null);
  return parts.length === 0 ? 'none' : parts.join(', ');
}

function dueCount(row: Row): string {
  if (row.overdue > 0) return `${row.overdue} overdue`;
  return row.nextDueOn === null ? 'nothing dated' : `next ${showNearDate(row.nextDueOn)}`;
}
