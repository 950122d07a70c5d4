import { describe, expect, test } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { Part } from '../../../src/rules/facts/part.js';
import { lb } from '../../../src/rules/units/mass.js';
import { axle, build, tire, tires } from '../sample-facts.js';
import { facts } from '../sample-trailer.js';

const mismatched = (parts: readonly Part[], more: Parameters<typeof facts>[0] = {}) =>
  assess(facts({ parts, ...more }), day('2025-06-01')).flags.filter((flag) => flag.rule === 'tire-mismatch');

const but = (position: string, other: Part) => [...tires(2).filter((one) => one.position !== position), other];

describe('tires of one axle that are no set', () => {
  test('a load range D tire at the left rear after a hire: axle 2, since it was fitted, until it is replaced', () => {
    const swapped = tire('2L', { loadRange: 'D', maxLoadSingleKg: lb(3_000) }, day('2025-05-30'));
    expect(mismatched(but('2L', swapped))).toEqual([
      {
        key: 'tire-mismatch:2',
        rule: 'tire-mismatch',
        severity: 'watch',
        since: '2025-05-30',
        evidence: {
          kind: 'tires-mismatched',
          axle: 2,
          mismatches: [{ trait: 'load-range', positions: ['2L', '2R'], marked: ['D', 'E'] }],
        },
        clears: [
          { kind: 'replace-tires', positions: ['2L', '2R'] },
          { kind: 'correct', fact: 'part' },
        ],
      },
    ]);
    expect(mismatched(tires(2))).toEqual([]);
  });

  test('two axles may differ from one another', () => {
    const rear = ['2L', '2R'].map((position) => tire(position, { size: 'ST225/75R15', loadRange: 'D' }));
    expect(mismatched([...tires(1), ...rear])).toEqual([]);
  });

  test('a spare matches nothing and need not', () => {
    expect(mismatched([...tires(2), tire('spare', { size: 'ST205/75R15', loadRange: 'C' })])).toEqual([]);
  });

  test('tires two years apart by their codes', () => {
    const old = (code: string) => but('1L', tire('1L', { dateCode: code }));
    expect(mismatched(old('0922')).map((flag) => flag.evidence)).toMatchObject([
      { axle: 1, mismatches: [{ trait: 'age', marked: ['0922', '1024'] }] },
    ]);
    expect([mismatched(old('1122')), mismatched(old('5420'))]).toEqual([[], []]);
  });

  test('one of a dual pair', () => {
    const dual = build({ axles: [axle(1, 10_000, { wheelsPerSide: 2 })] });
    const wheels = ['1LO', '1LI', '1RI', '1RO'].map((position) =>
      tire(position, position === '1LI' ? { size: 'ST225/75R16' } : {}),
    );
    expect(mismatched(wheels, { builds: [dual] }).map((flag) => flag.evidence)).toMatchObject([
      { axle: 1, mismatches: [{ trait: 'size', positions: ['1LO', '1LI', '1RI', '1RO'] }] },
    ]);
  });
});
