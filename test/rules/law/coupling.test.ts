import { describe, expect, test } from 'vitest';
import { couplingClass, safetyDeviceHolds } from '../../../src/rules/law/coupling.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { lawCases } from './law-cases.js';

describe('light-service coupling classes', () => {
  test.each(lawCases('j684-'))('%s', (_id, { input, expected }) => {
    const found = couplingClass(lb(input.gvwrLb));
    expect(found?.number ?? null).toBe(expected.class);
    if (found === null) return;
    expect(toLb(found.chainBreakKg)).toBeCloseTo(expected.eachChainMinBreakLb, 6);
    expect(toLb(found.couplerBreakKg)).toBeCloseTo(expected.couplerTensionMinBreakLb, 6);
  });
});

describe('the safety device of a full trailer', () => {
  test.each(lawCases('safety-full'))('%s', (_id, { input, expected }) => {
    expect(safetyDeviceHolds(lb(input.safetyDeviceUltimateLb), lb(input.trailerGrossLb))).toBe(expected.ok);
  });

  test('as strong as what it holds is strong enough', () => {
    expect(safetyDeviceHolds(lb(12_000), lb(12_000))).toBe(true);
  });
});
