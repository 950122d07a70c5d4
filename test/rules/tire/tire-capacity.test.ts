import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { TireMarks } from '../../../src/rules/facts/part.js';
import { type Mounting, tireCapacity, tireRating } from '../../../src/rules/tire/tire-capacity.js';
import { kg, lb, toLb } from '../../../src/rules/units/mass.js';
import { kPa, psi } from '../../../src/rules/units/pressure.js';
import table from '../reference/tire-load.json' with { type: 'json' };
import { marks } from '../sample-facts.js';

/** Pounds to the nearest tenth, or why not. */
function at(pressurePsi: number | null, more: Partial<TireMarks> = {}, mounting: Mounting = 'single') {
  const capacity = tireCapacity(marks(more), mounting, pressurePsi === null ? null : psi(pressurePsi));
  return capacity.kind === 'known' ? Math.round(toLb(capacity.massKg) * 10) / 10 : capacity.lacks;
}

describe('a soft tire carries what the published row says', () => {
  const rows = table.rows.flatMap(({ size, lbByPsi, rangeByPsi }) => {
    const top = Math.max(...Object.keys(lbByPsi).map(Number));
    return Object.entries(lbByPsi).map(([pressure, pounds]) => ({
      size,
      pressure: Number(pressure),
      pounds,
      top,
      most: Number((lbByPsi as Record<string, number>)[top]),
      range: (rangeByPsi as Record<string, string>)[top] ?? '',
    }));
  });

  test.each(rows)('$size at $pressure psi carries $pounds lb', ({ size, pressure, pounds, top, most, range }) => {
    const stamped = { size, maxLoadSingleKg: lb(most), maxColdPressureKpa: psi(top) };
    expect(at(pressure, stamped)).toBe(pounds);
    expect(at(pressure, { size, maxLoadSingleKg: null, maxColdPressureKpa: null, loadRange: range })).toBe(pounds);
  });

  test('between two rows the lower one holds', () => {
    expect([79, 65, 64, 51].map((pressure) => at(pressure))).toEqual([3_000, 3_000, 2_600, 2_600]);
  });

  test('below the lowest row it is unknown, not guessed', () => {
    expect([at(35), at(34), at(0)]).toEqual([2_090, 'row-this-low', 'row-this-low']);
  });

  test('a pressure kept in whole kilopascals still reads as the psi it was', () => {
    expect(tireCapacity(marks(), 'single', kPa(344))).toMatchObject({ massKg: lb(2_600), atKpa: psi(50) });
    expect(tireCapacity(marks(), 'single', kPa(551))).toMatchObject({ massKg: lb(3_420), origin: 'tire-sidewall' });
  });

  test('the size is read as people write it', () => {
    for (const size of ['st235/80r16', ' ST 235/80 R16 ', 'ST235/80R16E', 'ST235/80R16 E', '235/80R16']) {
      expect([size, at(50, { size })]).toEqual([size, 2_600]);
    }
  });
});

describe('the sidewall wins over any table', () => {
  test('at or above its pressure a tire carries what is stamped, and not a pound more', () => {
    expect([80, 90, 110].map((pressure) => at(pressure))).toEqual([3_420, 3_420, 3_420]);
  });

  test('with no pressure found the stamped load is taken at its own pressure', () => {
    expect(tireCapacity(marks(), 'single', null)).toEqual({
      kind: 'known',
      massKg: lb(3_420),
      origin: 'tire-sidewall',
      atKpa: psi(80),
    });
  });

  // A trade article prints 2,540 lb at 50 psi for a 6-ply ST225/75R15 where the table has 2,150.
  test('a tire stamped above the table keeps its stamp at its pressure', () => {
    const stamped = { size: 'ST225/75R15', maxLoadSingleKg: lb(2_540), maxColdPressureKpa: psi(50), loadRange: 'C' };
    expect(at(50, stamped)).toBe(2_540);
    expect(at(40, stamped)).toBe(1_760);
  });

  test('a tire stamped well below the table is below it at every pressure', () => {
    const stamped = { maxLoadSingleKg: lb(3_078), maxColdPressureKpa: psi(80) };
    expect(at(50, stamped)).toBe(2_340);
  });

  test('a stamp that only rounds differently reads the row as printed', () => {
    const stamped = { size: 'ST225/75R15', maxLoadSingleKg: null, loadIndexSingle: 117 };
    expect(at(65, stamped)).toBe(2_540);
    expect(at(80, stamped)).toBe(2_832.9);
  });
});

