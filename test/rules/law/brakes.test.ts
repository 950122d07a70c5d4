import { describe, expect, test } from 'vitest';
import { brakesRequired, breakawayHolds, isPastUnbraked } from '../../../src/rules/law/brakes.js';
import { lb } from '../../../src/rules/units/mass.js';
import { lawCases } from './law-cases.js';

describe('which trailers in commerce need brakes', () => {
  test.each(lawCases('brk-'))('%s', (_id, { input, expected }) => {
    const required = brakesRequired({
      grossKg: lb(input.trailerGrossLb),
      axlesKg: lb(input.trailerAxleLb),
      towingAxlesKg: lb(input.truckAxlesLb),
    });
    expect(required).toBe(expected.brakesRequired);
  });

  test('while an axle load is unknown only the gross can settle it', () => {
    const of = (gross: number) => brakesRequired({ grossKg: lb(gross), axlesKg: null, towingAxlesKg: null });
    expect([of(3_001), of(3_000)]).toEqual([true, null]);
    expect([isPastUnbraked(lb(3_001)), isPastUnbraked(lb(3_000))]).toEqual([true, false]);
  });
});

describe('the breakaway', () => {
  test.each(lawCases('bw-'))('%s', (_id, { input, expected }) => {
    const holds = breakawayHolds({
      axles: input.axles,
      heldMinutes: input.breakawayHoldMin,
      allBrakesWentOn: input.allRequiredBrakesApply,
    });
    expect(holds).toBe(expected.ok);
  });
});
