import { describe, expect, it } from 'vitest';
import { shapeBiasFactor } from '../../../src/rules/statistics/shape-bias.js';
import { rareDemand, smoothed, smoothedUnevenly } from '../../../src/rules/statistics/smoothing.js';
import { distanceToWear, wearProcess, wornByProbability } from '../../../src/rules/statistics/wear-process.js';
import simulated from '../reference/r/shape-bias.json' with { type: 'json' };
import { RARE_DEMAND, TREAD } from '../reference/trend-cases.js';

describe('smoothing', () => {
  // Worked by hand: 106, 101.2, 103.84, 111.688.
  it('U4: alpha 0.3 from 100 over 120, 90, 110, 130 comes to 111.688', () => {
    expect(smoothed([120, 90, 110, 130], 0.3, 100)).toBeCloseTo(111.688, 9);
  });

  it('at even times uneven smoothing is the simple one, and after a long gap the new value pulls harder', () => {
    const even = [100, 120, 90, 110, 130].map((value, place) => ({ time: place * 7, value }));
    expect(smoothedUnevenly(even, 0.3, 7)).toBeCloseTo(111.688, 9);
    const late = even.map((each, place) => (place === 4 ? { ...each, time: 100 } : each));
    expect(smoothedUnevenly(late, 0.3, 7)).toBeGreaterThan(111.688);
    expect(smoothedUnevenly(late, 0.3, 7)).toBeLessThan(130);
    expect(smoothedUnevenly([], 0.3, 7)).toBeNull();
  });

  it('U3: rare demand, 2.7503 every 2.7933 periods: 0.9846 a period, 0.93537 without its bias', () => {
    // Forecasting: Principles and Practice prints 0.98 for these; further figures worked from the same recurrence.
    const found = rareDemand(RARE_DEMAND.sizes, RARE_DEMAND.gaps, 0.1);
    expect(found?.size).toBeCloseTo(2.7503, 4);
    expect(found?.gap).toBeCloseTo(2.7933, 4);
    expect(found?.perPeriod).toBeCloseTo(0.9846, 4);
    expect(found?.corrected).toBeCloseTo(0.93537, 5);
    expect(rareDemand([], [], 0.1)).toBeNull();
  });
});

describe('wear that only grows', () => {
  const steps = TREAD.slice(1).map((point, place) => {
    const before = TREAD[place] as (typeof TREAD)[number];
    return { wear: before.y - point.y, distance: (point.x - before.x) / 1000 };
  });

  // Printed to whole miles and six figures.
  it('U5: of 7/32 to wear, one in ten is gone by 27,807 miles, half by 29,897, nine in ten by 32,037', () => {
    const process = wearProcess(steps);
    if (process === null) throw new Error('no process');
    expect(process.step).toBeCloseTo(0.0213704, 7);
    expect(process.perDistance).toBeCloseTo(10.9673, 4);
    expect(Math.round(1000 * distanceToWear(process, 7, 0.1))).toBe(27_807);
    expect(Math.round(1000 * distanceToWear(process, 7, 0.5))).toBe(29_897);
    expect(Math.round(1000 * distanceToWear(process, 7, 0.9))).toBe(32_037);
    expect(wornByProbability(process, 7, 30)).toBeCloseTo(0.5249, 4);
    expect(wornByProbability(process, 7, 0)).toBe(0);
  });

  it('one step, no wear, or wear without spread makes no process', () => {
    expect(wearProcess(steps.slice(0, 1))).toBeNull();
    expect(
      wearProcess([
        { wear: 0, distance: 3 },
        { wear: 0, distance: 4 },
      ]),
    ).toBeNull();
    expect(
      wearProcess([
        { wear: 1, distance: 2 },
        { wear: 2, distance: 4 },
      ]),
    ).toBeNull();
  });
});

describe('how much few deaths overstate a shape', () => {
  it('every simulated cell is what the function says', () => {
    for (const { deaths, units, forMean, forMeanError } of simulated) {
      // Three of three is Ross's 1 / 2.32: a mean of ratios without an end is badly simulated.
      if (deaths === 3 && units === 3) continue;
      expect(Math.abs((shapeBiasFactor(deaths, units) ?? 0) - forMean)).toBeLessThan(forMeanError);
    }
  });

  // R. Ross, IEEE Trans. Dielectr. Electr. Insul. 1 (1994). Our simulation's error is 0.002 at four deaths; for three to
  // five deaths the formula itself is rounded.
  it('complete samples: within 0.006 of (n − 2) / (n − 0.68)', () => {
    for (const n of [3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 30, 60]) {
      expect(Math.abs((shapeBiasFactor(n, n) ?? 0) - (n - 2) / (n - 0.68))).toBeLessThan(0.006);
    }
  });

  // Another simulation of 200,000 fleets: 0.636 at 5 of 10, 0.822 at 10 of 20, 0.617 at 5 of 20, 0.81 at 10 of 40.
  it('censored samples: as simulated elsewhere, to 0.005', () => {
    for (const [deaths, units, factor] of [
      [5, 10, 0.636],
      [10, 20, 0.822],
      [5, 20, 0.617],
      [10, 40, 0.81],
      [5, 5, 0.694],
      [20, 20, 0.929],
    ] as const) {
      expect(Math.abs((shapeBiasFactor(deaths, units) ?? 0) - factor)).toBeLessThan(0.005);
    }
  });

  it('rises with deaths, falls with units still running, says nothing under three', () => {
    expect(shapeBiasFactor(2, 9)).toBeNull();
    expect(shapeBiasFactor(9, 8)).toBeNull();
    for (let deaths = 3; deaths < 40; deaths++) {
      const here = shapeBiasFactor(deaths, deaths * 3) as number;
      expect(shapeBiasFactor(deaths + 1, (deaths + 1) * 3)).toBeGreaterThan(here);
      expect(shapeBiasFactor(deaths, deaths * 5)).toBeLessThan(here);
      expect(here).toBeLessThan(1);
    }
  });
});