describe('what nobody published stays unknown', () => {
  test('a soft tire of a size without rows', () => {
    expect(
      at(100, { size: '215/75R17.5', kind: 'truck', maxLoadSingleKg: lb(4_805), maxColdPressureKpa: psi(125) }),
    ).toBe('published-row');
  });

  test('a soft LT tire does not read the ST rows of its size', () => {
    expect(at(50, { size: 'LT235/80R16', kind: 'LT' })).toBe('published-row');
    expect(at(50, { size: '235/80R16', kind: null })).toBe('published-row');
    expect(at(50, { size: 'ST235/80R16', kind: null })).toBe(2_600);
  });

  test('a soft tire in a dual pair: the rows are for single tires', () => {
    expect(at(50, { maxLoadDualKg: lb(3_010) }, 'dual')).toBe('published-row');
  });

  test('a load with no pressure stamped beside it says nothing at a pressure found, without rows', () => {
    expect(at(50, { size: 'ST999/80R16', maxColdPressureKpa: null })).toBe('max-pressure');
  });

  test('no load, no index, no load range', () => {
    const bare = { maxLoadSingleKg: null, loadRange: null };
    expect([at(80, bare), at(null, bare)]).toEqual(['max-load', 'max-load']);
    expect(at(80, bare, 'dual')).toBe('dual-max-load');
  });

  test('a weak tire pumped hard does not read as a strong one', () => {
    const loadRangeC = { maxLoadSingleKg: null, maxColdPressureKpa: null, loadRange: 'C' };
    expect(at(80, loadRangeC)).toBe(2_600);
  });
});

describe('the rating of a tire', () => {
  test('126/122 carries 1,700 kg alone and 1,500 kg in a pair', () => {
    const indices = { maxLoadSingleKg: null, loadIndexSingle: 126, loadIndexDual: 122 };
    expect(tireRating(marks(indices), 'single')).toEqual({ massKg: 1_700, origin: 'load-index' });
    expect(tireRating(marks(indices), 'dual')).toEqual({ massKg: 1_500, origin: 'load-index' });
  });

  test('a stamped load beats the load index', () => {
    expect(tireRating(marks({ loadIndexSingle: 126 }), 'single')).toEqual({
      massKg: lb(3_420),
      origin: 'tire-sidewall',
    });
  });

  test('a passenger tire under a trailer loses a tenth by division, marked or by its size', () => {
    const passenger = { maxLoadSingleKg: lb(1_929) };
    for (const more of [{ kind: 'passenger' as const }, { kind: null, size: 'P235/75R15' }]) {
      expect(toLb(tireRating(marks({ ...passenger, ...more }), 'single')?.massKg ?? kg(0))).toBeCloseTo(1_753.64, 2);
    }
  });
});

test('more air never means less load, and none means more than the sidewall', () => {
  const size = fc.constantFrom(...table.rows.map((row) => row.size));
  fc.assert(
    fc.property(
      size,
      fc.integer({ min: 1_000, max: 4_000 }),
      fc.constantFrom(35, 50, 65, 80),
      fc.tuple(fc.double({ min: 0, max: 120, noNaN: true }), fc.double({ min: 0, max: 120, noNaN: true })),
      (name, pounds, top, [a, b]) => {
        const stamped = marks({ size: name, maxLoadSingleKg: lb(pounds), maxColdPressureKpa: psi(top) });
        const soft = tireCapacity(stamped, 'single', psi(Math.min(a, b)));
        const hard = tireCapacity(stamped, 'single', psi(Math.max(a, b)));
        if (soft.kind === 'known' && hard.kind === 'known') expect(soft.massKg).toBeLessThanOrEqual(hard.massKg);
        if (soft.kind === 'known') expect(hard.kind).toBe('known');
        if (hard.kind === 'known') expect(hard.massKg).toBeLessThanOrEqual(lb(pounds));
      },
    ),
  );
});
