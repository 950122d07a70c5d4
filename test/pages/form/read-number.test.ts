import { describe, expect, test } from 'vitest';
import { readInches, readNumber } from '../../../src/pages/form/read-number.js';

describe('a number as people write it', () => {
  test.each([
    ['14000', 14_000],
    ['14,000', 14_000],
    ['14 000', 14_000],
    ['14,000 lb', 14_000],
    ['  3.5 ', 3.5],
    ['-2', -2],
    ['.5', 0.5],
    ['2-5/16', 2.3125],
    ['2 5/16', 2.3125],
    ['5/16', 0.3125],
    ['0', 0],
  ])('%s is read as it is meant', (text, value) => {
    expect(readNumber(text, ['lb'])).toBe(value);
  });

  test.each(['', '   '])('an empty field is unknown, not nought', (text) => {
    expect(readNumber(text)).toBeNull();
  });

  test.each(['fourteen', '1,5', '14.000.000', '1e9', '0x10', 'NaN', '5/0', '--3', '12 psi', 'lb', '.', '1,0000'])(
    '%s is no number, and is not taken for one',
    (text) => {
      expect(readNumber(text, ['lb'])).toBeNaN();
    },
  );
});

describe('a length as people write it', () => {
  test.each([
    ['92', 92],
    ['92.5 in', 92.5],
    ['20 ft', 240],
    ['18\' 6"', 222],
    ['18 ft 6 in', 222],
    ['2 ft', 24],
    ['2-5/16', 2.3125],
  ])('%s is read in inches', (text, inches) => {
    expect(readInches(text)).toBeCloseTo(inches, 10);
  });

  test.each(['ft', 'six ft', '20 ft lots', '20 m'])('%s is no length', (text) => {
    expect(readInches(text)).toBeNaN();
  });
});
