import { UTCDate } from '@date-fns/utc';
import { differenceInCalendarDays } from 'date-fns';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, addMonths, type CivilDate, day } from '../../../src/rules/calendar/civil-date.js';
import { dayFromNumber, dayNumber, daysAfter, monthsAfter } from '../../../src/rules/calendar/day-number.js';

describe('day numbers', () => {
  it('count the same days as date-fns, every day of 1999 to 2041', () => {
    const epoch = new UTCDate(1970, 0, 1);
    let date: CivilDate = day('1999-01-01');
    for (let number = differenceInCalendarDays(new UTCDate(1999, 0, 1), epoch); date < '2042-01-01'; number++) {
      expect(dayNumber(date)).toBe(number);
      expect(dayFromNumber(number)).toBe(date);
      date = addDays(date, 1);
    }
  });

  it('come back as the day they were made from, for any year a trailer can have', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -25_000, max: 60_000 }),
        fc.integer({ min: -4_000, max: 4_000 }),
        (number, days) => {
          expect(dayNumber(dayFromNumber(number))).toBe(number);
          expect(daysAfter(dayFromNumber(number), days)).toBe(addDays(dayFromNumber(number), days));
        },
      ),
    );
  });

  it('add months as date-fns does, month ends and leap days included', () => {
    fc.assert(
      fc.property(fc.integer({ min: -25_000, max: 60_000 }), fc.integer({ min: -60, max: 240 }), (number, months) => {
        expect(monthsAfter(dayFromNumber(number), months)).toBe(addMonths(dayFromNumber(number), months));
      }),
      { numRuns: 2_000 },
    );
    expect(monthsAfter(day('2024-02-29'), 12)).toBe('2025-02-28');
    expect(monthsAfter(day('2024-12-31'), 14)).toBe('2026-02-28');
  });
});
