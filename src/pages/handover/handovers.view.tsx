import { type Caller, may } from '../../use-cases/caller.js';
import type { HandoversScreen } from '../../use-cases/show/show-handovers.js';
import { showDate } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';

interface HandoversProps {
  readonly caller: Caller;
  readonly screen: HandoversScreen;
  readonly said: string | null;
}

/** Every time a trailer went out and came back, latest first. */
export function HandoversPage({ caller, screen, said }: HandoversProps) {
  const { trailer, outNow } = screen;
  const path = `/trailers/${trailer.id}`;
  return (
    <Page title={`Out and return, ${trailer.yardNumber}`} caller={caller} door="Trailers" at="below" said={said}>
      <Head
        title={
          <span class="row">
            <YardNumber number={trailer.yardNumber} id={trailer.id} /> Out and return
          </span>
        }
        lede={outNow === null ? 'It is in the yard.' : `With ${outNow.customer} since ${showDate(outNow.on)}.`}
      >
        {may(caller, 'hand') &&
          (outNow === null ? (
            <a class="button button-main" href={`${path}/hand-out`}>
              Hand it out
            </a>
          ) : (
            <a class="button button-main" href={`${path}/take-back`}>
              Take it back
            </a>
          ))}
      </Head>
      {screen.handovers.length === 0 ? (
        <p class="empty">Nobody has handed it out yet.</p>
      ) : (
        <Table
          caption="Handed out and taken back"
          rows={screen.handovers}
          rowKey={({ fact }) => fact.id}
          columns={[
            {
              label: 'When',
              lead: true,
              cell: ({ fact }) => (
                <a href={`${path}/handovers/${fact.id}`}>
                  {fact.way === 'out' ? 'Out' : 'Back'}, {showDate(fact.on)}
                </a>
              ),
            },
            { label: 'Customer', cell: ({ fact }) => fact.customer },
            { label: 'By', cell: ({ fact }) => fact.byName },
            { label: 'Stands', cell: ({ standing }) => (standing ? 'Yes' : 'Taken back') },
          ]}
        />
      )}
    </Page>
  );
}
