import { describe, expect, test } from 'vitest';
import type { Seen } from '../../../src/rules/facts/handover.js';
import { ballAnswer, owesBall } from '../../../src/rules/handover/ball.js';
import { changes, unseen } from '../../../src/rules/handover/changes.js';
import { plugAnswer } from '../../../src/rules/handover/plug.js';
import { loadedMass, release } from '../../../src/rules/handover/release.js';
import { inch } from '../../../src/rules/units/length.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { build, marks } from '../sample-facts.js';

function seen(thing: Seen['thing'], position: string | null = null, more: Partial<Seen> = {}): Seen {
  return { thing, position, condition: 'sound', tire: null, ballSizeM: null, note: null, photoIds: [], ...more };
}

// A hired trailer out on Friday with four tires of 3,420 lb. On Monday its left rear tire is a load range D of 3,000,
// its right ramp is bent, its coupler stiff and a fender rubbed.
const OUT = [
  ...['1L', '1R', '2L', '2R'].map((at) => seen('tire', at, { tire: marks() })),
  seen('ramp', 'left'),
  seen('ramp', 'right'),
  seen('coupler'),
  seen('fender', 'left'),
  seen('plug'),
];
const BACK = [
  ...['1L', '1R', '2R'].map((at) => seen('tire', at, { tire: marks() })),
  seen('tire', '2L', { tire: marks({ loadRange: 'D', maxLoadSingleKg: lb(3_000), dateCode: '0226' }) }),
  seen('ramp', 'left'),
  seen('ramp', 'right', { condition: 'bent' }),
  seen('coupler', null, { condition: 'stiff' }),
  seen('fender', 'left', { condition: 'rubbed' }),
];

describe('what changed while a trailer was out', () => {
  const found = changes(OUT, BACK);
  const told = found.map(({ thing, position, answer, keepsIn }) => [thing, position, answer, keepsIn]);

  test('a swapped tire and a bent ramp are chargeable, a stiff coupler is looked at, a rub is wear', () => {
    expect(told).toEqual([
      ['tire', '2L', 'chargeable', true],
      ['ramp', 'right', 'chargeable', true],
      ['coupler', null, 'inspect', true],
      ['fender', 'left', 'wear', false],
    ]);
    expect(found[0]?.differs).toEqual(['load-range', 'max-load', 'date-code']);
  });

  test('what nobody looked at again is named', () => {
    expect(unseen(OUT, BACK).map(({ thing }) => thing)).toEqual(['plug']);
  });

  test('what went out bent and comes back bent is nobody’s new damage', () => {
    const bent = [seen('ramp', 'right', { condition: 'bent' })];
    expect(changes(bent, bent)).toEqual([]);
  });

  test('what nobody saw on the way out is charged to nobody before the shop has looked', () => {
    const [only] = changes([], [seen('jack', null, { condition: 'broken' })]);
    expect(only).toMatchObject({ answer: 'inspect', was: null, keepsIn: true });
  });

  test('a tire of the same make and size with another date code was swapped all the same, and is no weaker', () => {
    const [only] = changes(
      [seen('tire', '1L', { tire: marks() })],
      [seen('tire', '1L', { tire: marks({ dateCode: '0318' }) })],
    );
    expect(only).toMatchObject({ differs: ['date-code'], answer: 'chargeable', keepsIn: false });
  });
});

