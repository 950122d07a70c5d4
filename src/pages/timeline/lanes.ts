import { addDays, type CivilDate, dayOfWeek, daysBetween } from '../../rules/calendar/civil-date.js';
import type { TimelineScreen } from '../../use-cases/show/show-timeline.js';

type Days = TimelineScreen['days'];
type LaneTrailer = TimelineScreen['trailers']['rows'][number];
export type LaneJob = TimelineScreen['jobs'][number];
export type LaneHold = TimelineScreen['holds'][number];
export type LaneDue = TimelineScreen['due'][number];

export interface DayColumn {
  readonly date: CivilDate;
  readonly today: boolean;
  readonly weekend: boolean;
}

/** A job as it lies in a row: the first column it covers, from 0, and how many. */
export interface Bar {
  readonly job: LaneJob;
  readonly start: number;
  readonly span: number;
}

/** One trailer, or the jobs that have none. */
export interface Lane {
  readonly trailer: LaneTrailer | null;
  /** Jobs that share a day stand in rows of their own: more than one row is a double booking. */
  readonly rows: readonly (readonly Bar[])[];
  readonly holds: readonly LaneHold[];
  /** By column; what was wanted before the first day, or has no day, stands under today or the first day. */
  readonly due: ReadonlyMap<number, readonly LaneDue[]>;
}

export function dayColumns({ from, to }: Days, today: CivilDate): readonly DayColumn[] {
  return Array.from({ length: daysBetween(from, to) + 1 }, (_, place) => {
    const date = addDays(from, place);
    return { date, today: date === today, weekend: [0, 6].includes(dayOfWeek(date)) };
  });
}

/** The lanes of a page, each trailer with its own; the jobs without one first, if there are any. */
export function lanesOf({ trailers, jobs, holds, due, unplaced, days, today }: TimelineScreen): readonly Lane[] {
  const lanes = trailers.rows.map((trailer): Lane => {
    const mine = <Row extends { readonly trailerId: string | null }>(rows: readonly Row[]) =>
      rows.filter(({ trailerId }) => trailerId === trailer.id);
    return { trailer, rows: rowsOf(mine(jobs), days), holds: mine(holds), due: dueByColumn(mine(due), days, today) };
  });
  if (unplaced.length === 0) return lanes;
  return [{ trailer: null, rows: rowsOf(unplaced, days), holds: [], due: new Map() }, ...lanes];
}

/** Lays jobs into as few rows as hold them without overlap. They come in the order of their first days. */
function rowsOf(jobs: readonly LaneJob[], days: Days): readonly (readonly Bar[])[] {
  const rows: Bar[][] = [];
  for (const job of jobs) {
    const start = Math.max(0, daysBetween(days.from, job.startsOn));
    const end = Math.min(daysBetween(days.from, days.to), daysBetween(days.from, job.endsOn));
    const bar = { job, start, span: end - start + 1 };
    const free = rows.find((row) => {
      const last = row.at(-1);
      return last === undefined || last.start + last.span <= start;
    });
    if (free) free.push(bar);
    else rows.push([bar]);
  }
  return rows.length === 0 ? [[]] : rows;
}

function dueByColumn(due: readonly LaneDue[], days: Days, today: CivilDate): ReadonlyMap<number, readonly LaneDue[]> {
  const now = Math.max(0, daysBetween(days.from, today));
  const last = daysBetween(days.from, days.to);
  const columns = new Map<number, LaneDue[]>();
  for (const one of due) {
    const place = one.dueOn === null ? now : Math.max(now, daysBetween(days.from, one.dueOn));
    if (place > last) continue;
    const there = columns.get(place);
    if (there) there.push(one);
    else columns.set(place, [one]);
  }
  return columns;
}
