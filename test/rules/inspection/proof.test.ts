import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { KEEP_MONTHS, keepMaintenanceThrough, keepThrough } from '../../../src/rules/inspection/proof.js';
import { lastGoodDay } from '../../../src/rules/inspection/triggers/months.js';
import reference from '../reference/inspection-dates.json' with { type: 'json' };

const ANNUAL = { kind: 'months', every: 12, toMonthEnd: true } as const;

interface Case {
  readonly id: string;
  readonly input: Readonly<Record<string, string | null>>;
  readonly expected: Readonly<Record<string, string>>;
}

function answer({ id, input }: Case): Readonly<Record<string, string>> {
  const date = (name: string) => day(input[name] ?? '');
  if (id.startsWith('pi-')) {
    const inspectedBy = input.by === 'State program' ? 'state' : 'own';
    return { lastGoodDay: lastGoodDay(ANNUAL, { doneOn: date('lastPassed'), inspectedBy }) };
  }
  if (id.startsWith('keep-report')) return { keepThrough: keepThrough(date('reportDate'), KEEP_MONTHS.periodicReport) };
  if (id.startsWith('keep-dvir')) return { keepThrough: keepThrough(date('reportDate'), KEEP_MONTHS.driverReport) };
  const leftOn = input.vehicleLeft ? date('vehicleLeft') : null;
  return { keepThrough: keepMaintenanceThrough(date('recordDate'), leftOn) };
}

describe('inspection and record dates of 49 CFR 396', () => {
  it.each(reference.cases as readonly unknown[] as readonly Case[])('$id holds', (published) => {
    expect(answer(published)).toEqual(published.expected);
  });

  it('a report of 14 March 2025 is kept to 14 May 2026', () => {
    expect(keepThrough(day('2025-03-14'), KEEP_MONTHS.periodicReport)).toBe('2026-05-14');
  });

  it('a pass by a State program on 28 February of a leap year runs to the end of February', () => {
    const good = lastGoodDay(ANNUAL, { doneOn: day('2024-02-05'), inspectedBy: 'state' });
    expect(good).toBe('2025-02-28');
    expect(lastGoodDay(ANNUAL, { doneOn: day('2023-02-05'), inspectedBy: 'state' })).toBe('2024-02-29');
  });

  it('a State pass gets no month end where the check does not allow it', () => {
    const plain = { ...ANNUAL, toMonthEnd: false };
    expect(lastGoodDay(plain, { doneOn: day('2024-03-15'), inspectedBy: 'state' })).toBe('2025-03-15');
  });
});
