import { describe, expect, it, test } from 'vitest';
import { likeliestModelYear, readVin } from '../../../src/rules/trailer/vin.js';
import reference from '../reference/vin-cases.json' with { type: 'json' };

interface Case {
  readonly id: string;
  readonly input: { readonly vin: string };
  readonly expected: {
    readonly valid: boolean;
    readonly checkDigit?: string;
    readonly modelYear?: number;
    readonly modelYearCandidates?: readonly number[];
    readonly smallMaker?: boolean;
    readonly makerKey?: string;
    readonly expectedCheckDigit?: string;
    readonly found?: string;
    readonly reason?: string;
  };
}

const CASES = reference.cases as readonly Case[];

describe('every published case of 49 CFR 565', () => {
  test.each(CASES.map((one) => [one.id, one] as const))('%s', (_id, { input, expected }) => {
    const reading = readVin(input.vin);
    expect(reading.kind === 'right').toBe(expected.valid);
    if (reading.kind === 'right') {
      expect(reading.vin).toBe(input.vin.toUpperCase());
      if (expected.checkDigit !== undefined) expect(reading.vin[8]).toBe(expected.checkDigit);
      if (expected.modelYear !== undefined) expect(reading.modelYears).toContain(expected.modelYear);
      if (expected.modelYearCandidates !== undefined) expect(reading.modelYears).toEqual(expected.modelYearCandidates);
      if (expected.makerKey !== undefined) expect(reading.maker).toBe(expected.makerKey);
    }
    if (reading.kind === 'bad-check-digit') {
      expect([reading.expected, reading.found]).toEqual([expected.expectedCheckDigit, expected.found]);
    }
    if (reading.kind === 'bad-character') {
      expect(`character ${reading.character} not allowed at position ${reading.place}`).toBe(expected.reason);
    }
    if (reading.kind === 'bad-length') expect(`${reading.length} characters, 17 needed`).toBe(expected.reason);
  });

  it('has eleven', () => {
    expect(CASES).toHaveLength(11);
  });
});

describe('the model year', () => {
  /** A number that is right but for its check digit, with that mended. */
  const withYearCode = (code: string) => {
    const reading = readVin(`1X9BF2020${code}0LM1234`);
    return reading.kind === 'bad-check-digit' ? readVin(`1X9BF202${reading.expected}${code}0LM1234`) : reading;
  };

  test.each(Object.entries(reference.yearCodes))('code %s means %j', (code, years) => {
    expect(withYearCode(code)).toMatchObject({ kind: 'right', modelYears: years });
  });

  it('of a trailer is the later one that can have been sold', () => {
    expect(likeliestModelYear([1980, 2010], 2025)).toBe(2010);
    expect([likeliestModelYear([1996, 2026], 2025), likeliestModelYear([1996, 2026], 2024)]).toEqual([2026, 1996]);
    expect(likeliestModelYear([], 2025)).toBeNull();
  });

  it('is not known where the code is one that no year has', () => {
    for (const code of ['U', 'Z', '0']) expect(withYearCode(code)).toMatchObject({ kind: 'right', modelYears: [] });
  });
});

it('a maker of many trailers is known by three characters', () => {
  expect(readVin('1G4AH59H45G118341')).toMatchObject({ maker: '1G4' });
});

it('blanks are no part of a number', () => {
  expect(readVin(' 1G4AH 59H45G118341 ')).toMatchObject({ kind: 'right', vin: '1G4AH59H45G118341' });
});
