import { describe, expect, test } from 'vitest';
import { speedOfSymbol } from '../../../src/rules/tire/speed-symbol.js';
import { kmPerHour, toMph } from '../../../src/rules/units/speed.js';
import reference from '../reference/speed-symbols.json' with { type: 'json' };

describe('speed symbols', () => {
  test.each(reference.symbols)('$symbol is $kmh km/h, about $mph mph', ({ symbol, kmh, mph }) => {
    const speed = speedOfSymbol(symbol);
    expect(speed).toBe(kmh);
    expect(Math.round(toMph(speed ?? kmPerHour(0)))).toBe(mph);
  });

  test.each(reference.cases.map((one) => [one.input, one.expected] as const))('case %s', (symbol, expected) => {
    expect(speedOfSymbol(symbol)).toBe('kmh' in expected ? expected.kmh : null);
  });

  test('H ranks between U and V, whatever the alphabet says', () => {
    const [u, h, v] = ['U', 'H', 'V'].map((symbol) => speedOfSymbol(symbol) ?? 0);
    expect([u, h, v]).toEqual([...[u, h, v]].sort((a, b) => (a ?? 0) - (b ?? 0)));
  });

  test('small letters are read; O, X and Z are none', () => {
    expect([speedOfSymbol(' l '), speedOfSymbol('O'), speedOfSymbol('X'), speedOfSymbol('Z')]).toEqual([
      120,
      null,
      null,
      null,
    ]);
  });
});
