import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { estimateLoad, estimatePressure, loadLaw } from '../../../src/rules/tire/load-law.js';
import { pressureNeeded, tireCapacity } from '../../../src/rules/tire/tire-capacity.js';
import { kg, lb, toLb } from '../../../src/rules/units/mass.js';
import { kPa, psi, toPsi } from '../../../src/rules/units/pressure.js';
import { LOAD_LAW_CASES, T4, T5 } from '../reference/tire-air-cases.js';
import table from '../reference/tire-load.json' with { type: 'json' };
import { marks } from '../sample-facts.js';

const within = (found: number, expected: number, tolerance: number) =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance);

const stamped = (size: string, fullLb: number, fullPsi: number) =>
  marks({ size, maxLoadSingleKg: lb(fullLb), maxColdPressureKpa: psi(fullPsi) });

function estimated(tire: ReturnType<typeof marks>, pressurePsi: number): number {
  const found = estimateLoad(tire, 'single', psi(pressurePsi));
  return found.kind === 'estimate' ? toLb(found.massKg) : Number.NaN;
}

/** Slope of log load on log pressure over the published rows of a size. */
function slopeOf(size: string): number {
  const rows = Object.entries((table.rows.find((row) => row.size === size)?.lbByPsi ?? {}) as Record<string, number>);
  const points = rows.map(([at, load]) => [Math.log(Number(at)), Math.log(load)] as const);
  const meanOf = (place: 0 | 1) => points.reduce((sum, point) => sum + point[place], 0) / points.length;
  const [meanX, meanY] = [meanOf(0), meanOf(1)];
  const over = points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0);
  return over / points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
}

describe('the law of load against pressure is an estimate', () => {
  test.each(LOAD_LAW_CASES)('$id: $size at $psi psi about $lb lb', (one) => {
    const tire = stamped(one.size, one.fullLb, one.fullPsi);
    within(estimated(tire, one.psi), one.lb, one.tolerance);
    // The table's row is what holds; the law reads it within 1 %.
    const row = tireCapacity(tire, 'single', psi(one.psi));
    expect(row).toMatchObject({ kind: 'known', origin: 'tire-table', massKg: lb(one.tableLb) });
    within(estimated(tire, one.psi) / one.tableLb, 1, 0.01);
  });

  test('T4: neither proportion nor a truck’s exponent fits an ST tire', () => {
    within((3_420 * 50) / 80, T4.byProportionLb, T4.tolerance);
    const asTruck = { ...stamped('ST235/80R16', 3_420, 80), kind: 'truck' as const };
    within(estimated(asTruck, 50), T4.byTruckLawLb, T4.tolerance);
    expect(estimated(stamped('ST235/80R16', 3_420, 80), 50) - T4.byTruckLawLb).toBeGreaterThan(100);
  });

  test('T5: 2,400 lb ask for about 43.7 psi', () => {
    const found = estimatePressure(stamped(T5.size, T5.fullLb, T5.fullPsi), 'single', lb(T5.lb));
    within(found.kind === 'estimate' ? toPsi(found.coldKpa) : Number.NaN, T5.psi, T5.tolerance);
  });

  // Our rows against the law from each size's own top row: the spread it states, 1 %, but for the smallest sizes' 2 %.
  test.each(table.rows.filter((row) => Object.keys(row.lbByPsi).length >= 3))('$size stays near its rows', (row) => {
    const points = Object.entries(row.lbByPsi as Record<string, number>).map(
      ([at, load]) => [Number(at), load] as const,
    );
    const [topPsi, topLb] = points.at(-1) ?? [0, 0];
    for (const [at, load] of points) within(estimated(stamped(row.size, topLb, topPsi), at) / load, 1, 0.02);
  });

  // Fitted apart from this code (Python, least squares of log load on log pressure), printed to four decimals.
  test.each([
    ['ST205/80R14', 0.5744],
    ['ST205/75R15', 0.6019],
    ['ST225/75R15', 0.5841],
    ['ST215/80R16', 0.5732],
    ['ST235/80R16', 0.5911],
  ])('the rows of %s fit n = %s', (size, published) => {
    expect(Math.abs(slopeOf(size) - published)).toBeLessThan(6e-5);
  });

  test('and the law of ST tires is their mean', () => {
    const fits = table.rows.filter((row) => Object.keys(row.lbByPsi).length >= 3).map((row) => slopeOf(row.size));
    const mean = fits.reduce((sum, one) => sum + one, 0) / fits.length;
    expect(loadLaw({ kind: 'ST', size: null })?.exponent).toBeCloseTo(mean, 3);
  });

  test('it never promises more than the sidewall', () => {
    expect(estimated(stamped('ST235/80R16', 3_420, 80), 110)).toBeCloseTo(3_420, 6);
    expect(estimatePressure(marks(), 'single', lb(3_421))).toEqual({ kind: 'too-heavy', mostKg: lb(3_420) });
  });

  test('pressure and load undo one another', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 80 }), (gauge) => {
        const load = estimateLoad(marks(), 'single', psi(gauge));
        if (load.kind !== 'estimate') throw new Error('an ST tire has a law');
        const back = estimatePressure(marks(), 'single', load.massKg);
        expect(back.kind === 'estimate' ? toPsi(back.coldKpa) : Number.NaN).toBeCloseTo(gauge, 6);
      }),
      { seed: 585, numRuns: 80 },
    );
  });
});

