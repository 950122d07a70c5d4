import { describe, expect, it } from 'vitest';
import { applies } from '../../../src/rules/inspection/applies.js';
import { axle, build } from '../sample-facts.js';
import { ANY_BUILD } from '../sample-trailer.js';

describe('which checks are for a build', () => {
  it('a check of springs is not for torsion axles', () => {
    const springs = { ...ANY_BUILD, suspensions: ['slipper-spring', 'eye-to-eye-spring'] };
    expect(applies(springs, build({ suspension: 'torsion' }))).toBe(false);
    expect(applies(springs, build({ suspension: 'slipper-spring' }))).toBe(true);
  });

  it('what nobody has said counts as "it may"', () => {
    const tilting = { ...ANY_BUILD, bodies: ['gravity-tilt'] };
    expect(applies(tilting, build({ body: null }))).toBe(true);
    expect(applies(tilting, build({ body: 'fixed-deck' }))).toBe(false);
    expect(applies(tilting, null)).toBe(true);
  });

  it('one braked axle is enough for a check of brakes, and so is one nobody knows', () => {
    const braked = { ...ANY_BUILD, brakes: ['electric'] };
    const axles = (first: 'electric' | 'none' | null) => [
      axle(1, 7_000, { brakes: first }),
      axle(2, 7_000, { brakes: 'none' }),
    ];
    expect(applies(braked, build({ axles: axles('electric') }))).toBe(true);
    expect(applies(braked, build({ axles: axles(null) }))).toBe(true);
    expect(applies(braked, build({ axles: axles('none') }))).toBe(false);
  });

  it('every condition set must hold', () => {
    const both = { ...ANY_BUILD, suspensions: ['torsion'], hitches: ['gooseneck'] };
    expect(applies(both, build({ suspension: 'torsion' }))).toBe(false);
  });
});
