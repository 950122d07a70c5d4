import { describe, expect, it } from 'vitest';
import { rangeWords, stopWords } from '../../../src/pages/words/due-words.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { Due } from '../../../src/rules/inspection/due.js';
import { miles } from '../../../src/rules/units/distance.js';

const DUE: Due = {
  checkKindId: 'nuts',
  code: 'wheel-nut-torque',
  state: 'overdue',
  dueOn: day('2025-06-05'),
  trigger: null,
  lastDoneOn: null,
  used: null,
  range: null,
  stops: null,
  firstJobAtRisk: null,
  yardDays: [],
  unknown: null,
  failed: false,
};
const range = (p10: string | null, p90: string | null) => ({
  ...DUE,
  range: { p10: p10 === null ? null : day(p10), p50: day('2025-06-05'), p90: p90 === null ? null : day(p90) },
});

describe('how sure a due date is', () => {
  it('is told by its tenth and its ninetieth date, or by the tenth alone', () => {
    expect(rangeWords(range('2025-05-01', '2025-08-20'))).toMatch(/eight chances in ten between .*May.* and .*Aug/);
    expect(rangeWords(range('2025-05-01', null))).toMatch(/nine chances in ten not before .*May/);
  });

  it('is not told where there is no doubt, or nothing to say', () => {
    expect(rangeWords(range('2025-06-05', '2025-06-05'))).toBeNull();
    expect(rangeWords(range(null, null))).toBeNull();
    expect(rangeWords(DUE)).toBeNull();
  });
});

describe('stops on the road', () => {
  const stops = (missed: readonly number[], ahead: readonly number[]) =>
    stopWords({ ...DUE, stops: { missedKm: missed.map(miles), aheadKm: ahead.map(miles) } });

  it('say what was missed and after how many miles to stop', () => {
    expect(stops([10], [3, 28])).toBe(
      'Missed at 10 mi; one look now settles it. On the road: stop for it after 3 mi and 28 mi',
    );
    expect(stops([10, 25, 50], [])).toBe('Missed at 10 mi, 25 mi and 50 mi; one look now settles them all');
    expect(stopWords(DUE)).toBeNull();
  });
});
