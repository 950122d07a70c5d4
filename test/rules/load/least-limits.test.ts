import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Axle, BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import type { Load } from '../../../src/rules/facts/load.js';
import { DEFAULT_POLICY } from '../../../src/rules/facts/yard-policy.js';
import { leastLimits, passesNoLimit } from '../../../src/rules/load/least-limits.js';
import { checkLoad } from '../../../src/rules/load/load-check.js';
import type { LoadLimits } from '../../../src/rules/load/load-limits.js';
import { loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { newtons } from '../../../src/rules/units/force.js';
import { inch, metres } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { axle, build, item, load, tires } from '../sample-facts.js';

// The short way of telling that a load passes no limit, held against the whole load check.

function limitsOf(axles: readonly Axle[], more: Partial<BuildSheet> = {}): LoadLimits {
  return loadLimits({
    build: build({ axles, ...more }),
    tires: tires(axles.length),
    coldPressures: new Map(),
    towVehicle: null,
  });
}

const tandem = [1, 2].map((number) => axle(number, 7_000, { fromCouplerM: inch(number === 1 ? 162 : 198) }));
const levelAtHalfAMetre = { ...build().hitch, levelHeightM: metres(0.5) };

const BUILDS: Readonly<Record<string, LoadLimits>> = {
  'equalized springs': limitsOf(tandem),
  'one axle': limitsOf(tandem.slice(0, 1)),
  'no axle': limitsOf([]),
  'suspension unknown': limitsOf(tandem, { suspension: null }),
  'torsion, level height unknown': limitsOf(tandem, { suspension: 'torsion' }),
  'torsion, level height known': limitsOf(tandem, { suspension: 'torsion', hitch: levelAtHalfAMetre }),
  'a coupler for less': limitsOf(tandem, { hitch: { ...build().hitch, couplerTongueN: newtons(4_000) } }),
};

const loads: fc.Arbitrary<Load> = fc
  .record({
    pounds: fc.integer({ min: 0, max: 14_000 }),
    balance: fc.option(fc.integer({ min: 60, max: 260 })),
    placed: fc.boolean(),
    scale: fc.option(fc.integer({ min: 1_000, max: 18_000 }), { freq: 5 }),
    offCentreM: fc.option(fc.constantFrom(0, 0.1), { freq: 3 }),
    hitchHeightM: fc.option(fc.constantFrom(0.4, 0.5, 0.7)),
    empty: fc.integer({ min: 0, max: 9 }),
  })
  .map(({ pounds, balance, placed, scale, offCentreM, hitchHeightM, empty }) =>
    load({
      cargo:
        empty === 0 ? [] : [item('machine', pounds, placed && balance !== null ? { fromCouplerM: inch(balance) } : {})],
      balancePointM: balance === null ? null : inch(balance),
      scale: scale === null ? null : { grossKg: lb(scale), tongueN: null, axleN: null },
      offCentreM: offCentreM === null ? null : metres(offCentreM),
      hitchHeightM: hitchHeightM === null ? null : metres(hitchHeightM),
    }),
  );

const passesOne = (limits: LoadLimits, one: Load) =>
  checkLoad(limits, one, DEFAULT_POLICY).comparisons.some(({ standing }) => standing === 'over');

test.each(Object.entries(BUILDS))('%s: what the sums clear, the whole check clears', (_name, limits) => {
  const least = leastLimits(limits);
  fc.assert(
    fc.property(loads, (one) => {
      if (passesNoLimit(limits, least, one)) expect(passesOne(limits, one)).toBe(false);
    }),
    { seed: 7, numRuns: 300 },
  );
});

test('on equalized springs without a scale, the sums tell all: what they do not clear is over', () => {
  const limits = limitsOf(tandem);
  const least = leastLimits(limits);
  let [cleared, over] = [0, 0];
  for (let pounds = 2_000; pounds <= 13_000; pounds += 500) {
    for (let balance = 60; balance <= 240; balance += 20) {
      const one = load({ cargo: [item('machine', pounds)], balancePointM: inch(balance) });
      const clears = passesNoLimit(limits, least, one);
      expect(clears).toBe(!passesOne(limits, one));
      if (clears) cleared++;
      else over++;
    }
  }
  expect(cleared).toBeGreaterThan(20);
  expect(over).toBeGreaterThan(20);
});
