import { describe, expect, test } from 'vitest';
import { explainLoad } from '../../../src/rules/explain/explain-load.js';
import { DEFAULT_POLICY } from '../../../src/rules/facts/yard-policy.js';
import { loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { lbf, newtons, toLbf } from '../../../src/rules/units/force.js';
import { inch } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { axle, build, item, load, tires } from '../sample-facts.js';

// S4 and S5 of statics: nose 3 in high puts 100 lb more on the tongue than level, a third of a hundred to the inch.
const springRateNPerM = lbf(2_000) / inch(1);
const limits = loadLimits({
  build: build({
    suspension: 'torsion',
    empty: { massKg: lb(2_800), basis: 'weighed', tongueN: lbf((2_800 * 15) / 180) },
    axles: [163.5, 196.5].map((at, index) => axle(index + 1, 7_000, { fromCouplerM: inch(at), springRateNPerM })),
    hitch: { ...build().hitch, levelHeightM: inch(20) },
  }),
  tires: tires(2),
  coldPressures: new Map(),
  towVehicle: null,
});
const cargo = [
  item('machine', 6_000, { fromCouplerM: inch(150) }),
  item('attachment', 3_000, { fromCouplerM: inch(180) }),
];
const workings = explainLoad({ limits, load: load({ cargo, hitchHeightM: inch(23) }), policy: DEFAULT_POLICY });
const tongue = workings.find(({ of }) => of === 'tongue');
const swayOf = (name: string, subject: string | null = null) =>
  toLbf(newtons(tongue?.inputs.find((one) => one.name === name && one.subject === subject)?.sway ?? Number.NaN));

describe('the tongue of torsion axles', () => {
  test('is S5’s', () => {
    expect(toLbf(newtons(Number(tongue?.value)))).toBeCloseTo(1_333.3, 1);
  });

  test('an inch of tape on either height moves it by 33 lb', () => {
    const perInch = (1_333.3 - 1_233.3) / 3;
    for (const height of ['hitch-height', 'level-height']) {
      // Twenty-five millimetres; the two printed tongues are good to a tenth of a pound.
      expect(swayOf(height)).toBeCloseTo((perInch * 0.025) / 0.0254, 1);
    }
  });

  test('each item counts by its own place, and the stiffness of each axle counts', () => {
    // As level: w d over 180 in, d being 50 mm.
    expect(swayOf('cargo-place', 'machine')).toBeCloseTo((6_000 * 0.05) / 0.0254 / 180, 1);
    expect(swayOf('cargo-place', 'attachment')).toBeCloseTo((3_000 * 0.05) / 0.0254 / 180, 1);
    expect(swayOf('spring-rate', '1')).toBeGreaterThan(0);
    expect(tongue?.inputs.map(({ name }) => name)).not.toContain('balance-point');
  });

  test('moving the axles back takes their load with them', () => {
    expect(swayOf('axle-centre')).toBeGreaterThan(0);
  });
});