describe('a ball at the counter', () => {
  const coupler = { ballSizeM: inch(2.3125), grossKg: lb(12_100) };

  test('2 in under a coupler for 2-5/16 in is refused', () => {
    expect(ballAnswer(coupler, { sizeM: inch(2), ratingKg: lb(14_000) })).toMatchObject({
      verdict: 'refused',
      sizesDiffer: true,
    });
  });

  test('the right size rated for less than the loaded trailer is refused, by how much', () => {
    const answer = ballAnswer(coupler, { sizeM: inch(2.3125), ratingKg: lb(10_000) });
    expect(answer).toMatchObject({ verdict: 'refused', sizesDiffer: false });
    expect(toLb(answer.overKg ?? lb(0))).toBeCloseTo(2_100, 6);
  });

  test('the right size with rating enough matches; with no rating known nobody can say', () => {
    expect(ballAnswer(coupler, { sizeM: inch(2.3125), ratingKg: lb(14_000) }).verdict).toBe('match');
    expect(ballAnswer(coupler, { sizeM: inch(2.3125), ratingKg: null })).toMatchObject({
      verdict: 'cannot-say',
      lacks: ['ball-rating'],
    });
  });

  test('a ball that the yard swapped on the customer’s mount is owed until it is seen back', () => {
    const ball = { sizeM: inch(2), ratingKg: lb(7_500) };
    const swapped = { ball, swappedTo: { sizeM: inch(2.3125), ratingKg: lb(14_000) }, plug: null };
    expect(owesBall(swapped, [])).toBe(true);
    expect(owesBall(swapped, [seen('customer-ball', null, { condition: 'missing' })])).toBe(true);
    expect(owesBall(swapped, [seen('customer-ball', null, { ballSizeM: inch(2) })])).toBe(false);
    expect(owesBall({ ...swapped, swappedTo: null }, [])).toBe(false);
    expect(owesBall(null, [])).toBe(false);
  });
});

describe('a plug at the counter', () => {
  const electric = [{ brakes: 'electric' as const }, { brakes: 'electric' as const }];

  test('that works nothing is refused: lamps must work, 49 CFR 393.9', () => {
    expect(plugAnswer('nothing', [{ brakes: 'none' }])).toMatchObject({ verdict: 'refused', dead: 'lamps' });
  });

  test('that works lamps alone is refused for electric brakes, 49 CFR 393.48, and serves surge brakes', () => {
    expect(plugAnswer('lamps-only', electric)).toMatchObject({ verdict: 'refused', dead: 'brakes' });
    expect(plugAnswer('lamps-only', [{ brakes: 'surge' }, { brakes: 'none' }]).verdict).toBe('match');
  });

  test('that nobody tried, or brakes nobody knows, leave it open and say so', () => {
    expect(plugAnswer(null, electric)).toMatchObject({ verdict: 'cannot-say', lacks: ['plug'] });
    expect(plugAnswer('lamps-only', [{ brakes: null }])).toMatchObject({ verdict: 'cannot-say', lacks: ['brakes'] });
    expect(plugAnswer('lamps-only', [])).toMatchObject({ verdict: 'cannot-say', lacks: ['brakes'] });
    expect(plugAnswer('lamps-and-brakes', electric).verdict).toBe('match');
  });
});

describe('coupled up at the counter', () => {
  const own = { sizeM: inch(2), ratingKg: lb(7_500) };
  const ours = { sizeM: inch(2.3125), ratingKg: lb(14_000) };
  const trailer = build({ hitch: { ...build().hitch, kind: 'bumper-pull', ballSizeM: inch(2.3125) } });

  test('the ball it goes out on counts, not the one that was taken off', () => {
    const hitch = { ball: own, swappedTo: null, plug: 'lamps-and-brakes' as const };
    expect(release(trailer, hitch, lb(12_000)).ball?.verdict).toBe('refused');
    expect(release(trailer, { ...hitch, swappedTo: ours }, lb(12_000)).ball?.verdict).toBe('match');
  });

  test('a pintle takes no ball', () => {
    const pintle = build({ hitch: { ...build().hitch, kind: 'pintle' } });
    expect(release(pintle, { ball: own, swappedTo: null, plug: null }, lb(12_000)).ball).toBe(null);
  });

  test('a load nobody knows is taken for all that the plate allows', () => {
    const plated = build({ plate: { gvwrKg: lb(14_000), coldPressureKpa: null } });
    expect(loadedMass(lb(9_000), plated)).toBe(lb(9_000));
    expect(loadedMass(null, plated)).toBe(lb(14_000));
    expect(loadedMass(null, null)).toBe(null);
  });
});
