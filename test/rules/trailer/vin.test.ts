import { describe, expect, it } from 'vitest';
import { readVin } from '../../../src/rules/trailer/vin.js';

describe('a vehicle identification number', () => {
  it("the regulation's own sample is right (49 CFR 565.15(c)(5))", () => {
    expect(readVin('1G4AH59H45G118341')).toEqual({
      kind: 'right',
      vin: '1G4AH59H45G118341',
      modelYears: [2005, 2035],
    });
  });

  it('a remainder of ten is written X (widely published worked example)', () => {
    expect(readVin('1M8GDM9AXKP042788').kind).toBe('right');
  });

  it('seventeen ones are right (sum 89, remainder 1; computed from the regulation)', () => {
    expect(readVin('11111111111111111').kind).toBe('right');
  });

  it('one wrong digit is caught, and the right one named', () => {
    expect(readVin('1G4AH59H55G118341')).toEqual({
      kind: 'bad-check-digit',
      vin: '1G4AH59H55G118341',
      found: '5',
      expected: '4',
    });
  });

  it('letters of one value look the same to the check digit', () => {
    expect(readVin('1G4JH59H45G118341').kind).toBe('right');
  });

  it('a letter O is named by its place and not taken for a zero (49 CFR 565.13(g))', () => {
    expect(readVin('1G4AH59H45GO18341')).toEqual({ kind: 'bad-character', character: 'O', place: 12 });
    expect(readVin('1Q9BF2020A0LM1234')).toEqual({ kind: 'bad-character', character: 'Q', place: 2 });
  });

  it('sixteen characters are not enough (49 CFR 565.13(b))', () => {
    expect(readVin('1G4AH59H45G11834')).toEqual({ kind: 'bad-length', vin: '1G4AH59H45G11834', length: 16 });
  });

  it('on a trailer the year code leaves two years open (computed from the regulation)', () => {
    expect(readVin('1X9BF2022A0LM1234')).toMatchObject({ kind: 'right', modelYears: [1980, 2010] });
    expect(readVin('5Y9FD1623RT987123')).toMatchObject({ kind: 'right', modelYears: [1994, 2024] });
  });

  it('small letters are read as large ones', () => {
    expect(readVin('1x9hb1628p1ab1042')).toMatchObject({ kind: 'right', vin: '1X9HB1628P1AB1042' });
  });
});
