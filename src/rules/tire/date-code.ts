import { type CivilDate, yearOf } from '../calendar/civil-date.js';
import { dayFromNumber, dayNumber } from '../calendar/day-number.js';

/**
 * The week in which a tire was made, from the four digits that end its identification number: week, then year.
 *
 * Weeks run Sunday to Saturday; week 01 is the first full week of the year, so it starts on the first Sunday of
 * January, and the last week may hold up to six days of the next year. A year has as many weeks as Sundays, 52 or 53.
 * These are not ISO weeks. Source: 49 CFR 574.5(b)(3); its example: 0109 is 4 to 10 January 2009.
 */
export type DateCode =
  | {
      readonly kind: 'week';
      readonly code: string;
      readonly year: number;
      readonly week: number;
      /** Sunday. Age is counted from here, the earliest day it can have been made. */
      readonly madeFrom: CivilDate;
      /** Saturday. */
      readonly madeTo: CivilDate;
    }
  | { readonly kind: 'refused'; readonly code: string; readonly reason: DateCodeRefusal };

export type DateCodeRefusal =
  /** Three digits: a tire made before 2000 (the four-digit form comes from 64 FR 36807, 8 July 1999). */
  | { readonly kind: 'before-2000' }
  | { readonly kind: 'not-four-digits' }
  | { readonly kind: 'no-such-week'; readonly week: number; readonly year: number; readonly weeksInYear: number }
  /** Made after the day of asking: a misread code. */
  | { readonly kind: 'in-the-future'; readonly madeFrom: CivilDate };

const DAYS_A_WEEK = 7;

/** Reads a date code. With `asOf`, a week that starts later is refused. Blanks around it are no part of it. */
export function parseDateCode(text: string, asOf: CivilDate | null): DateCode {
  const code = text.trim();
  const refused = (reason: DateCodeRefusal): DateCode => ({ kind: 'refused', code, reason });
  if (/^\d{3}$/.test(code)) return refused({ kind: 'before-2000' });
  if (!/^\d{4}$/.test(code)) return refused({ kind: 'not-four-digits' });
  const week = Number(code.slice(0, 2));
  const year = 2000 + Number(code.slice(2));
  const weeksInYear = tireWeeksInYear(year);
  if (week < 1 || week > weeksInYear) return refused({ kind: 'no-such-week', week, year, weeksInYear });
  const sunday = firstSunday(year) + (week - 1) * DAYS_A_WEEK;
  const madeFrom = dayFromNumber(sunday);
  if (asOf !== null && madeFrom > asOf) return refused({ kind: 'in-the-future', madeFrom });
  return { kind: 'week', code, year, week, madeFrom, madeTo: dayFromNumber(sunday + DAYS_A_WEEK - 1) };
}

/** The code of the week a day lies in. Throws RangeError for days that four digits cannot tell: before 2000's first week or after 2099's last. */
export function dateCodeOf(date: CivilDate): string {
  const calendarYear = yearOf(date);
  const day = dayNumber(date);
  const year = day < firstSunday(calendarYear) ? calendarYear - 1 : calendarYear;
  if (year < 2000 || year > 2099) throw new RangeError(`${date} has no four-digit date code: it tells 2000 to 2099`);
  const week = Math.floor((day - firstSunday(year)) / DAYS_A_WEEK) + 1;
  return `${String(week).padStart(2, '0')}${String(year % 100).padStart(2, '0')}`;
}

/** 52 or 53: as many as the year has Sundays. */
export function tireWeeksInYear(year: number): number {
  return Math.ceil((newYear(year + 1) - firstSunday(year)) / DAYS_A_WEEK);
}

// As day numbers: a set of tires is read on every reckoning, and date objects would cost more than all else about them.

/** Day 3, the fourth of January 1970, was a Sunday. */
const A_SUNDAY = 3;

function firstSunday(year: number): number {
  const first = newYear(year);
  return first + ((((A_SUNDAY - first) % DAYS_A_WEEK) + DAYS_A_WEEK) % DAYS_A_WEEK);
}

function newYear(year: number): number {
  return dayNumber(`${String(year).padStart(4, '0')}-01-01` as CivilDate);
}
