import type { ComponentChildren } from 'preact';
import { ReadinessMark } from '../components/marks.js';
import { showCount, showDates, showNearDate } from '../components/show-quantity.js';
import { YardNumber } from '../components/yard-number.js';
import type { Bar, DayColumn, Lane, LaneDue, LaneHold } from './lanes.js';

interface LaneTableProps {
  readonly lanes: readonly Lane[];
  readonly columns: readonly DayColumn[];
  readonly weeks: number;
}

/** A row of days for each trailer. On a phone the days scroll inside their own frame, the numbers stay in sight. */
export function LaneTable({ lanes, columns, weeks }: LaneTableProps) {
  return (
    <section class="lanes-frame" tabindex={0} aria-label="Days of the trailers">
      <table class={`lanes lanes-${weeks}`}>
        <caption class="hidden-words">Jobs, checks due and holds by trailer and day</caption>
        <colgroup>
          <col class="lane-name" />
          <col span={columns.length} />
        </colgroup>
        <thead>
          <tr>
            <th scope="col">Trailer</th>
            {columns.map((column) => (
              <DayHead key={column.date} column={column} />
            ))}
          </tr>
        </thead>
        {lanes.map((lane) => (
          <LaneBody key={lane.trailer?.id ?? 'none'} lane={lane} columns={columns} />
        ))}
      </table>
    </section>
  );
}

function DayHead({ column }: { readonly column: DayColumn }) {
  const [weekday, day, month] = showNearDate(column.date).split(' ');
  return (
    <th scope="col" class={dayClass(column)} aria-label={showNearDate(column.date)}>
      <span class="small">{weekday}</span>
      <b>{day}</b>
      <span class="small">{month}</span>
    </th>
  );
}

function LaneBody({ lane, columns }: { readonly lane: Lane; readonly columns: readonly DayColumn[] }) {
  const { trailer, rows, holds, due } = lane;
  const tracks: readonly { readonly key: string; readonly cells: ComponentChildren }[] = [
    ...holds.map((hold) => ({ key: hold.id, cells: <HoldCells hold={hold} columns={columns} /> })),
    ...rows.map((bars, place) => ({
      key: `jobs ${place}`,
      cells: <JobCells bars={bars} columns={columns} clash={place > 0} />,
    })),
    ...(due.size === 0 ? [] : [{ key: 'due', cells: <DueCells due={due} columns={columns} /> }]),
  ];
  return (
    <tbody data-trailer={trailer?.id} data-number={trailer?.number}>
      {tracks.map(({ key, cells }, place) => (
        <tr key={key}>
          {place === 0 && <LaneName trailer={trailer} rows={tracks.length} />}
          {cells}
        </tr>
      ))}
    </tbody>
  );
}

function LaneName({ trailer, rows }: { readonly trailer: Lane['trailer']; readonly rows: number }) {
  return (
    <th scope="rowgroup" rowspan={rows} class="lane-name">
      {trailer === null ? (
        <span class="unknown">No trailer picked</span>
      ) : (
        <>
          <YardNumber number={trailer.number} id={trailer.id} />
          {trailer.readiness !== 'ready' && <ReadinessMark readiness={trailer.readiness} />}
        </>
      )}
    </th>
  );
}

interface CellsProps {
  readonly columns: readonly DayColumn[];
}

function JobCells({ bars, columns, clash }: CellsProps & { readonly bars: readonly Bar[]; readonly clash: boolean }) {
  return (
    <>
      {columns.map((column, place) => {
        const bar = bars.find(({ start, span }) => place >= start && place < start + span);
        if (bar === undefined) return <td key={column.date} class={dayClass(column)} />;
        if (bar.start !== place) return null;
        const days = showDates(bar.job.startsOn, bar.job.endsOn);
        return (
          <td key={column.date} colspan={bar.span}>
            <a
              class={clash ? 'lane-job lane-clash' : 'lane-job'}
              href={`/jobs/${bar.job.id}`}
              data-job={bar.job.id}
              draggable={false}
              title={`${bar.job.name}, ${days}`}
            >
              {bar.job.name}
              <span class="hidden-words">
                {days}
                {clash && ', shares days with another job'}
              </span>
            </a>
          </td>
        );
      })}
    </>
  );
}

/** A hold has no end until somebody lifts it: it runs on to the last day shown. */
function HoldCells({ hold, columns }: CellsProps & { readonly hold: LaneHold }) {
  const start = columns.findIndex(({ date }) => date >= hold.openedOn);
  if (start === -1) return columns.map((column) => <td key={column.date} class={dayClass(column)} />);
  return (
    <>
      {columns.slice(0, start).map((column) => (
        <td key={column.date} class={dayClass(column)} />
      ))}
      <td colspan={columns.length - start}>
        <span class="lane-hold">
          <b>On hold</b> {hold.reason}
        </span>
      </td>
    </>
  );
}

function DueCells({ due, columns }: CellsProps & { readonly due: Lane['due'] }) {
  return (
    <>
      {columns.map((column, place) => {
        const here = due.get(place) ?? [];
        return (
          <td key={column.date} class={dayClass(column)}>
            {here.length > 0 && <DueMarks due={here} />}
          </td>
        );
      })}
    </>
  );
}

/** A mark that names all of thirty checks is read by nobody. */
const MOST_NAMED = 4;

/** One leads to its check sheet; of several, the number leads to the trailer. */
function DueMarks({ due }: { readonly due: readonly LaneDue[] }) {
  const [first] = due;
  if (first === undefined) return null;
  const over = due.some(({ state }) => state === 'overdue');
  const named = due
    .slice(0, MOST_NAMED)
    .map(({ name, state }) => `${name}, ${state === 'overdue' ? 'overdue' : 'due'}`);
  const more = due.length - named.length;
  const said = [...named, ...(more > 0 ? [`and ${showCount(more, 'more', 'more')}`] : [])].join('; ');
  const trailer = `/trailers/${first.trailerId}`;
  return (
    <a
      class={over ? 'lane-due lane-over' : 'lane-due'}
      href={due.length === 1 ? `${trailer}/checks/${first.checkKindId}` : `${trailer}#due`}
      title={said}
    >
      <span aria-hidden="true">
        {over ? '!' : '◆'}
        {due.length > 1 && due.length}
      </span>
      <span class="hidden-words">{said}</span>
    </a>
  );
}

function dayClass({ today, weekend }: DayColumn): string | undefined {
  return today ? 'lane-today' : weekend ? 'lane-weekend' : undefined;
}
