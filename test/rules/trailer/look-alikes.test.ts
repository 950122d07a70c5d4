import { describe, expect, it } from 'vitest';
import { isSameNumber, lookAlikes, looksAlike } from '../../../src/rules/trailer/look-alikes.js';

describe('numbers painted on trailers', () => {
  it('are the same however they are written', () => {
    expect(isSameNumber(' t 07', 'T-07')).toBe(true);
    expect(isSameNumber('T-7', 'T-07')).toBe(false);
    expect(isSameNumber('', 'T-07')).toBe(false);
  });

  it.each([
    ['T-07', 'T-01', true],
    ['T-07', 'T-17', true],
    ['T-07', 'T-7', true],
    ['T-07', 'T-077', true],
    ['T-07', 'T-70', true],
    ['118', '18', true],
    ['118', '1188', true],
    ['T-07', 'T-07', false],
    ['T-07', 't07', false],
    ['T-07', 'T-18', false],
    ['T-07', 'T-7-70', false],
    ['T-12', 'T-1234', false],
    ['AB12', 'BA21', false],
  ])('%s and %s look alike: %s, whichever is read first', (a, b, alike) => {
    expect(looksAlike(a, b)).toBe(alike);
    expect(looksAlike(b, a)).toBe(alike);
  });

  it('are listed in the order of the yard', () => {
    expect(lookAlikes('T-07', ['T-01', 'T-02', 'T-07', 'T-12', 'T-70', 'Q-2'])).toEqual(['T-01', 'T-02', 'T-70']);
  });
});
