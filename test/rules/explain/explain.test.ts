import { describe, expect, test } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { explain } from '../../../src/rules/explain/explain.js';
import type { Working } from '../../../src/rules/explain/working.js';
import { DEFAULT_POLICY } from '../../../src/rules/facts/yard-policy.js';
import { type Kilometres, miles, toMiles } from '../../../src/rules/units/distance.js';
import { lbf } from '../../../src/rules/units/force.js';
import { type Kilograms, kg, lb, toLb } from '../../../src/rules/units/mass.js';
import { build, tires } from '../sample-facts.js';
import { done, facts, kind, reading } from '../sample-trailer.js';

const input = (working: Working | undefined, name: string) => working?.inputs.find((one) => one.name === name);

describe('how the payload was worked out', () => {
  // Plate 9,990 lb, empty 2,980 lb: 7,010 lb are left (axles of 7,000 lb each do not raise it).
  const plated = build({
    plate: { gvwrKg: lb(9_990), coldPressureKpa: null },
    empty: { massKg: lb(2_980), basis: 'stated', tongueN: null },
  });
  const payload = explain(facts({ builds: [plated], parts: tires(2) }), day('2026-04-03')).find(
    ({ of }) => of === 'payload',
  );

  test('names the plate as the rating, and the empty weight nobody weighed as what matters most', () => {
    expect(toLb(payload?.value as Kilograms)).toBeCloseTo(7_010, 6);
    expect(input(payload, 'rating')).toMatchObject({ subject: 'plate', basis: 'rated', value: lbf(9_990) });
    expect(payload?.inputs[payload.mattersMost ?? -1]).toMatchObject({ name: 'empty-mass', basis: 'stated' });
    // Three per cent of 2,980 lb.
    expect(toLb(kg(input(payload, 'empty-mass')?.sway ?? 0))).toBeCloseTo(89.4, 6);
  });
});

describe('how a due day was worked out', () => {
  // The meter case U1: 12,400 mi on 1 March 2025 and 14,290 on 20 June come to 15,500 on 31 August.
  const kinds = [
    kind('repack', [{ kind: 'distance', everyKm: miles(3_100) }]),
    kind('look', [{ kind: 'days', every: 30 }]),
  ];
  const workings = explain(
    facts({
      readings: [reading('2025-03-01', 12_400), reading('2025-06-20', 14_290)],
      checkKinds: kinds,
      checkRecords: [done('repack', '2025-03-01'), done('look', '2025-06-01')],
      policy: { ...DEFAULT_POLICY, useWindowDays: 365 },
    }),
    day('2025-06-20'),
  );
  const of = (code: string) => workings.find(({ subject }) => subject === `kind-${code}`);

  test('by distance: the interval, what is used, and the usual use, which matters most', () => {
    const repack = of('repack');
    expect(repack?.value).toBe('2025-08-31');
    expect(toMiles(input(repack, 'interval')?.value as Kilometres)).toBeCloseTo(3_100, 6);
    expect(toMiles(input(repack, 'used')?.value as Kilometres)).toBeCloseTo(1_890, 6);
    expect(repack?.inputs[repack.mattersMost ?? -1]?.name).toBe('use-a-day');
    // 1,210 mi left at 17.027 a day are 71.06 days; a tenth more or less use makes it 64.6 or 79.0: half of the gap.
    expect(input(repack, 'use-a-day')?.sway).toBeCloseTo((71.064 / 0.9 - 71.064 / 1.1) / 2, 1);
  });

  test('by days: the day of the last record and the interval, with nothing to doubt', () => {
    expect(of('look')).toMatchObject({ value: '2025-07-01', mattersMost: null });
    expect(of('look')?.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['last-done', '2025-06-01'],
      ['interval', 30],
    ]);
  });
});
