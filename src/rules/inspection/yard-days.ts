import type { CivilDate } from '../calendar/civil-date.js';
import { daysAfter } from '../calendar/day-number.js';
import type { Job } from '../facts/use.js';

/** Days in a row, first and last included. */
export interface DayRun {
  readonly from: CivilDate;
  readonly to: CivilDate;
}

/** The days from `from` to `to` on which no booked job has the trailer. `jobs` in the order of their start. */
export function yardDays(jobs: readonly Job[], from: CivilDate, to: CivilDate): readonly DayRun[] {
  const runs: DayRun[] = [];
  let free = from;
  for (const job of jobs) {
    if (job.startsOn > to) break;
    const dayBefore = daysAfter(job.startsOn, -1);
    if (free <= dayBefore) runs.push({ from: free, to: dayBefore });
    const dayAfter = daysAfter(job.endsOn, 1);
    if (dayAfter > free) free = dayAfter;
  }
  if (free <= to) runs.push({ from: free, to });
  return runs;
}

/** What is left of such runs from a day on: for reading an answer that was kept on an earlier day. */
export function yardDaysFrom(runs: readonly DayRun[], day: CivilDate): readonly DayRun[] {
  return runs.filter((run) => run.to >= day).map((run) => (run.from < day ? { from: day, to: run.to } : run));
}
