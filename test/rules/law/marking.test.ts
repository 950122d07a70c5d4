import { describe, expect, test } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { rearGuardPasses, rearGuardRequired, tapeRetrofitRequired } from '../../../src/rules/law/marking.js';
import { inch } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import periodic from '../reference/periodic-inspection.json' with { type: 'json' };
import { lawCases } from './law-cases.js';

const trailer = (built: string, gvwr: number) => ({ builtOn: day(built), gvwrKg: lb(gvwr) });
const UNMEASURED = { groundM: null, insideM: null, aheadM: null, barM: null };

describe('red and white tape on older trailers', () => {
  test.each(lawCases('consp-'))('%s', (_id, { input, expected }) => {
    expect(tapeRetrofitRequired(trailer(input.built, input.gvwrLb), inch(input.widthIn))).toBe(
      expected.retrofitRequired,
    );
  });

  test('not on those built with it, nor on lighter ones; 80 in and 10,001 lb are in', () => {
    const wide = inch(80);
    expect(tapeRetrofitRequired(trailer('1993-11-30', 10_001), wide)).toBe(true);
    expect(tapeRetrofitRequired(trailer('1993-12-01', 10_001), wide)).toBe(false);
    expect(tapeRetrofitRequired(trailer('1993-11-30', 10_000), wide)).toBe(false);
  });
});

describe('the rear guard', () => {
  test.each(lawCases('guard-22'))('%s', (_id, { input, expected }) => {
    expect(rearGuardRequired(trailer(input.built, input.gvwrLb))).toBe(true);
    expect(rearGuardPasses(day(input.built), { ...UNMEASURED, groundM: inch(input.guardHeightIn) })).toBe(
      expected.pass,
    );
  });

  test.each(lawCases('guard-light'))('%s', (_id, { input, expected }) => {
    expect(rearGuardRequired(trailer(input.built, input.gvwrLb))).toBe(expected.guardRequired);
  });

  test.each([
    ['rig-1998', '1998-01-26'],
    ['rig-old', '1998-01-25'],
  ])('%s: each published measure passes, and a tenth of an inch worse fails', (id, built) => {
    const limit = periodic.items.find((item) => item.id === id)?.limit as unknown as Record<string, number>;
    const at = { ground: limit.groundIn ?? 0, inside: limit.sideInsetIn ?? 0, ahead: limit.forwardIn ?? 0 };
    const guard = (ground: number, inside: number, ahead: number, bar: number) =>
      rearGuardPasses(day(built), {
        groundM: inch(ground),
        insideM: inch(inside),
        aheadM: inch(ahead),
        barM: inch(bar),
      });
    const bar = limit.minHeightIn ?? 0;
    expect(guard(at.ground, at.inside, at.ahead, bar)).toBe(true);
    expect(guard(at.ground + 0.1, at.inside, at.ahead, bar)).toBe(false);
    expect(guard(at.ground, at.inside + 0.1, at.ahead, bar)).toBe(false);
    expect(guard(at.ground, at.inside, at.ahead + 0.1, bar)).toBe(false);
    if (bar > 0) expect(guard(at.ground, at.inside, at.ahead, bar - 0.1)).toBe(false);
  });
});
