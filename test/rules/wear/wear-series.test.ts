import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { daysAfter } from '../../../src/rules/calendar/day-number.js';
import { placeOfLimit, wearLine } from '../../../src/rules/wear/wear-line.js';
import { practiceLimit, WEAR_KINDS } from '../../../src/rules/wear/wear-quantity.js';
import { cleanSeries, type WearReading } from '../../../src/rules/wear/wear-series.js';

const TREAD = WEAR_KINDS['tread-depth-mm'];
const LIMIT = { value: 1.5875, fails: 'past', worse: 'less', origin: 'law', source: 'test' } as const;

function series(values: readonly number[], every = 3000): WearReading[] {
  return values.map((value, place) => ({ on: daysAfter(day('2025-01-01'), place * 30), x: place * every, value }));
}

const clean = (values: readonly number[]) => cleanSeries(series(values), TREAD);
const kept = (values: readonly number[]) => clean(values).readings.map(({ value }) => value);

describe('which readings a trend may rest on', () => {
  it('all of an ordinary series, small steps up from the gauge included', () => {
    const ordinary = [7, 6.6, 6.8, 6.1, 5.9, 5.5];
    expect(kept(ordinary)).toEqual(ordinary);
    expect(clean(ordinary).leftOut).toEqual([]);
  });

  it('a part swapped twice keeps its last life only', () => {
    const twice = [7, 5, 3, 7.1, 5.8, 4.5, 7.2, 7, 6.8];
    expect(clean(twice)).toMatchObject({ setBackOn: series(twice)[6]?.on, leftOut: [] });
    expect(kept(twice)).toEqual([7.2, 7, 6.8]);
  });

  it('one far off among many is left out wherever it stands, but never the newest on the worn side', () => {
    expect(kept([7, 6.7, 3, 6.2, 5.9, 5.6])).toEqual([7, 6.7, 6.2, 5.9, 5.6]);
    expect(kept([7, 6.7, 9.5, 6.2, 5.9, 5.6])).toEqual([7, 6.7, 6.2, 5.9, 5.6]);
    expect(kept([7, 6.7, 6.5, 6.2, 5.9, 2])).toEqual([7, 6.7, 6.5, 6.2, 5.9, 2]);
  });

  it('what can be adjusted starts anew with each better reading', () => {
    const play = cleanSeries(series([0.1, 0.2, 0.25, 0.05, 0.08]), WEAR_KINDS['end-play-mm']);
    expect(play.readings.map(({ value }) => value)).toEqual([0.05, 0.08]);
    expect(play.leftOut).toEqual([]);
  });

  it('nothing is lost or invented: every reading of the last life is kept or named as left out', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 1, max: 10, noNaN: true }), { minLength: 1, maxLength: 25 }), (values) => {
        const told = series(values);
        const { readings, leftOut, setBackOn } = cleanSeries(told, TREAD);
        const life = told.filter(({ on }) => setBackOn === null || on >= setBackOn);
        const both = [...readings, ...leftOut.map(({ because: _because, ...reading }) => reading)];
        expect(both.sort((a, b) => a.x - b.x)).toEqual(life);
        expect(readings.length).toBeGreaterThan(0);
      }),
      { seed: 91, numRuns: 300 },
    );
  });
});

describe('where the limit comes', () => {
  const line = (values: readonly number[]) => {
    const found = wearLine(series(values), TREAD, 'distance');
    if (found === null) throw new Error('no line');
    return found;
  };

  it('more worn readings bring it nearer, and more readings of one kind narrow it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 0.6, noNaN: true }), fc.integer({ min: 3, max: 8 }), (step, count) => {
        const values = (each: number, many: number) => Array.from({ length: many }, (_, place) => 8 - each * place);
        const slow = placeOfLimit(line(values(step, count)), LIMIT, -1);
        const fast = placeOfLimit(line(values(step * 1.1, count)), LIMIT, -1);
        const longer = placeOfLimit(line(values(step, count + 1)), LIMIT, -1);
        if (slow === null || fast === null || longer === null) throw new Error('refused');
        expect(fast.middle).toBeLessThan(slow.middle);
        expect(slow.early).toBeLessThan(slow.middle);
        expect(slow.late).toBeGreaterThan(slow.middle);
        expect(longer.late - longer.early).toBeLessThan(slow.late - slow.early);
      }),
      { seed: 92, numRuns: 200 },
    );
  });

  it('wear that runs backwards names no place', () => {
    const rising = series([5, 5.2, 5.4, 5.6, 5.8, 6, 6.2, 6.4]);
    const found = wearLine(rising, { ...TREAD, usual: null }, 'distance');
    expect(found?.slope).toBeGreaterThan(0);
    expect(found === null ? 0 : placeOfLimit(found, LIMIT, -1)).toBeNull();
  });

  it('practice has limits where the law has none, and says that they are practice', () => {
    expect(practiceLimit(TREAD, 7)).toBeNull();
    expect(practiceLimit(WEAR_KINDS['lining-mm'], 4)).toBeNull();
    expect(practiceLimit(WEAR_KINDS['chain-mm'], 10)).toMatchObject({ value: 9, worse: 'less', origin: 'practice' });
    // 0.010 in.
    expect(practiceLimit(WEAR_KINDS['end-play-mm'], 0.1)?.value).toBeCloseTo(0.254, 9);
  });
});
