import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ageOfShare, aliveAt, learnt, toldBy } from '../../../src/rules/deck/life-mixture.js';
import type { Lifetime } from '../../../src/rules/statistics/lifetime.js';
import expected from '../reference/r/deck-life.json' with { type: 'json' };

/** The others seen, and the one asked about, alive at `lasted`: among those told, as the rule has it. */
function mixtureOf({ ages, died, lasted }: (typeof expected.mixture)[number]) {
  const others: Lifetime[] = ages.map((age, i) => ({ age, died: died[i] === true }));
  return learnt(toldBy([...others, { age: lasted, died: false }]));
}

describe('against numerical integration in R (reference/r/deck-life.R)', () => {
  test.each(expected.mixture)('$id', (one) => {
    const mixture = mixtureOf(one);
    // R integrates to 1e-11 and prints ten figures; the ages are found by bisection to 1e-7.
    for (const { age, share } of one.aliveAt) expect(aliveAt(mixture, one.lasted, age)).toBeCloseTo(share, 8);
    for (const { share, age } of one.reached) {
      expect(ageOfShare(mixture, one.lasted, one.lasted, share)).toBeCloseTo(age, 6);
    }
  });
});

test('before any deck was seen half of them outlast the expected life, whatever the shape', () => {
  const mixture = learnt(toldBy([]));
  expect(aliveAt(mixture, 0, 1)).toBeCloseTo(0.5, 12);
});

const LIVES = fc.array(fc.record({ age: fc.double({ min: 0.05, max: 4, noNaN: true }), died: fc.boolean() }), {
  maxLength: 12,
});

test('it is a share between 0 and 1 that only falls, and one more survivor never shortens the life', () => {
  fc.assert(
    fc.property(LIVES, fc.double({ min: 0.1, max: 3, noNaN: true }), (lives, age) => {
      const mixture = learnt(toldBy(lives));
      const here = aliveAt(mixture, 0, age);
      expect(here).toBeLessThanOrEqual(1);
      expect(here).toBeGreaterThanOrEqual(0);
      expect(aliveAt(mixture, 0, age * 1.1)).toBeLessThanOrEqual(here + 1e-12);
      expect(mixture.components.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
      const within = learnt(toldBy([...lives, { age, died: false }]));
      expect(aliveAt(within, 0, age)).toBeGreaterThanOrEqual(here - 1e-12);
    }),
    { seed: 14, numRuns: 200 },
  );
});

test('the age of a share is the age at which that share has died, and later the longer it has lasted', () => {
  fc.assert(
    fc.property(
      LIVES,
      fc.double({ min: 0, max: 2, noNaN: true }),
      fc.double({ min: 0.05, max: 0.9, noNaN: true }),
      (lives, now, share) => {
        const mixture = learnt(toldBy([...lives, { age: now, died: false }]));
        const age = ageOfShare(mixture, now, now, share);
        expect(1 - aliveAt(mixture, now, age)).toBeCloseTo(share, 5);
        expect(ageOfShare(mixture, now, now + 0.2, share)).toBeGreaterThanOrEqual(age - 1e-6);
      },
    ),
    { seed: 14, numRuns: 200 },
  );
});
