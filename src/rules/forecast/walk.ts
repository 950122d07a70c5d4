import { dayNumber } from '../calendar/day-number.js';
import type { Job } from '../facts/use.js';
import { chanceToUse, daysToUse, type UseRate } from './use-rate.js';

/** A day, and the booked job that brings it, where one does. */
export interface Reached {
  readonly day: number;
  readonly job: Job | null;
}

/** What one booked job uses on one of its days. */
interface BookedDay {
  readonly day: number;
  readonly amount: number;
  readonly job: Job;
}

/** Booked days in a row. */
type BookedRun = readonly BookedDay[];

const HORIZON_DAYS = 3652;

/** A tenth of a millimetre: sums of fractions must not miss a limit that was reached exactly. */
const NOISE = 1e-7;

/** Use on days without a booked job. */
export interface Usual {
  /** Outside booked jobs: on days for which jobs are booked by now, if there are any. Null when nothing is known. */
  readonly background: UseRate | null;
  /** All of it, hauls that came from booked jobs included: on days so far ahead that nobody has booked them yet. */
  readonly overall: UseRate | null;
}

/** Nothing but what is booked. */
export const ONLY_BOOKED: Usual = { background: null, overall: null };

/**
 * Further ahead than this a job does not mean that all jobs until then are booked too. Our choice: a month.
 */
const BOOKED_AHEAD_DAYS = 30;

/**
 * The days to come, from the end of `from`: booked jobs use what they are booked for on their days, and on all days
 * between the usual use goes on, at a rate known with its spread. So a limit L is passed by a day with the chance that
 * the days between have used L less what was booked until then.
 *
 * After the last booked job, or a month from `from`, the usual use is all of it: a trailer that only ever goes out on
 * jobs is not taken to stand for ever because next month's are not booked yet.
 */
export class Walk {
  private readonly runs: readonly BookedRun[];
  /** Last day that is taken to have all its jobs booked. */
  private readonly bookedUpTo: number;

  constructor(
    booked: readonly BookedDay[],
    readonly from: number,
    private readonly usual: Usual,
  ) {
    this.runs = inRuns(booked.filter(({ day }) => day > from));
    const lastDay = this.runs.at(-1)?.at(-1)?.day ?? from;
    this.bookedUpTo = Math.min(lastDay, from + BOOKED_AHEAD_DAYS);
  }

  /**
   * First day by whose end `amount` has been used with chance `chance`, counted from the end of `from` or of `since` if
   * that is later, within ten years; null when never.
   */
  reaching(amount: number, since: number, chance: number, usual = this.usual): Reached | null {
    const start = Math.max(this.from, since);
    if (amount <= NOISE) return { day: start, job: null };
    const steps = new Steps(amount, start, chance, usual, this.bookedUpTo);
    for (const run of this.runs) {
      const days = start < (run[0] as BookedDay).day ? run : run.filter(({ day }) => day > start);
      if (days.length === 0) continue;
      const reached = steps.freeUpTo((days[0] as BookedDay).day - 1) ?? steps.booked(days);
      if (reached !== null) return reached;
    }
    return steps.freeEverAfter(start + HORIZON_DAYS);
  }
}

/** How far one walk has come. */
class Steps {
  /** Free days gone by, in days of the rate that holds now. */
  private free = 0;
  private rate: UseRate | null;

  constructor(
    private left: number,
    private today: number,
    private readonly chance: number,
    private readonly usual: Usual,
    private readonly bookedUpTo: number,
  ) {
    this.rate = usual.background;
  }

  /** Days without a booked job, up to and with `day`. */
  freeUpTo(day: number): Reached | null {
    const reached = this.useUpTo(Math.min(day, this.bookedUpTo));
    if (reached !== null || day <= this.bookedUpTo) return reached;
    this.changeRate();
    return this.useUpTo(day);
  }

  /** The same after the last booked job, up to the horizon. */
  freeEverAfter(horizon: number): Reached | null {
    const reached = this.useUpTo(this.bookedUpTo);
    if (reached !== null) return reached;
    this.changeRate();
    if (this.rate === null) return null;
    const day = this.today + this.daysNeeded(this.rate);
    return day <= horizon ? { day, job: null } : null;
  }

  /** Booked days in a row, right after. Looks for the one that crosses only where the last of them has. */
  booked(days: readonly BookedDay[]): Reached | null {
    const all = days.reduce((sum, { amount }) => sum + amount, 0);
    if (this.isPassed(this.left - all)) {
      let left = this.left;
      for (const { day, amount, job } of days) {
        left -= amount;
        if (this.isPassed(left)) return { day, job };
      }
    }
    this.left -= all;
    this.today = (days.at(-1) as BookedDay).day;
    return null;
  }

  private isPassed(left: number): boolean {
    if (left <= NOISE) return true;
    return this.rate !== null && this.free > 0 && chanceToUse(this.rate, left, this.free) >= this.chance;
  }

  private useUpTo(day: number): Reached | null {
    const days = day - this.today;
    if (days <= 0) return null;
    if (this.rate !== null && chanceToUse(this.rate, this.left, this.free + days) >= this.chance) {
      return { day: this.today + Math.min(days, this.daysNeeded(this.rate)), job: null };
    }
    this.free += days;
    this.today = day;
    return null;
  }

  private daysNeeded(rate: UseRate): number {
    return Math.max(1, Math.ceil(daysToUse(rate, this.left, this.chance) - this.free - NOISE));
  }

  /** What was used on free days so far is kept, as the days in which the new rate would have used as much. */
  private changeRate(): void {
    const { background, overall } = this.usual;
    if (this.rate === overall) return;
    this.free = background === null || overall === null ? 0 : (this.free * background.perDay) / overall.perDay;
    this.rate = overall;
  }
}

/** Spreads what each job uses over its days, and puts days on which jobs overlap together. */
export function bookedDays(
  jobs: readonly Job[],
  usedOn: (job: Job, day: number, days: number) => number | null,
): readonly BookedDay[] {
  const byDay = new Map<number, BookedDay>();
  for (const job of jobs) {
    const first = dayNumber(job.startsOn);
    const last = dayNumber(job.endsOn);
    for (let day = first; day <= last; day++) {
      const amount = usedOn(job, day, last - first + 1);
      if (amount === null) continue;
      const other = byDay.get(day);
      byDay.set(day, other === undefined ? { day, amount, job } : { ...other, amount: other.amount + amount });
    }
  }
  return [...byDay.values()].sort((a, b) => a.day - b.day);
}

function inRuns(booked: readonly BookedDay[]): readonly BookedRun[] {
  const runs: BookedDay[][] = [];
  for (const one of booked) {
    const run = runs.at(-1);
    if (run !== undefined && (run.at(-1) as BookedDay).day === one.day - 1) run.push(one);
    else runs.push([one]);
  }
  return runs;
}
