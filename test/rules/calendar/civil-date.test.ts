import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addDays,
  addMonths,
  day,
  dayOfWeek,
  daysBetween,
  earliest,
  lastDayOfMonth,
  latest,
  monthOf,
  parseCivilDate,
  wholeMonthsBetween,
  yearOf,
} from '../../../src/rules/calendar/civil-date.js';

const someDay = fc.integer({ min: 0, max: 40_000 }).map((days) => addDays(day('1990-01-01'), days));

describe('a day of the calendar', () => {
  test.each(['2025-02-29', '2025-13-01', '2025-00-10', '2025-04-31', '2025-4-1', '2025-04-01T00:00', '', 'today'])(
    '"%s" is none',
    (text) => {
      expect(parseCivilDate(text)).toBeNull();
      expect(() => day(text)).toThrow(RangeError);
    },
  );

  test('29 February is one in a leap year, and 2100 is none', () => {
    expect([parseCivilDate('2024-02-29'), parseCivilDate('2000-02-29'), parseCivilDate('2100-02-29')]).toEqual([
      '2024-02-29',
      '2000-02-29',
      null,
    ]);
  });

  test('has its year, month and day of the week', () => {
    expect([yearOf(day('2009-01-04')), monthOf(day('2009-01-04')), dayOfWeek(day('2009-01-04'))]).toEqual([2009, 1, 0]);
  });
});

describe('months', () => {
  // 49 CFR 396.17 and 396.21 as read month by month: the day is clamped to the month's last.
  test.each([
    ['2024-02-29', 12, '2025-02-28'],
    ['2024-12-31', 14, '2026-02-28'],
    ['2023-06-30', 14, '2024-08-30'],
    ['2024-01-31', 1, '2024-02-29'],
    ['2025-03-31', -1, '2025-02-28'],
  ])('%s and %s months make %s', (from, months, expected) => {
    expect(addMonths(day(from), months)).toBe(expected);
  });

  test.each([
    ['2024-01-31', '2024-02-28', 0],
    ['2024-01-31', '2024-02-29', 1],
    ['2004-02-29', '2005-02-28', 12],
    ['2019-04-14', '2025-11-20', 79],
    ['2025-06-09', '2025-06-09', 0],
  ])('from %s to %s', (from, to, expected) => {
    expect(wholeMonthsBetween(day(from), day(to))).toBe(expected);
  });

  test('are never counted backward', () => {
    expect(() => wholeMonthsBetween(day('2025-01-02'), day('2025-01-01'))).toThrow(RangeError);
  });

  test('counted between two days, they fit and one more would not', () => {
    fc.assert(
      fc.property(someDay, fc.integer({ min: 0, max: 9_000 }), (from, days) => {
        const to = addDays(from, days);
        const months = wholeMonthsBetween(from, to);
        expect(addMonths(from, months) <= to).toBe(true);
        expect(addMonths(from, months + 1) > to).toBe(true);
      }),
    );
  });

  test('end on their last day', () => {
    expect([lastDayOfMonth(day('2024-02-01')), lastDayOfMonth(day('2025-12-31'))]).toEqual([
      '2024-02-29',
      '2025-12-31',
    ]);
  });
});

describe('days', () => {
  test('added and counted agree, across every change of clocks and leap day', () => {
    fc.assert(
      fc.property(someDay, fc.integer({ min: -9_000, max: 9_000 }), (from, days) => {
        expect(daysBetween(from, addDays(from, days))).toBe(days);
      }),
    );
  });

  test('compare as text in the order of time', () => {
    fc.assert(
      fc.property(someDay, someDay, (a, b) => {
        expect(a < b).toBe(daysBetween(a, b) > 0);
      }),
    );
  });

  test('have an earliest and a latest, unless there are none', () => {
    const days = ['2025-05-02', '2025-05-01', '2025-05-03'].map(day);
    expect([earliest(days), latest(days), earliest([]), latest([])]).toEqual(['2025-05-01', '2025-05-03', null, null]);
  });
});
