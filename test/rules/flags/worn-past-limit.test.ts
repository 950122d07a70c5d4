import { describe, expect, test } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { MeasuredQuantity } from '../../../src/rules/facts/check.js';
import type { Part } from '../../../src/rules/facts/part.js';
import { inch } from '../../../src/rules/units/length.js';
import { axle, build, tire, tires } from '../sample-facts.js';
import { done, facts, kind } from '../sample-trailer.js';

const KINDS = ['brakes', 'tread'].map((code) => kind(code, [{ kind: 'months', every: 6, toMonthEnd: false }]));
const braked = build({ axles: [1, 2].map((number) => axle(number, 7_000, { brakes: 'electric' })) });

const measured = (
  code: string,
  on: string,
  quantity: MeasuredQuantity,
  inches: Readonly<Record<string, number>>,
  outcome: 'pass' | 'fail' = 'fail',
) =>
  done(code, on, {
    outcome,
    lines: Object.entries(inches).map(([position, value]) => ({
      code: 'line',
      result: null,
      position,
      measured: { quantity, value: inch(value) * 1000 },
    })),
  });

const worn = (more: Parameters<typeof facts>[0]) =>
  assess(facts({ builds: [braked], checkKinds: KINDS, ...more }), day('2025-06-10')).flags.filter(
    (flag) => flag.rule === 'worn-past-limit',
  );

describe('linings at the annual inspection’s limit', () => {
  test('exactly 1/16 in fails (Appendix A 1.a(6)(c)), since the day it was measured', () => {
    const checkRecords = [measured('brakes', '2025-06-01', 'lining-mm', { '1L': 1 / 16, '1R': 0.08, '2L': 0.05 })];
    expect(worn({ checkRecords })).toEqual([
      {
        key: 'worn-past-limit:lining-mm',
        rule: 'worn-past-limit',
        severity: 'limit',
        since: '2025-06-01',
        evidence: {
          kind: 'worn-past-limit',
          quantity: 'lining-mm',
          limit: expect.closeTo(1.5875, 9),
          passesAtLimit: false,
          source: expect.stringContaining('1.a(6)(c)'),
          parts: [
            { position: '1L', value: expect.closeTo(1.5875, 9), on: '2025-06-01' },
            { position: '2L', value: expect.closeTo(1.27, 9), on: '2025-06-01' },
          ],
        },
        clears: [
          { kind: 'replace-part', part: 'brake-lining', position: null },
          { kind: 'pass-check', checkKindId: 'kind-brakes', code: 'brakes' },
        ],
      },
    ]);
  });

  test('new shoes on that wheel, a thicker measure, or a later pass make it void', () => {
    const thin = measured('brakes', '2025-06-01', 'lining-mm', { '1L': 0.05 });
    const shoes: Part = { ...tire('1L'), id: 'shoes', kind: 'brake-set', tire: null, fittedOn: day('2025-06-02') };
    expect(worn({ checkRecords: [thin], parts: [...tires(2), shoes] })).toEqual([]);
    expect(worn({ checkRecords: [thin, measured('brakes', '2025-06-03', 'lining-mm', { '1L': 0.2 })] })).toEqual([]);
    expect(worn({ checkRecords: [thin, done('brakes', '2025-06-03')] })).toEqual([]);
    expect(worn({ checkRecords: [thin, done('tread', '2025-06-03')] })).toHaveLength(1);
  });

  test('no law speaks of an axle without brakes', () => {
    const checkRecords = [measured('brakes', '2025-06-01', 'lining-mm', { '1L': 0.05 })];
    const unbraked = build({ axles: [axle(1, 7_000, { brakes: 'none' }), axle(2, 7_000)] });
    expect(worn({ builds: [unbraked], checkRecords })).toEqual([]);
  });
});

describe('treads', () => {
  test('2/32 in passes, less fails, and the spare does not count', () => {
    const checkRecords = [
      measured('tread', '2025-06-01', 'tread-depth-mm', { '1L': 2 / 32, '1R': 1.9 / 32, spare: 1 / 32 }),
    ];
    expect(worn({ checkRecords })).toMatchObject([
      {
        severity: 'limit',
        evidence: { quantity: 'tread-depth-mm', passesAtLimit: true, parts: [{ position: '1R' }] },
        clears: [
          { kind: 'replace-tires', positions: ['1R'] },
          { kind: 'pass-check', code: 'tread' },
        ],
      },
    ]);
  });

  test('a tire fitted since is not the worn one', () => {
    const checkRecords = [measured('tread', '2025-06-01', 'tread-depth-mm', { '1R': 1 / 32 })];
    const parts = [...tires(2).filter((one) => one.position !== '1R'), tire('1R', {}, day('2025-06-02'))];
    expect(worn({ checkRecords, parts })).toEqual([]);
  });
});
