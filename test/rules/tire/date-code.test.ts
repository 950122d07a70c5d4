import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, day, dayOfWeek } from '../../../src/rules/calendar/civil-date.js';
import { dateCodeOf, parseDateCode, tireWeeksInYear } from '../../../src/rules/tire/date-code.js';
import reference from '../reference/tire-number-cases.json' with { type: 'json' };

interface Expected {
  valid?: boolean;
  year?: number;
  week?: number;
  weekStart?: string;
  weekEnd?: string;
  dateCode?: string;
}

function casesOf(kind: string): [string, { dateCode?: string; date?: string }, Expected][] {
  return reference.cases.filter((one) => one.kind === kind).map((one) => [one.id, one.input, one.expected as Expected]);
}

describe('a date code means the week the regulation says', () => {
  test.each(casesOf('date-code'))('%s', (_id, input, expected) => {
    const code = parseDateCode(input.dateCode ?? '', null);
    expect(code.kind === 'week').toBe(expected.valid);
    if (code.kind === 'week') {
      expect([code.year, code.week, code.madeFrom, code.madeTo]).toEqual([
        expected.year,
        expected.week,
        expected.weekStart,
        expected.weekEnd,
      ]);
    }
  });

  test.each(casesOf('day-to-code'))('%s', (_id, input, expected) => {
    expect(dateCodeOf(day(input.date ?? ''))).toBe(expected.dateCode);
  });

  test('every published case was read', () => {
    expect(casesOf('date-code').length + casesOf('day-to-code').length).toBe(20);
  });

  test.each(reference.calendar.map((year) => [year.year, year] as const))('the weeks of %s', (year, row) => {
    expect(tireWeeksInYear(year)).toBe(row.weeks);
    const first = parseDateCode(`01${String(year).slice(2)}`, null);
    expect(first.kind === 'week' ? first.madeFrom : null).toBe(row.firstSunday);
  });
});

describe('a code that cannot be is refused with its reason', () => {
  test('three digits are a tire made before 2000', () => {
    expect(parseDateCode('329', null)).toEqual({ kind: 'refused', code: '329', reason: { kind: 'before-2000' } });
  });

  test('no year has a week 54', () => {
    expect(parseDateCode('5419', null)).toMatchObject({ reason: { kind: 'no-such-week', week: 54, weeksInYear: 52 } });
  });

  test('2020 had 52 such weeks, though the ISO calendar gives it 53', () => {
    expect(parseDateCode('5320', null)).toMatchObject({
      reason: { kind: 'no-such-week', year: 2020, weeksInYear: 52 },
    });
  });

  test('a week after the day of asking is a misreading, and the running week is not', () => {
    const week = { kind: 'week', madeFrom: '2025-06-01' };
    expect(parseDateCode('2225', day('2025-06-01'))).toMatchObject(week);
    expect(parseDateCode('2225', day('2025-05-31'))).toMatchObject({ reason: { kind: 'in-the-future' } });
  });

  test.each(['', '12', '12345', '12a4', '-119', '1.19'])('"%s" is no four digits', (text) => {
    expect(parseDateCode(text, null)).toMatchObject({ kind: 'refused', reason: { kind: 'not-four-digits' } });
  });
});

const someDay = fc.integer({ min: 0, max: 36_000 }).map((days) => addDays(day('2000-01-02'), days));

describe('on any day', () => {
  test('the code of a day names a week, Sunday to Saturday, in which the day lies', () => {
    fc.assert(
      fc.property(someDay, (date) => {
        const code = parseDateCode(dateCodeOf(date), null);
        if (code.kind !== 'week') throw new Error(`${date} has code ${code.code}, which is refused`);
        expect(code.madeFrom <= date && date <= code.madeTo).toBe(true);
        expect([dayOfWeek(code.madeFrom), dayOfWeek(code.madeTo)]).toEqual([0, 6]);
      }),
    );
  });

  test('days that four digits cannot tell are an error', () => {
    expect(() => dateCodeOf(day('2000-01-01'))).toThrow(RangeError);
    expect(dateCodeOf(day('2100-01-02'))).toBe('5299');
    expect(() => dateCodeOf(day('2100-01-03'))).toThrow(RangeError);
  });
});
