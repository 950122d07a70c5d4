import { type CivilDate, wholeMonthsBetween } from '../calendar/civil-date.js';
import { monthsAfter } from '../calendar/day-number.js';
import { parseDateCode } from './date-code.js';

const MONTHS_A_YEAR = 12;

/** How old a tire is: whole years, and whole months beyond them. */
export interface TireAge {
  readonly madeFrom: CivilDate;
  readonly years: number;
  readonly months: number;
}

/**
 * The age of a tire on a day, from its date code, counted from the Sunday of its week: the earliest day it can have
 * been made. Null when the code cannot be read, or is of a later week.
 */
export function tireAge(dateCode: string, asOf: CivilDate): TireAge | null {
  const code = parseDateCode(dateCode, asOf);
  return code.kind === 'refused' ? null : ageSince(code.madeFrom, asOf);
}

/** The same for a Sunday already read off the code, no later than the day. */
export function ageSince(madeFrom: CivilDate, asOf: CivilDate): TireAge {
  const months = wholeMonthsBetween(madeFrom, asOf);
  return { madeFrom, years: Math.floor(months / MONTHS_A_YEAR), months: months % MONTHS_A_YEAR };
}

/**
 * The first day on which a tire has reached the yard's age limit, in years from the Sunday of its week.
 * The limit is the yard's own: no federal age limit for tires exists (NHTSA's 2008 advisory only reports that some
 * makers say six to ten years).
 */
export function firstDayPastAge(madeFrom: CivilDate, limitYears: number): CivilDate {
  return monthsAfter(madeFrom, Math.round(limitYears * MONTHS_A_YEAR));
}
