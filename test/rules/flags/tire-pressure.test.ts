import { describe, expect, test } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { psi } from '../../../src/rules/units/pressure.js';
import { item, load, ticket } from '../sample-facts.js';
import { done, facts, kind, trip } from '../sample-trailer.js';

const PRESSURES = kind('tire-pressure', [{ kind: 'months', every: 1, toMonthEnd: false }]);

const found = (on: string, pounds: number) =>
  done('tire-pressure', on, {
    lines: ['1L', '1R', '2L', '2R'].map((position) => ({
      code: 'pressure',
      result: null,
      position,
      measured: { quantity: 'cold-pressure-kpa' as const, value: psi(pounds) },
    })),
  });

/** Scenario 3: gross 12,100, tongue 1,450: 10,650 on the axles, 2,663 a tire. */
const haul = (on: string) =>
  trip(on, 30, { load: load({ cargo: [item('machine', 8_200)], scale: ticket({ gross: 12_100, tongue: 1_450 }) }) });

const soft = (more: Parameters<typeof facts>[0]) =>
  assess(facts({ checkKinds: [PRESSURES], ...more }), day('2025-06-10')).flags.find(
    (flag) => flag.rule === 'tire-pressure',
  );

describe('tires found soft', () => {
  test('at 50 of 80 psi each is good for 2,600 lb: to be watched, since the day of the reading', () => {
    const flag = soft({ checkRecords: [found('2025-06-01', 50)] });
    expect(flag).toMatchObject({
      severity: 'watch',
      since: '2025-06-01',
      clears: [{ kind: 'inflate-tires', positions: ['1L', '1R', '2L', '2R'] }],
    });
    expect(flag?.evidence).toMatchObject({
      tires: [
        { position: '1L', foundKpa: psi(50), wantedKpa: psi(80), carriesKg: lb(2_600), carriedKg: null },
        { position: '1R' },
        { position: '2L' },
        { position: '2R' },
      ],
    });
  });

  test('hauled at 2,663 lb a tire since, it is past 49 CFR 393.75(i)(1)', () => {
    const flag = soft({ checkRecords: [found('2025-06-01', 50)], trips: [haul('2025-06-05')] });
    expect(flag?.severity).toBe('limit');
    const first = flag?.evidence.kind === 'tires-soft' ? flag.evidence.tires[0] : undefined;
    expect(toLb(first?.carriedKg ?? lb(0))).toBeCloseTo(2_662.5, 6);
  });

  test('the same haul before the reading says nothing of it', () => {
    const flag = soft({ checkRecords: [found('2025-06-01', 50)], trips: [haul('2025-05-31')] });
    expect(flag).toMatchObject({ severity: 'watch', evidence: { tires: [{ carriedKg: null }, {}, {}, {}] } });
  });

  test('at 65 psi they carry 3,000 each, so the same haul is within', () => {
    const flag = soft({ checkRecords: [found('2025-06-01', 65)], trips: [haul('2025-06-05')] });
    expect(flag).toMatchObject({ severity: 'watch', evidence: { tires: [{ carriesKg: lb(3_000) }, {}, {}, {}] } });
  });

  test('found full again, or within what a gauge tells, nothing is said', () => {
    expect(soft({ checkRecords: [found('2025-06-01', 50), found('2025-06-02', 80)] })).toBeUndefined();
    expect(soft({ checkRecords: [found('2025-06-01', 76)] })).toBeUndefined();
  });

  test('a haul whose tongue nobody weighed could only bound the tires, so it breaks nothing', () => {
    const unweighed = trip('2025-06-05', 30, { load: load({ cargo: [item('machine', 8_200)] }) });
    expect(soft({ checkRecords: [found('2025-06-01', 50)], trips: [unweighed] })?.severity).toBe('watch');
  });
});
