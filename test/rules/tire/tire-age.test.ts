import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, day } from '../../../src/rules/calendar/civil-date.js';
import { parseDateCode } from '../../../src/rules/tire/date-code.js';
import { firstDayPastAge, tireAge } from '../../../src/rules/tire/tire-age.js';
import reference from '../reference/weights-and-ratings.json' with { type: 'json' };

describe('a tire ages from the Sunday of its week', () => {
  test.each(reference.cases.filter((one) => one.id.startsWith('age-')).map((one) => [one.id, one] as const))(
    '%s',
    (_id, { input, expected }) => {
      expect(tireAge(input.dateCode ?? '', day(input.asOf ?? ''))).toMatchObject({
        years: expected.ageYears,
        madeFrom: expected.countedFrom,
      });
      // The published bands begin to warn at a number of years; here that is the yard's limit.
      const isPast = firstDayPastAge(day(expected.countedFrom ?? ''), input.warnYears ?? 0) <= day(input.asOf ?? '');
      expect(isPast ? 'warn' : 'ok').toBe(expected.band);
    },
  );

  // Week 15 of 2019 runs 14 to 20 April by the regulation; an ISO reading would say 8 April. Both give 6 years 7 months.
  test('on 20 November 2025 a tire coded 1519 is 6 years 7 months old', () => {
    expect(tireAge('1519', day('2025-11-20'))).toEqual({ madeFrom: '2019-04-14', years: 6, months: 7 });
  });

  test('on 20 November 2025 a spare coded 3216 is 9 years 3 months old', () => {
    expect(tireAge('3216', day('2025-11-20'))).toEqual({ madeFrom: '2016-08-07', years: 9, months: 3 });
  });

  test('a code that is refused has no age', () => {
    expect(['329', '5419', '', '1530'].map((code) => tireAge(code, day('2025-11-20')))).toEqual([
      null,
      null,
      null,
      null,
    ]);
  });
});

describe('the yard says how old is too old', () => {
  test('a tire coded 2319 reaches six years on 9 June 2025 and not the day before', () => {
    const code = parseDateCode('2319', null);
    if (code.kind !== 'week') throw new Error('2319 is a code');
    const first = firstDayPastAge(code.madeFrom, 6);
    expect(first).toBe('2025-06-09');
    expect(tireAge('2319', first)?.years).toBe(6);
    expect(tireAge('2319', addDays(first, -1))).toMatchObject({ years: 5, months: 11 });
  });

  test('a limit of half years falls between', () => {
    expect(firstDayPastAge(day('2019-06-09'), 6.5)).toBe('2025-12-09');
  });

  test('for any code and limit, the age in years first reaches the limit on that day', () => {
    const code = fc.tuple(fc.integer({ min: 1, max: 52 }), fc.integer({ min: 0, max: 40 }));
    fc.assert(
      fc.property(code, fc.integer({ min: 1, max: 12 }), ([week, year], limit) => {
        const text = `${String(week).padStart(2, '0')}${String(year).padStart(2, '0')}`;
        const read = parseDateCode(text, null);
        if (read.kind !== 'week') throw new Error(text);
        const first = firstDayPastAge(read.madeFrom, limit);
        expect(tireAge(text, first)?.years).toBe(limit);
        expect(tireAge(text, addDays(first, -1))?.years).toBe(limit - 1);
      }),
    );
  });
});
