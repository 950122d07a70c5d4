import { UTCDate } from '@date-fns/utc';
// One function at a time: the whole library is three hundred files, two seconds of every start.
import { addDays as addDaysTo } from 'date-fns/addDays';
import { addMonths as addMonthsTo } from 'date-fns/addMonths';
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { endOfMonth } from 'date-fns/endOfMonth';
import { getDay } from 'date-fns/getDay';
import { isValid } from 'date-fns/isValid';

declare const civil: unique symbol;

/**
 * A day on the calendar, with no hour and no zone, written `YYYY-MM-DD`.
 * Two of them compare as text in the order of time. Each door says which zone made "today".
 */
export type CivilDate = string & { readonly [civil]: true };

/** Reads `YYYY-MM-DD`. Returns null for anything that is not a day that exists (so 2025-02-29 is null). */
export function parseCivilDate(text: string): CivilDate | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return null;
  const date = new UTCDate(`${text}T00:00:00Z`);
  return isValid(date) && format(date) === text ? (text as CivilDate) : null;
}

/** A day known to be right when written. Throws RangeError for a day that does not exist. */
export function day(text: string): CivilDate {
  const parsed = parseCivilDate(text);
  if (parsed === null) throw new RangeError(`"${text}" is no day of the calendar; write it as YYYY-MM-DD`);
  return parsed;
}

export function addDays(date: CivilDate, days: number): CivilDate {
  return format(addDaysTo(toUtc(date), days));
}

/** Adds whole months; a day the month does not have becomes its last day (31 January + 1 month = 28 or 29 February). */
export function addMonths(date: CivilDate, months: number): CivilDate {
  return format(addMonthsTo(toUtc(date), months));
}

export function lastDayOfMonth(date: CivilDate): CivilDate {
  return format(endOfMonth(toUtc(date)));
}

/** Days from `from` to `to`; negative when `to` is the earlier. */
export function daysBetween(from: CivilDate, to: CivilDate): number {
  return differenceInCalendarDays(toUtc(to), toUtc(from));
}

/**
 * Whole calendar months from one day to a later one: the most that, added to `from`, do not pass `to`.
 * So from 31 January to 28 February is one month, as `addMonths` has it. Throws RangeError when `to` comes first.
 */
export function wholeMonthsBetween(from: CivilDate, to: CivilDate): number {
  if (to < from) throw new RangeError(`${to} comes before ${from}: months are counted forward only`);
  const months = (yearOf(to) - yearOf(from)) * 12 + monthOf(to) - monthOf(from);
  // Those months lead into the month of `to`, and past it only where its day is still to come and it is not the last.
  return from.slice(8) > to.slice(8) && to !== lastDayOfMonth(to) ? months - 1 : months;
}

export function yearOf(date: CivilDate): number {
  return Number(date.slice(0, 4));
}

/** 1 = January … 12 = December. */
export function monthOf(date: CivilDate): number {
  return Number(date.slice(5, 7));
}

/** 0 = Sunday … 6 = Saturday. */
export function dayOfWeek(date: CivilDate): number {
  return getDay(toUtc(date));
}

export function earliest(dates: readonly CivilDate[]): CivilDate | null {
  return dates.reduce<CivilDate | null>((first, date) => (first === null || date < first ? date : first), null);
}

export function latest(dates: readonly CivilDate[]): CivilDate | null {
  return dates.reduce<CivilDate | null>((last, date) => (last === null || date > last ? date : last), null);
}

function toUtc(date: CivilDate): UTCDate {
  return new UTCDate(`${date}T00:00:00Z`);
}

function format(date: Date): CivilDate {
  return date.toISOString().slice(0, 10) as CivilDate;
}
