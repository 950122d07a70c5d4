import type { Trip } from '../../rules/facts/use.js';
import { type Caller, may } from '../../use-cases/caller.js';
import type { TrailerHistoryScreen } from '../../use-cases/show/show-trailer-history.js';
import { Pager } from '../components/pager.js';
import { showDate, showDates, showDistance, showMass } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import { positionWords, REMOVED_FOR_WORDS } from '../words/build-words.js';
import { HistoryLines } from './history-section.js';
import { partName } from './part-section.js';
import { cargoKg, cargoWords, roadWords } from './use-section.js';

interface HistoryProps {
  readonly caller: Caller;
  readonly screen: TrailerHistoryScreen;
  readonly said: string | null;
}

interface Standing {
  readonly standing: boolean;
  readonly takenBack: boolean;
}

/** Every fact ever told of a trailer, mended ones too: nothing is overwritten. */
export function HistoryPage({ caller, screen, said }: HistoryProps) {
  const { trailer } = screen;
  return (
    <Page title={`History of ${trailer.yardNumber}`} caller={caller} door="Trailers" at="below" said={said}>
      <Head
        title={
          <span class="row">
            <YardNumber number={trailer.yardNumber} id={trailer.id} /> History
          </span>
        }
        lede="Facts are mended by newer ones and never overwritten. What no longer stands is struck out."
      />
      <Trips caller={caller} screen={screen} />
      <Readings caller={caller} screen={screen} />
      <Checks caller={caller} screen={screen} />
      <PartsOff screen={screen} />
      <section class="stack-tight" aria-labelledby="entries">
        <h2 class="chalked" id="entries">
          Who did what
        </h2>
        <HistoryLines rows={screen.entries.rows} timeZone={caller.timeZone} />
        <Pager
          paging={{ page: screen.page, perPage: screen.perPage, total: screen.entries.total }}
          path={`/trailers/${trailer.id}/history`}
          query={{}}
          what="history"
        />
      </section>
    </Page>
  );
}

function struck(row: Standing, words: string) {
  if (row.standing) return words;
  return (
    <>
      <s>{words}</s> <span class="small soft">{row.takenBack ? 'taken back' : 'mended'}</span>
    </>
  );
}

function Trips({ caller, screen }: Omit<HistoryProps, 'said'>) {
  const path = `/trailers/${screen.trailer.id}/trips`;
  const mayMend = may(caller, 'hand');
  return (
    <section class="stack-tight" aria-labelledby="trips">
      <h2 class="chalked" id="trips">
        Trips
      </h2>
      {screen.trips.rows.length === 0 ? (
        <p class="empty">No trip is on file.</p>
      ) : (
        <Table
          caption={`${screen.trips.total} on file, latest first`}
          rows={screen.trips.rows}
          rowKey={(row) => row.fact.id}
          columns={[
            { label: 'Days', lead: true, cell: (row) => struck(row, showDates(row.fact.startedOn, row.fact.endedOn)) },
            { label: 'On the deck', cell: (row) => cargoWords(row.fact, screen) },
            { label: 'Weight', right: true, cell: (row) => showMass(cargoKg(row.fact)) },
            { label: 'Miles', right: true, cell: (row) => milesOf(row.fact) },
            { label: 'Through', cell: (row) => roadWords(row.fact) ?? 'nobody said' },
            ...(mayMend
              ? [
                  {
                    label: 'Mend',
                    cell: (row: (typeof screen.trips.rows)[number]) =>
                      row.standing && (
                        <a href={`${path}/${row.fact.id}`}>
                          Mend<span class="hidden-words"> the trip of {showDate(row.fact.startedOn)}</span>
                        </a>
                      ),
                  },
                ]
              : []),
          ]}
        />
      )}
      <Pager
        paging={{ page: screen.page, perPage: screen.perPage, total: screen.trips.total }}
        path={`/trailers/${screen.trailer.id}/history`}
        query={{}}
        what="trips"
      />
    </section>
  );
}

function milesOf(trip: Trip): string {
  return trip.distanceKm === null ? 'unknown' : showDistance(trip.distanceKm);
}

function Readings({ caller, screen }: Omit<HistoryProps, 'said'>) {
  if (screen.readings.length === 0) return null;
  const path = `/trailers/${screen.trailer.id}/readings`;
  return (
    <section class="stack-tight" aria-labelledby="readings">
      <h2 class="chalked" id="readings">
        Meter readings
      </h2>
      <ul class="lines sheet">
        {screen.readings.map((row) => (
          <li class="apart" key={row.fact.id}>
            <span>
              {struck(row, `${showDate(row.fact.takenOn)}: ${showDistance(row.fact.shownKm)}`)}
              {row.fact.kind === 'replaced' && ' (first of a new meter)'}
              {row.fact.kind === 'rolled-over' && ' (meter had rolled over)'}
            </span>
            {row.standing && may(caller, 'hand') && (
              <a href={`${path}/${row.fact.id}`}>
                Mend<span class="hidden-words"> the reading of {showDate(row.fact.takenOn)}</span>
              </a>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Checks({ caller, screen }: Omit<HistoryProps, 'said'>) {
  const path = `/trailers/${screen.trailer.id}/records`;
  return (
    <section class="stack-tight" aria-labelledby="checks">
      <h2 class="chalked" id="checks">
        Checks done
      </h2>
      {screen.checks.length === 0 ? (
        <p class="empty">No check is on file.</p>
      ) : (
        <ul class="lines sheet">
          {screen.checks.map((row) => {
            const bad = row.fact.lines.filter((line) => line.result === 'bad');
            return (
              <li class="apart" key={row.fact.id}>
                <span>
                  {struck(
                    row,
                    `${showDate(row.fact.doneOn)}: ${screen.checkKindNames.get(row.fact.checkKindId) ?? 'check'}, ${row.fact.outcome === 'pass' ? 'passed' : 'failed'}`,
                  )}
                  {bad.length > 0 && (
                    <span class="small soft">
                      {' '}
                      bad:{' '}
                      {bad
                        .map((line) => (line.position ? `${line.code} ${positionWords(line.position)}` : line.code))
                        .join(', ')}
                    </span>
                  )}
                </span>
                {may(caller, 'viewer') && (
                  <a href={`${path}/${row.fact.id}`}>
                    See it<span class="hidden-words">: {screen.checkKindNames.get(row.fact.checkKindId)}</span>
                  </a>
                )}
              </li>
            );
          })}
        </ul>
      )}
    </section>
  );
}

function PartsOff({ screen }: { readonly screen: TrailerHistoryScreen }) {
  const off = screen.parts.filter((row) => !row.standing || row.fact.removedOn !== null);
  if (off.length === 0) return null;
  return (
    <section class="stack-tight" aria-labelledby="parts-off">
      <h2 class="chalked" id="parts-off">
        Parts that were on it
      </h2>
      <ul class="lines sheet">
        {off.map((row) => (
          <li key={row.fact.id}>
            {struck(
              row,
              `${partName(row.fact)}: ${row.fact.fittedOn ? showDate(row.fact.fittedOn) : 'day unknown'} to ${row.fact.removedOn ? showDate(row.fact.removedOn) : 'now'}`,
            )}
            {row.fact.removedFor && (
              <span class="small soft"> {REMOVED_FOR_WORDS[row.fact.removedFor].toLowerCase()}</span>
            )}
            {row.fact.tire?.dateCode && <span class="small soft"> code {row.fact.tire.dateCode}</span>}
          </li>
        ))}
      </ul>
    </section>
  );
}
