import { describe, expect, test } from 'vitest';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import { classForGross, trailerClass } from '../../../src/rules/trailer/trailer-class.js';
import { inch, metres } from '../../../src/rules/units/length.js';
import { kg, lb } from '../../../src/rules/units/mass.js';
import { axle, build, tire, tires, unknownBuild } from '../sample-facts.js';

function made(depthIn: number | null, axleLb: number | null, more: Partial<BuildSheet> = {}): BuildSheet {
  return build({
    frame: { ...unknownBuild().frame, depthM: depthIn === null ? null : inch(depthIn) },
    axles: axleLb === null ? [] : [axle(1, axleLb), axle(2, axleLb)],
    ...more,
  });
}

describe('the class of a trailer by common practice', () => {
  test.each([
    [5, 5_200, 'light'],
    [6, 7_000, 'medium'],
    [8, 8_000, 'heavy'],
    [5, 3_500, 'light'],
    [8, 7_000, 'medium'],
    [6, 8_000, 'medium'],
    [5, 7_000, 'light'],
    [4, 7_000, 'not-an-equipment-trailer'],
  ] as const)('a %s in frame on %s lb axles is %s: the weaker decides', (depth, rating, expected) => {
    expect(trailerClass(made(depth, rating), [])).toBe(expected);
  });

  test('either frame or axles may be unknown, not both', () => {
    expect(trailerClass(made(null, 7_000), [])).toBe('medium');
    expect(trailerClass(made(6, null), [])).toBe('medium');
    expect(trailerClass(made(null, null), [])).toBeNull();
  });

  test('a heavy trailer stands on 17.5 in tires; on 16 in ones it is medium', () => {
    expect(trailerClass(made(8, 8_000), [tire('1L', { size: '215/75R17.5' })])).toBe('heavy');
    expect(trailerClass(made(8, 8_000), tires(2))).toBe('medium');
    expect(trailerClass(made(8, 8_000), [tire('spare')])).toBe('heavy');
  });

  test('a gooseneck deck-over on 10,000 lb axles is a class of its own', () => {
    const hitch = { ...build().hitch, kind: 'gooseneck' as const };
    const frame = { ...unknownBuild().frame, section: 'i-beam' as const, depthM: inch(12) };
    expect(trailerClass(made(12, 10_000, { body: 'deck-over', hitch, frame }), [])).toBe('gooseneck-deck-over');
    expect(trailerClass(made(12, 10_000, { body: 'fixed-deck', hitch, frame }), [])).toBe('heavy');
    expect(trailerClass(made(12, 7_000, { body: 'deck-over', hitch, frame }), [])).toBe('medium');
  });

  test('ratings and depths entered rounded still reach their class', () => {
    const metric = made(null, null, {
      frame: { ...unknownBuild().frame, depthM: metres(0.152) },
      axles: [axle(1, null, { ratingKg: kg(3_175) })],
    });
    expect(trailerClass(metric, [])).toBe('medium');
  });

  test.each([
    [9_000, 'light'],
    [10_400, 'light'],
    [10_500, 'medium'],
    [14_000, 'medium'],
    [15_540, 'heavy'],
    [16_200, 'gooseneck-deck-over'],
    [31_000, null],
  ] as const)('%s lb gross want the axles of the class %s', (gross, expected) => {
    expect(classForGross(lb(gross))).toBe(expected);
  });
});
