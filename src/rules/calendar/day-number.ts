import type { CivilDate } from './civil-date.js';

/**
 * Days since 1 January 1970, for sums over many days where building date objects would cost more than the answer.
 * Proleptic Gregorian calendar. Source: H. Hinnant, "chrono-compatible low-level date algorithms", `days_from_civil`;
 * checked day by day against date-fns in the tests. Valid for the years 0000 to 9999.
 */
export function dayNumber(date: CivilDate): number {
  const month = twoDigits(date, 5);
  const year = yearOf(date) - (month <= 2 ? 1 : 0);
  const era = Math.floor(year / 400);
  const yearOfEra = year - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + twoDigits(date, 8) - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** The day with this number: the inverse of `dayNumber`. Source: as above, `civil_from_days`. */
export function dayFromNumber(number: number): CivilDate {
  const shifted = number + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const dayOfMonth = dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1;
  const month = monthFromMarch + (monthFromMarch < 10 ? 3 : -9);
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return written(year, month, dayOfMonth);
}

/** `days` after the date (before it when negative), without building a date object. */
export function daysAfter(date: CivilDate, days: number): CivilDate {
  return dayFromNumber(dayNumber(date) + days);
}

/** Adds whole months; a day the month does not have becomes its last day. The quick twin of `addMonths`, tested against it. */
export function monthsAfter(date: CivilDate, months: number): CivilDate {
  const inMonths = yearOf(date) * 12 + twoDigits(date, 5) - 1 + months;
  const year = Math.floor(inMonths / 12);
  const month = inMonths - year * 12 + 1;
  const dayOfMonth = Math.min(twoDigits(date, 8), lengthOfMonth(year, month));
  return written(year, month, dayOfMonth);
}

function lengthOfMonth(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** Written out rather than looped: a thousand trips have two thousand days to read. */
function twoDigits(text: string, from: number): number {
  return text.charCodeAt(from) * 10 + text.charCodeAt(from + 1) - ZERO * 11;
}

function yearOf(date: CivilDate): number {
  return twoDigits(date, 0) * 100 + twoDigits(date, 2);
}

const ZERO = '0'.charCodeAt(0);

/** Month and day written once for all, since a schedule writes hundreds of dates. */
const TWO_DIGITS: readonly string[] = Array.from({ length: 32 }, (_, value) => String(value).padStart(2, '0'));

function written(year: number, month: number, dayOfMonth: number): CivilDate {
  const yearDigits = year >= 1_000 ? String(year) : String(year).padStart(4, '0');
  return `${yearDigits}-${TWO_DIGITS[month]}-${TWO_DIGITS[dayOfMonth]}` as CivilDate;
}

/** Mean length of a year of the Julian calendar, days: near enough for lives and rates, never for a due date. */
export const MEAN_YEAR_DAYS = 365.25;

/** Mean years from one day to another; negative when the second comes first. */
export function yearsBetween(from: CivilDate, to: CivilDate): number {
  return (dayNumber(to) - dayNumber(from)) / MEAN_YEAR_DAYS;
}
