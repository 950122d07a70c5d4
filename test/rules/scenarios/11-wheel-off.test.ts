import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';
import { miles, toMiles } from '../../../src/rules/units/distance.js';
import { tires } from '../sample-facts.js';
import { facts, job, trip } from '../sample-trailer.js';

// Scenario 11 of the acceptance list. Tire changed on Tuesday 3 June 2025; trips since of 8, 14 and 31 miles.
const nuts = DEFAULT_CHECK_KINDS.filter(({ code }) => code === 'wheel-nut-torque').map((one) => ({
  ...one,
  id: 'nuts',
}));
const changed = tires(2).map((one) => (one.position === '1L' ? { ...one, fittedOn: day('2025-06-03') } : one));
const trips = [trip('2025-06-04', 8), trip('2025-06-05', 14), trip('2025-06-06', 31)];

function torque(asOf: string, more: Partial<TrailerFacts>) {
  const assessment = assess(facts({ checkKinds: nuts, parts: changed, ...more }), day(asOf));
  const due = assessment.due[0];
  return {
    ...assessment,
    item: due,
    missed: due?.stops?.missedKm.map((at) => Math.round(toMiles(at) * 1e6) / 1e6),
    ahead: due?.stops?.aheadKm.map((at) => Math.round(toMiles(at) * 1e6) / 1e6),
  };
}

function recorded(on: string) {
  return {
    id: `record-${on}`,
    checkKindId: 'nuts',
    doneOn: day(on),
    outcome: 'pass' as const,
    byPersonId: null,
    lines: [],
    inspectedBy: null,
    proofOnTrailer: null,
    costCents: null,
  };
}

describe('scenario 11, wheel off', () => {
  it('before trip 2 it says to stop after 2 miles, at 10', () => {
    const before = torque('2025-06-04', {
      trips: trips.slice(0, 1).map((one) => ({ ...one, jobId: 'job-1' })),
      jobs: [job('2025-06-05', { distanceKm: miles(14) })],
    });
    expect(before.missed).toEqual([]);
    expect(before.ahead?.[0]).toBe(2);
    expect(before.item).toMatchObject({ state: 'due-soon', dueOn: '2025-06-05' });
  });

  it('before trip 3 it says to stop 3 miles in, where 25 is reached, and at 28, where 50 is', () => {
    const before = torque('2025-06-05', {
      trips: trips.slice(0, 2),
      jobs: [job('2025-06-06', { distanceKm: miles(31) })],
    });
    expect(before.missed).toEqual([10]);
    expect(before.ahead).toEqual([3, 28]);
  });

  it('at 53 miles three looks are missing, and it is not ready', () => {
    const after = torque('2025-06-06', { trips });
    expect(after.missed).toEqual([10, 25, 50]);
    expect(after.ahead).toEqual([]);
    expect(after.item).toMatchObject({ state: 'overdue', dueOn: '2025-06-05' });
    expect(after.readiness).not.toBe('ready');
    expect(after.flags).toMatchObject([{ rule: 'overdue-check', severity: 'limit', since: '2025-06-06' }]);
  });

  it('until one is recorded: one settles all three', () => {
    const after = torque('2025-06-07', { trips, checkRecords: [recorded('2025-06-06')] });
    expect(after.item?.stops).toBeNull();
    expect(after.item?.state).toBe('later');
    expect(after.readiness).toBe('ready');
  });

  it('a record at 9.5 miles counts as the first', () => {
    const after = torque('2025-06-05', {
      trips: [trip('2025-06-04', 9.5), trip('2025-06-05', 3)],
      checkRecords: [recorded('2025-06-04')],
    });
    expect(after.missed).toEqual([]);
    expect(after.ahead).toEqual([12.5, 37.5]);
  });

  it('a record at 8 miles does not', () => {
    const after = torque('2025-06-05', { trips: trips.slice(0, 2), checkRecords: [recorded('2025-06-04')] });
    expect(after.missed).toEqual([10]);
  });
});
