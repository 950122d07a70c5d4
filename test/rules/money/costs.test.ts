import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import { costs } from '../../../src/rules/money/costs.js';
import { countsIn, timesOf } from '../../../src/rules/money/times.js';
import { miles } from '../../../src/rules/units/distance.js';
import { tire, tires } from '../sample-facts.js';
import { done, facts, kind, trip } from '../sample-trailer.js';

const TODAY = day('2025-06-16');
const costsOf = (more: Partial<TrailerFacts>) => {
  const all = facts({ parts: [], ...more });
  return costs(all, assess(all, TODAY));
};

// Expected values are sums done by hand.
describe('what was spent', () => {
  const repack = kind('repack', [{ kind: 'months', every: 12, toMonthEnd: false }]);
  const found = costsOf({
    checkKinds: [repack],
    checkRecords: [
      done('repack', '2023-06-01', { costCents: 20_000 }),
      done('repack', '2024-06-01', { costCents: 26_000 }),
      done('repack', '2025-06-01'),
      done('repack', '2025-07-01', { costCents: 99_999 }),
    ],
    parts: [{ ...tire('1L'), costCents: 15_000 }, tire('1R')],
    trips: [trip('2025-01-10', 100), trip('2025-02-10', 300)],
  });

  it('is told by check and by kind of part, what lies ahead left out', () => {
    expect(found.spent).toMatchObject([
      { purpose: { kind: 'check', code: 'repack' }, totalCents: 46_000, priced: 2, unpriced: 1, meanCents: 23_000 },
      { purpose: { kind: 'part', part: 'tire' }, totalCents: 15_000, priced: 1, unpriced: 1, meanCents: 15_000 },
    ]);
    // Of 20,000 and 26,000: √((3,000² + 3,000²) / 1).
    expect(found.spent[0]?.deviationCents).toBeCloseTo(4_242.64, 2);
  });

  it('comes to a sum, by the mile and by the trip, and says what was left out', () => {
    expect(found).toMatchObject({ totalCents: 61_000, unpriced: 2 });
    expect(found.centsPerMile).toBeCloseTo(61_000 / 400, 9);
    expect(found.centsPerTrip).toBeCloseTo(61_000 / 2, 9);
  });

  it('by the mile is unknown without miles, and without any cost', () => {
    expect(
      costsOf({ checkKinds: [repack], checkRecords: [done('repack', '2025-06-01', { costCents: 1 })] }),
    ).toMatchObject({
      totalCents: 1,
      centsPerMile: null,
      centsPerTrip: null,
    });
    expect(costsOf({ trips: [trip('2025-01-10', 100)] })).toMatchObject({ centsPerMile: null, centsPerTrip: null });
  });
});

describe('the next twelve months', () => {
  it('hold a yearly check once and a monthly one twelve times, for sure', () => {
    const { ahead } = costsOf({
      checkKinds: [
        kind('yearly', [{ kind: 'months', every: 12, toMonthEnd: false }]),
        kind('monthly', [{ kind: 'months', every: 1, toMonthEnd: false }]),
      ],
      checkRecords: [
        done('yearly', '2025-03-01', { costCents: 20_000 }),
        done('monthly', '2025-06-01', { costCents: 1_000 }),
      ],
    });
    expect(ahead).toMatchObject({ from: '2025-06-16', to: '2026-06-16', expectedCents: 32_000 });
    expect(ahead.items).toMatchObject([
      { purpose: { code: 'yearly' }, times: 1, byUse: false },
      { purpose: { code: 'monthly' }, times: 12 },
    ]);
    expect([ahead.p10Cents, ahead.p90Cents]).toEqual([32_000, 32_000]);
  });

  it('say what falls due and has never been priced', () => {
    const { ahead } = costsOf({
      checkKinds: [kind('yearly', [{ kind: 'months', every: 12, toMonthEnd: false }])],
      checkRecords: [done('yearly', '2025-03-01')],
      parts: tires(2, { dateCode: '0120' }),
    });
    expect(ahead.expectedCents).toBe(0);
    expect(ahead.unpriced).toMatchObject([
      { kind: 'check', code: 'yearly' },
      { kind: 'part', part: 'tire' },
    ]);
  });

  it('hold four tires that come to their six years', () => {
    const set = tires(2, { dateCode: '0120' }).map((one) => ({ ...one, costCents: 15_000 }));
    expect(costsOf({ parts: set }).ahead.items).toMatchObject([
      { purpose: { part: 'tire' }, times: 4, expectedCents: 60_000, deviationCents: 0 },
    ]);
    const young = set.map((one) => ({
      ...one,
      tire: { ...(one.tire as NonNullable<typeof one.tire>), dateCode: '0124' },
    }));
    expect(costsOf({ parts: young }).ahead.items).toEqual([]);
  });

  it('have a spread where use decides how often', () => {
    const weekly = Array.from({ length: 24 }, (_, week) =>
      trip(day(`2025-0${1 + Math.floor(week / 4)}-0${1 + 2 * (week % 4)}`), 60),
    );
    const { ahead } = costsOf({
      checkKinds: [kind('adjust', [{ kind: 'distance', everyKm: miles(900) }])],
      checkRecords: [done('adjust', '2025-01-01', { costCents: 8_000 })],
      trips: weekly,
    });
    expect(ahead.items[0]).toMatchObject({ byUse: true });
    // Once now, 1,440 mi being past 900; then 1,440 mi in 158 days are 3,300 a year, three or four times more.
    expect(ahead.items[0]?.times).toBeGreaterThanOrEqual(3.5);
    expect(ahead.items[0]?.times).toBeLessThanOrEqual(5);
    expect(ahead.p10Cents).toBeLessThan(ahead.expectedCents);
    expect(ahead.p90Cents).toBeGreaterThan(ahead.expectedCents);
  });
});

describe('how often in a year', () => {
  const [from, to] = [day('2025-01-01'), day('2025-12-31')];
  const on = (p10: string | null, p50: string | null, p90: string | null) => ({
    p10: p10 === null ? null : day(p10),
    p50: p50 === null ? null : day(p50),
    p90: p90 === null ? null : day(p90),
  });

  // Swanson's weights 0.3, 0.4 and 0.3 on the three dates.
  it('is weighed by three dates: once if by the first two, 0.7 with a variance of 0.21', () => {
    const times = timesOf(countsIn(on('2025-03-01', '2025-10-01', '2026-04-01'), null, from, to));
    expect(times.mean).toBeCloseTo(0.7, 12);
    expect(times.variance).toBeCloseTo(0.21, 12);
  });

  it('never where none of the dates can be said, and from today where all are past', () => {
    expect(countsIn(on(null, null, null), 100, from, to)).toEqual([0, 0, 0]);
    expect(countsIn(on('2024-01-01', '2024-02-01', '2024-03-01'), 100, from, to)).toEqual([4, 4, 4]);
  });
});