describe('which law', () => {
  test.each([
    ['ST', 'ST235/80R16', 0.585, 'fitted'],
    ['LT', 'LT235/85R16', 0.585, 'memory'],
    ['passenger', 'P235/75R15', 0.5, 'published'],
    ['passenger', '205/65R15', 0.65, 'memory'],
    ['truck', '215/75R17.5', 0.7, 'memory'],
    [null, 'ST235/80R16', 0.585, 'fitted'],
    [null, 'P235/75R15', 0.5, 'published'],
  ] as const)('%s %s: n = %s, %s', (kind, size, exponent, basis) => {
    expect(loadLaw({ kind, size })).toMatchObject({ exponent, basis });
  });

  test('a tire that does not tell its kind has none', () => {
    expect([loadLaw({ kind: null, size: '235/80R16' }), loadLaw({ kind: null, size: null })]).toEqual([null, null]);
    expect(estimateLoad(marks({ kind: null, size: '235/80R16' }), 'single', psi(50))).toEqual({
      kind: 'unknown',
      lacks: 'tire-kind',
    });
  });

  test('nor is anything estimated without a load and its pressure', () => {
    expect(estimateLoad(marks({ maxLoadSingleKg: null }), 'single', psi(50))).toMatchObject({ lacks: 'max-load' });
    expect(estimateLoad(marks({ maxColdPressureKpa: null }), 'single', psi(50))).toMatchObject({
      lacks: 'max-pressure',
    });
    expect(() => estimatePressure(marks(), 'single', kg(-1))).toThrow(RangeError);
  });
});

describe('the pressure a load needs, by what is published', () => {
  const needed = (pounds: number, more: Partial<ReturnType<typeof marks>> = {}) => {
    const found = pressureNeeded(marks(more), 'single', lb(pounds));
    return found.kind === 'known' ? Math.round(toPsi(found.coldKpa)) : found.kind;
  };

  test('is that of the lowest row that carries it', () => {
    expect([2_090, 2_091, 2_600, 2_663, 3_000, 3_001, 3_420].map((pounds) => needed(pounds))).toEqual([
      35, 50, 50, 65, 65, 80, 80,
    ]);
  });

  test('is the sidewall’s own where no row is published', () => {
    expect(needed(1_000, { size: '215/75R17.5', kind: 'truck', maxColdPressureKpa: psi(125) })).toBe(125);
  });

  test('is no pressure at all past the sidewall’s load', () => {
    expect(needed(3_421)).toBe('too-heavy');
  });

  test('never passes the sidewall’s own pressure for a row above it', () => {
    expect(needed(2_700, { maxLoadSingleKg: lb(2_750), maxColdPressureKpa: psi(60) })).toBe(60);
  });

  test('is unknown where the sidewall tells no pressure and no row is published', () => {
    expect(needed(1_000, { size: '215/75R17.5', kind: 'truck', maxColdPressureKpa: null })).toBe('unknown');
    expect(needed(1_000, { maxLoadSingleKg: null, loadRange: null })).toBe('unknown');
  });

  test('at the pressure it names the tire does carry the load', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3_420 }), fc.constantFrom(55, 65, 80), (pounds, top) => {
        const tire = marks({ maxColdPressureKpa: psi(top) });
        const found = pressureNeeded(tire, 'single', lb(pounds));
        if (found.kind !== 'known') return expect(found.kind).toBe('too-heavy');
        const carries = tireCapacity(tire, 'single', kPa(found.coldKpa));
        expect(carries.kind === 'known' ? carries.massKg : kg(0)).toBeGreaterThanOrEqual(lb(pounds) - 1e-9);
      }),
      { seed: 75, numRuns: 200 },
    );
  });
});
