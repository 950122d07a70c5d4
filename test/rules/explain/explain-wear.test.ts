import { describe, expect, test } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { dayNumber, daysAfter } from '../../../src/rules/calendar/day-number.js';
import { explain } from '../../../src/rules/explain/explain.js';
import { inch } from '../../../src/rules/units/length.js';
import { TREAD } from '../reference/trend-cases.js';
import { tire } from '../sample-facts.js';
import { done, facts, kind, reading } from '../sample-trailer.js';

// The tread case R3: six readings over 12,800 miles, at 100 miles a day by the meter.
const START = day('2025-01-01');
const days = TREAD.map(({ x }) => daysAfter(START, x / 100));
const told = facts({
  parts: [tire('1L', {}, START)],
  readings: days.map((on, place) => reading(on, 1_000 + (TREAD[place]?.x ?? 0))),
  checkKinds: [kind('tire-tread', [])],
  checkRecords: TREAD.map(({ y }, place) =>
    done('tire-tread', days[place] as string, {
      lines: [
        {
          ...{ code: 'tread', result: null, position: '1L' },
          measured: { quantity: 'tread-depth-mm', value: inch(y / 32) * 1000 },
        },
      ],
    }),
  ),
});
const asOf = days.at(-1) ?? START;

describe('how the day a tread comes to its limit was worked out', () => {
  const [trend] = assess(told, asOf).wear;
  const working = explain(told, asOf).find(({ of }) => of === 'wear');
  const sway = (name: string) => working?.inputs.find((input) => input.name === name)?.sway ?? 0;

  test('the day is the middle of the trend’s range, and the limit is the law’s', () => {
    expect(trend?.toLimit.kind === 'reached-by' ? trend.toLimit.on.middle : null).toBe(working?.value);
    expect(working?.inputs.find(({ name }) => name === 'wear-limit')).toMatchObject({
      ...{ basis: 'published', unit: 'mm', sway: 0 },
      // 2/32 in: 49 CFR 393.75(c).
      value: expect.closeTo((25.4 * 2) / 32, 9),
    });
  });

  test('each input moves it as a line says: use matters most, then wear, then a single reading', () => {
    const left = dayNumber(working?.value as string as never) - dayNumber(asOf);
    // A tenth more or less use: the whole way of the line from its start, in days.
    const whole = left + dayNumber(asOf) - dayNumber(START);
    expect(sway('use-a-day') / (whole * ((1 / 0.9 - 1 / 1.1) / 2))).toBeCloseTo(1, 1);
    expect(working?.inputs[working.mattersMost ?? -1]?.name).toBe('use-a-day');
    expect(sway('wear-rate')).toBeGreaterThan(sway('reading'));
    expect(sway('reading')).toBeGreaterThan(0);
  });
});
