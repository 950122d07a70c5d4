import type { Caller } from '../../use-cases/caller.js';
import type { DueScreen } from '../../use-cases/show/show-due.js';
import { DueMark } from '../components/due-line.js';
import { Choice, Field } from '../components/field.js';
import { Pager } from '../components/pager.js';
import { showCount } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import { sheetPath } from '../sheets/sheet-data.js';
import { dueWhen, dueWhy, yardDayWords } from '../words/due-words.js';

interface DueProps {
  readonly caller: Caller;
  readonly screen: DueScreen;
}

export const DUE_STATES = ['now', 'later', 'unknown', 'all'] as const;

export function DuePage({ caller, screen }: DueProps) {
  const { filter, due } = screen;
  const query = { ...(filter.text && { text: filter.text }), ...(filter.state !== 'now' && { state: filter.state }) };
  const typed = { values: { text: filter.text ?? '', state: filter.state }, problems: [] };
  return (
    <Page title="Due" caller={caller} door="Due">
      <Head
        title="Due"
        lede="Every check of every trailer in service, most pressing first. Whichever trigger comes first counts."
      />
      <form class="filter sheet" method="get" action="/due">
        <Field typed={typed} name="text" label="Trailer or check" type="search" maxLength={40} />
        <Choice
          typed={typed}
          name="state"
          label="Show"
          none={null}
          options={[
            { value: 'now', label: 'Overdue, never done, or due soon' },
            { value: 'later', label: 'Later' },
            { value: 'unknown', label: 'Cannot say' },
            { value: 'all', label: 'All' },
          ]}
        />
        <div class="actions">
          <button class="button" type="submit">
            Show
          </button>
        </div>
      </form>
      {due.rows.length === 0 ? (
        <p class="empty">{filter.state === 'now' && !filter.text ? 'Nothing is due now.' : 'Nothing is like that.'}</p>
      ) : (
        <Table
          caption={`${showCount(due.total, 'check')}`}
          rows={due.rows}
          rowKey={(row) => `${row.trailer.id} ${row.checkKind.id}`}
          columns={[
            {
              label: 'Trailer',
              lead: true,
              cell: (row) => <YardNumber number={row.trailer.number} id={row.trailer.id} />,
            },
            { label: 'Check', cell: (row) => <span class="strong">{row.checkKind.name}</span> },
            { label: 'How pressing', cell: (row) => <DueMark due={row.due} safety={row.checkKind.safety} /> },
            {
              label: 'When',
              cell: (row) => (
                <span>
                  {dueWhen(row.due, caller.today)}
                  <WhyLine row={row} caller={caller} />
                </span>
              ),
            },
            { label: 'Whose', cell: (row) => row.ownerName ?? <span class="unknown">nobody's</span> },
            {
              label: 'Done?',
              cell: (row) => (
                <a href={sheetPath(row.trailer.id, row.checkKind.id)}>
                  Record it
                  <span class="hidden-words">
                    : {row.checkKind.name}, {row.trailer.number}
                  </span>
                </a>
              ),
            },
          ]}
        />
      )}
      <Pager
        paging={{ page: screen.page, perPage: screen.perPage, total: due.total }}
        path="/due"
        query={query}
        what="checks due"
      />
    </Page>
  );
}

function WhyLine({ row, caller }: { readonly row: DueScreen['due']['rows'][number]; readonly caller: Caller }) {
  const parts = [dueWhy(row.due), yardDayWords(row.due, caller.today)].filter((part) => part !== null);
  return parts.length === 0 ? null : <span class="block small soft">{parts.join(' ')}</span>;
}
