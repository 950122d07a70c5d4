import { describe, expect, test } from 'vitest';
import { explainLoad } from '../../../src/rules/explain/explain-load.js';
import type { Working } from '../../../src/rules/explain/working.js';
import { DEFAULT_POLICY } from '../../../src/rules/facts/yard-policy.js';
import { loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { lbf, type Newtons, newtons, toLbf } from '../../../src/rules/units/force.js';
import { inch } from '../../../src/rules/units/length.js';
import { type Kilograms, kg, lb, toLb } from '../../../src/rules/units/mass.js';
import { S1, S3 } from '../reference/statics-cases.js';
import { build, item, load, placedAxles, tires } from '../sample-facts.js';

// The S1 case of statics: 2,800 lb empty balancing at 165 in, 9,000 lb at 168, axles' middle at 180.
const EMPTY = 2_800;
const EMPTY_TONGUE = (EMPTY * (180 - 165)) / 180;
const limits = loadLimits({
  build: build({
    empty: { massKg: lb(EMPTY), basis: 'weighed', tongueN: lbf(EMPTY_TONGUE) },
    axles: placedAxles(S1.axleCentre),
  }),
  tires: tires(2),
  coldPressures: new Map(),
  towVehicle: null,
});
const workings = explainLoad({
  limits,
  load: load({ cargo: [item('loader', 9_000, { basis: 'stated' })], balancePointM: inch(168) }),
  policy: DEFAULT_POLICY,
});

function working(of: Working['of'], subject: string | null = null): Working {
  const found = workings.find((one) => one.of === of && one.subject === subject);
  if (found === undefined) throw new Error(`${of} ${subject} is not explained`);
  return found;
}
const sway = (one: Working, name: string) => one.inputs.find((input) => input.name === name)?.sway ?? null;

describe('how a load check was worked out', () => {
  test('the whole is the empty trailer and the loader, and hangs on the loader nobody weighed', () => {
    const gross = working('gross');
    expect(toLb(gross.value as Kilograms)).toBeCloseTo(11_800, 6);
    expect(gross.inputs.map(({ name, subject, basis }) => [name, subject, basis])).toEqual([
      ['empty-mass', null, 'measured'],
      ['cargo', 'loader', 'stated'],
    ]);
    // Half a per cent of 2,800 lb weighed against three of 9,000 lb stated.
    expect(toLb(kg(sway(gross, 'empty-mass') ?? 0))).toBeCloseTo(14, 6);
    expect(toLb(kg(sway(gross, 'cargo') ?? 0))).toBeCloseTo(270, 6);
    expect(gross.mattersMost).toBe(1);
  });

  test('the tongue is that of the worked case S1, and two inches of tape move it as S3 says', () => {
    const tongue = working('tongue');
    expect(toLbf(tongue.value as Newtons)).toBeCloseTo(S1.tongue, 1);
    // S3: six inches forward put 300 lb on it, so 0.05 m put 300 × 0.05 / (6 in).
    const perInch = S3.tongueGains / S3.forward;
    expect(toLbf(newtons(sway(tongue, 'balance-point') ?? 0))).toBeCloseTo((perInch * 0.05) / 0.0254, 3);
    expect(tongue.inputs[tongue.mattersMost ?? -1]?.name).toBe('balance-point');
  });

  test('what is left to a limit names the rating and only what moves it', () => {
    const plate = working('margin', 'plate');
    expect(toLbf(plate.value as Newtons)).toBeCloseTo(14_000 - 11_800, 6);
    expect(plate.inputs.map(({ name }) => name)).toEqual(['rating', 'empty-mass', 'cargo']);
    expect(plate.inputs[0]).toMatchObject({ basis: 'rated', sway: 0 });
    expect(working('margin', 'axle-group').inputs.map(({ name }) => name)).toContain('balance-point');
  });

  test('a scale ticket leaves nothing to guess: only what it shows counts', () => {
    const weighed = explainLoad({
      limits,
      load: load({ scale: { grossKg: lb(11_800), tongueN: lbf(833), axleN: null } }),
      policy: DEFAULT_POLICY,
    });
    const inputs = weighed.find(({ of }) => of === 'axle-group')?.inputs ?? [];
    expect(inputs.map(({ name, basis }) => [name, basis])).toEqual([
      ['scale-gross', 'measured'],
      ['scale-tongue', 'measured'],
    ]);
  });
});
