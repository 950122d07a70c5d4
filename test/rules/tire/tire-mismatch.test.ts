import { describe, expect, test } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { dayNumber } from '../../../src/rules/calendar/day-number.js';
import type { TireMarks } from '../../../src/rules/facts/part.js';
import { pairPressure } from '../../../src/rules/tire/dual-pair.js';
import { ageSpread, type FittedTire, tireMismatches } from '../../../src/rules/tire/tire-mismatch.js';
import { nominalDiameter, readTireSize } from '../../../src/rules/tire/tire-size.js';
import { toInch } from '../../../src/rules/units/length.js';
import { psi } from '../../../src/rules/units/pressure.js';
import { marks } from '../sample-facts.js';

const fitted = (position: string, more: Partial<TireMarks> = {}, made: string | null = null): FittedTire => ({
  position,
  marks: marks(more),
  madeFrom: made === null ? null : dayNumber(day(made)),
});
const traits = (...tires: FittedTire[]) => tireMismatches(tires).map((one) => one.trait);

describe('tires of one axle match', () => {
  test('when they are the same, however their size is written', () => {
    expect(traits(fitted('1L'), fitted('1R', { size: 'st 235/80 r16', loadRange: ' e' }))).toEqual([]);
  });

  test('one alone matches itself, and what a tire does not tell is not held against it', () => {
    expect(traits(fitted('1L'))).toEqual([]);
    expect(traits(fitted('1L'), fitted('1R', { size: null, loadRange: null, kind: null }))).toEqual([]);
  });
});

describe('and do not match', () => {
  test('in load range: the case of a return with a load range D tire at the left rear', () => {
    expect(tireMismatches([fitted('2L', { loadRange: 'D' }), fitted('2R')])).toEqual([
      { trait: 'load-range', positions: ['2L', '2R'], marked: ['D', 'E'] },
    ]);
  });

  test('in size, by another width, height or rim', () => {
    expect(traits(fitted('1L'), fitted('1R', { size: 'ST225/75R16' }))).toEqual(['size']);
    expect(traits(fitted('1L'), fitted('1R', { size: 'ST235/85R16' }))).toEqual(['size']);
    expect(traits(fitted('1L'), fitted('1R', { size: 'ST235/80R15' }))).toEqual(['size']);
  });

  test('in a size that cannot be read, by what is written', () => {
    expect(traits(fitted('1L', { size: '7.00-15' }), fitted('1R', { size: '7.50-16' }))).toEqual(['size']);
    expect(traits(fitted('1L', { size: '7.00-15' }), fitted('1R', { size: '7.00-15' }))).toEqual([]);
  });

  test('radial beside bias', () => {
    expect(traits(fitted('1L'), fitted('1R', { size: 'ST235/80D16' }))).toEqual(['construction']);
  });

  test('a trailer tire beside a light truck one', () => {
    expect(traits(fitted('1L'), fitted('1R', { size: 'LT235/80R16', kind: 'LT' }))).toEqual(['kind']);
  });

  test('in age, when more than two years lie between their weeks', () => {
    const old = fitted('1L', { dateCode: '1519' }, '2019-04-14');
    expect(traits(old, fitted('1R', { dateCode: '1521' }, '2021-04-13'))).toEqual([]);
    expect(traits(old, fitted('1R', { dateCode: '1521' }, '2021-04-14'))).toEqual(['age']);
    expect(traits(old, fitted('1R', { dateCode: null }))).toEqual([]);
    expect(ageSpread([old, fitted('1R', {}, '2019-04-21')])).toBe(7);
  });

  test('in more ways than one at once', () => {
    expect(traits(fitted('1L'), fitted('1R', { size: '205/65R15', kind: 'passenger', loadRange: 'B' }))).toEqual([
      'size',
      'load-range',
      'kind',
    ]);
  });
});

describe('a size is read', () => {
  test.each([
    ['ST235/80R16', 'ST', 'radial', 30.8],
    ['LT 235/85 R 16 E', 'LT', 'radial', 31.7],
    ['215/75R17.5', null, 'radial', 30.2],
    ['ST225/75D15', 'ST', 'diagonal', 28.3],
    ['ST205/75B14', 'ST', 'belted', 26.1],
  ] as const)('%s', (text, letters, construction, acrossIn) => {
    const size = readTireSize(text);
    if (size === null) throw new Error(`${text} was not read`);
    expect([size.letters, size.construction]).toEqual([letters, construction]);
    // 2 × width × height share + rim, e.g. 2 × 235 × 0.80 / 25.4 + 16 = 30.8 in.
    expect(toInch(nominalDiameter(size))).toBeCloseTo(acrossIn, 1);
  });

  test.each(['7.00-15', '', 'ST235', '235/80R165'])('"%s" is not', (text) => {
    expect(readTireSize(text)).toBeNull();
  });
});

test('a dual pair is taken at its softer tire', () => {
  expect([pairPressure(psi(80), psi(60)), pairPressure(null, psi(60)), pairPressure(psi(60), null)]).toEqual([
    psi(60),
    psi(60),
    psi(60),
  ]);
  expect(pairPressure(null, null)).toBeNull();
});
