import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { dayFromNumber, dayNumber } from '../../../src/rules/calendar/day-number.js';
import type { CheckKind } from '../../../src/rules/facts/check.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import { type Due, dueCheck, dueChecks } from '../../../src/rules/inspection/due.js';
import { miles, toMiles } from '../../../src/rules/units/distance.js';
import { lb } from '../../../src/rules/units/mass.js';
import { build, item, load, tire } from '../sample-facts.js';
import { done, facts, job, kind, reading, trailer, trip } from '../sample-trailer.js';

function due(check: CheckKind, asOf: string, more: Partial<TrailerFacts>): Due {
  return dueCheck(check, facts({ checkKinds: [check], ...more }), day(asOf));
}

const YEARLY = { kind: 'months', every: 12, toMonthEnd: false } as const;
const EVERY_12000 = { kind: 'distance', everyKm: miles(12_000) } as const;

describe('a check by days, months, trips', () => {
  it('the anniversary is the last good day, and the day after it is overdue', () => {
    const annual = kind('annual', [YEARLY]);
    const records = { checkRecords: [done('annual', '2025-03-14')] };
    expect(due(annual, '2026-03-14', records)).toMatchObject({ dueOn: '2026-03-14', state: 'due-soon' });
    expect(due(annual, '2026-03-15', records)).toMatchObject({ dueOn: '2026-03-14', state: 'overdue' });
  });

  it('is due soon from its lead time on, not a day sooner', () => {
    const check = kind('look', [{ kind: 'days', every: 90 }], { leadDays: 14 });
    const records = { checkRecords: [done('look', '2025-01-01')] };
    expect(due(check, '2025-03-17', records)).toMatchObject({ dueOn: '2025-04-01', state: 'later' });
    expect(due(check, '2025-03-18', records).state).toBe('due-soon');
  });

  it('with no record to count from is wanted now', () => {
    expect(due(kind('look', [YEARLY]), '2025-05-01', {})).toMatchObject({
      state: 'never-done',
      dueOn: null,
      unknown: 'no-last-done',
    });
  });

  it('counts only trips that started after the day it was done, and booked jobs as trips to come', () => {
    const check = kind('look', [{ kind: 'trips', every: 3 }]);
    const more = {
      checkRecords: [done('look', '2025-05-02')],
      // All booked ahead, so that there is no other use to come but what is booked.
      trips: ['01', '02', '03'].map((on) => trip(`2025-05-${on}`, 5, { jobId: `job-${on}` })),
      jobs: [job('2025-05-10'), job('2025-05-12'), job('2025-05-14')],
    };
    expect(due(check, '2025-05-04', more)).toMatchObject({
      dueOn: '2025-05-12',
      used: { kind: 'trips', used: 1, limit: 3 },
      firstJobAtRisk: { jobId: 'job-2025-05-14' },
    });
  });

  it('a fail makes it due at once, until a pass', () => {
    const check = kind('look', [YEARLY]);
    const failed = [done('look', '2025-01-01'), done('look', '2025-05-01', { id: 'f', outcome: 'fail' })];
    expect(due(check, '2025-05-01', { checkRecords: failed })).toMatchObject({ state: 'overdue', failed: true });
    const mended = [...failed, done('look', '2025-05-01', { id: 'p' })];
    expect(due(check, '2025-05-02', { checkRecords: mended })).toMatchObject({ dueOn: '2026-05-01', failed: false });
  });

  it('a record of a day that has not come yet is not known yet', () => {
    const records = { checkRecords: [done('look', '2025-06-01')] };
    expect(due(kind('look', [YEARLY]), '2025-05-01', records).state).toBe('never-done');
  });
});

describe('a check by distance', () => {
  const repack = kind('repack', [EVERY_12000, YEARLY]);

  it('the earliest trigger wins and says which: 3,100 of 12,000 miles, so the date', () => {
    const answer = due(repack, '2025-05-12', {
      checkRecords: [done('repack', '2024-06-02')],
      readings: [reading('2024-06-02', 20_000), reading('2025-05-10', 23_100)],
    });
    expect(answer).toMatchObject({ dueOn: '2025-06-02', trigger: YEARLY });
  });

  it('the miles win when they run out first', () => {
    const answer = due(repack, '2025-05-12', {
      checkRecords: [done('repack', '2025-01-01')],
      readings: [reading('2025-01-01', 20_000), reading('2025-05-01', 31_500)],
    });
    expect(answer.trigger).toEqual(EVERY_12000);
    expect(answer.used?.kind === 'distance' && toMiles(answer.used.usedKm)).toBeCloseTo(11_500, 6);
    // 11,500 mi in 120 days is 95.83 a day; the 500 left take 6 days.
    expect(answer.dueOn).toBe('2025-05-07');
  });

  it('a booked job that would cross the limit on its way shows before the job', () => {
    const crossing = job('2025-06-10', { endsOn: day('2025-06-14'), distanceKm: miles(2_000) });
    const answer = due(kind('repack', [EVERY_12000]), '2025-05-12', {
      checkRecords: [done('repack', '2025-05-01')],
      trips: [trip('2025-05-02', 10_900, { jobId: 'job-before' })],
      jobs: [crossing],
    });
    expect(answer.dueOn).toBe('2025-06-09');
    expect(answer.firstJobAtRisk?.jobId).toBe(crossing.id);
  });

  it('says that it cannot say when the trailer went out and nobody said how far', () => {
    const answer = due(kind('repack', [EVERY_12000]), '2025-05-12', {
      checkRecords: [done('repack', '2025-05-01')],
      trips: [trip('2025-05-05', null)],
    });
    expect(answer).toMatchObject({ state: 'unknown', unknown: 'no-distance-known', dueOn: null });
  });

  it('a mile on gravel counts twice, one on a road nobody spoke of once', () => {
    const used = (roads: 'gravel' | null) => {
      const answer = due(kind('repack', [EVERY_12000]), '2025-05-12', {
        checkRecords: [done('repack', '2025-05-01')],
        trips: [trip('2025-05-05', 400, { roads: roads === null ? null : [roads] })],
      });
      return answer.used?.kind === 'distance' ? toMiles(answer.used.usedKm) : null;
    };
    expect(used('gravel')).toBeCloseTo(800, 6);
    expect(used(null)).toBeCloseTo(400, 6);
  });

  it('a mile with a load over the plate counts twice', () => {
    const heavy = load({ cargo: [item('machine', 10_200)] });
    const answer = due(kind('repack', [EVERY_12000]), '2025-05-12', {
      checkRecords: [done('repack', '2025-05-01')],
      trips: [trip('2025-05-05', 400, { load: heavy })],
    });
    expect(answer.used?.kind === 'distance' && toMiles(answer.used.harshKm)).toBeCloseTo(400, 6);
  });
});

describe('a check after an event', () => {
  const torque = kind('torque', [{ kind: 'event', event: 'wheel-off', atKm: [miles(10), miles(25), miles(50)] }], {
    work: { hours: 0.25, place: 'road', parts: ['torque wrench'], bundle: null, together: [] },
  });
  // Scenario 11 of the acceptance list: tire changed on a Tuesday, then trips of 8, 14 and 31 miles.
  const changed = { parts: [tire('1L', {}, day('2025-06-03'))] };
  const trips = [trip('2025-06-04', 8), trip('2025-06-05', 14), trip('2025-06-06', 31)];

  it('before the second trip 8 of 10 miles are used', () => {
    const answer = due(torque, '2025-06-04', { ...changed, trips: trips.slice(0, 1) });
    expect(answer.used?.kind === 'distance' && toMiles(answer.used.limitKm)).toBeCloseTo(10, 9);
    expect(answer.used?.kind === 'distance' && toMiles(answer.used.usedKm)).toBeCloseTo(8, 9);
  });

  it('a booked trip that passes 10 miles brings it due on that day, since it is done on the road', () => {
    const answer = due(torque, '2025-06-04', {
      ...changed,
      trips: [trip('2025-06-04', 8, { jobId: 'job-before' })],
      jobs: [job('2025-06-10', { distanceKm: miles(14) })],
    });
    expect(answer.dueOn).toBe('2025-06-10');
  });

  it('a shop check at a distance after an event shows before the booked job that would cross it', () => {
    const adjust = kind('adjust', [{ kind: 'event', event: 'brakes-new', atKm: [miles(200)] }], {
      work: { hours: 1, place: 'shop', parts: [], bundle: null, together: [] },
    });
    const brakes = { ...tire('1L', {}, day('2025-06-03')), id: 'brakes', kind: 'brake-set' as const, tire: null };
    const answer = due(adjust, '2025-06-04', {
      parts: [brakes],
      trips: [trip('2025-06-04', 8, { jobId: 'job-before' })],
      jobs: [job('2025-06-10', { endsOn: day('2025-06-13'), distanceKm: miles(300) })],
    });
    expect(answer).toMatchObject({ dueOn: '2025-06-09', firstJobAtRisk: { jobId: 'job-2025-06-10' } });
  });

  it('a trailer that stays in the yard is not late for it, whatever its usual use', () => {
    const before = Array.from({ length: 20 }, (_, place) => trip(`2025-05-${10 + place}`, 60));
    const answer = due(torque, '2025-06-20', { ...changed, trips: before });
    expect(answer).toMatchObject({ state: 'later', dueOn: null, used: { usedKm: 0 } });
  });

  it('at 53 miles with no record it is overdue since the day 10 was passed, and one record settles all three', () => {
    expect(due(torque, '2025-06-06', { ...changed, trips })).toMatchObject({ state: 'overdue', dueOn: '2025-06-05' });
    const recorded = { ...changed, trips, checkRecords: [done('torque', '2025-06-06')] };
    expect(due(torque, '2025-06-07', recorded)).toMatchObject({ state: 'later', dueOn: null });
  });

  it('a record at 9.5 miles counts as the one at 10, and the next is at 25', () => {
    const answer = due(torque, '2025-06-05', {
      ...changed,
      trips: [trip('2025-06-04', 9.5), trip('2025-06-05', 3)],
      checkRecords: [done('torque', '2025-06-04')],
    });
    expect(answer.used?.kind === 'distance' && toMiles(answer.used.limitKm)).toBeCloseTo(25, 9);
  });

  it('the record of the day the wheel went on is not the one at 10 miles', () => {
    const answer = due(torque, '2025-06-05', {
      ...changed,
      trips: trips.slice(0, 2),
      checkRecords: [done('torque', '2025-06-03')],
    });
    expect(answer).toMatchObject({ dueOn: '2025-06-05' });
  });

  it('work behind a hub takes the wheels off too', () => {
    const repack = kind('repack', [YEARLY], {
      work: { hours: 2, place: 'shop', parts: [], bundle: 'hub', together: [] },
    });
    const answer = dueCheck(
      torque,
      facts({ checkKinds: [torque, repack], checkRecords: [done('repack', '2025-06-03')], trips }),
      day('2025-06-06'),
    );
    expect(answer.dueOn).toBe('2025-06-05');
  });

  it('going through water asks for a repack at once', () => {
    const repack = kind('repack', [{ kind: 'event', event: 'submerged', atKm: [] }, YEARLY]);
    const more = {
      checkRecords: [done('repack', '2025-01-10')],
      trips: [trip('2025-04-02', 20, { roads: ['water'] })],
    };
    expect(due(repack, '2025-04-03', more)).toMatchObject({ state: 'overdue', dueOn: '2025-04-02' });
    const redone = { ...more, checkRecords: [...more.checkRecords, done('repack', '2025-04-05')] };
    expect(due(repack, '2025-04-06', redone)).toMatchObject({ dueOn: '2026-04-05' });
  });

  it('a load over a rating asks for a look, judged against the build of its day', () => {
    const look = kind('look', [{ kind: 'event', event: 'overloaded', atKm: [] }, YEARLY]);
    const heavier = build({
      id: 'b2',
      effectiveFrom: day('2025-05-01'),
      plate: { gvwrKg: lb(15_400), coldPressureKpa: null },
    });
    const more = (on: string) => ({
      builds: [build(), heavier],
      checkRecords: [done('look', '2025-01-10')],
      trips: [trip(on, 20, { load: load({ cargo: [item('machine', 10_200)] }) })],
    });
    expect(due(look, '2025-04-03', more('2025-04-02')).state).toBe('overdue');
    expect(due(look, '2025-06-03', more('2025-06-02'))).toMatchObject({ dueOn: '2026-01-10' });
  });

  it('new brakes are adjusted 200 miles later', () => {
    const adjust = kind('adjust', [{ kind: 'event', event: 'brakes-new', atKm: [miles(200)] }]);
    const brakes = {
      id: 'brakes',
      kind: 'brake-set',
      position: '1L',
      fittedOn: day('2025-06-01'),
      removedOn: null,
      removedFor: null,
      tire: null,
      bearings: null,
      costCents: null,
    } as const;
    const answer = due(adjust, '2025-06-20', {
      parts: [brakes],
      trips: [trip('2025-06-05', 150), trip('2025-06-12', 90)],
    });
    expect(answer).toMatchObject({ state: 'overdue', dueOn: '2025-06-12' });
  });
});

describe('a check over salt', () => {
  const brakes = kind('brakes', [
    { kind: 'months', every: 6, toMonthEnd: false },
    { kind: 'event', event: 'salt-half-time', atKm: [] },
  ]);
  const dueOn = (...salted: string[]) =>
    due(brakes, '2025-06-01', {
      checkRecords: [done('brakes', '2025-01-10')],
      trips: salted.map((on) => trip(on, 20, { roads: ['salt'] })),
    }).dueOn;

  // 10 January to 10 July 2025 is 181 days; half of them, rounded down, 90: 10 April.
  it('is due at half its time once the trailer has been over salt', () => {
    expect(dueOn('2025-02-03')).toBe('2025-04-10');
  });

  it('but not before that trip, and without salt at its full time', () => {
    expect(dueOn('2025-05-03')).toBe('2025-05-03');
    expect(dueOn()).toBe('2025-07-10');
    expect(dueOn('2025-01-09')).toBe('2025-07-10');
  });
});

describe('a check on days that not every month has', () => {
  const every = (months: number, from: string) =>
    due(kind('look', [{ kind: 'months', every: months, toMonthEnd: false }]), from, {
      checkRecords: [done('look', from)],
    }).dueOn;

  // Plain calendar arithmetic: a day the month lacks becomes its last, as 49 CFR's months are commonly counted.
  it.each([
    [1, '2025-01-31', '2025-02-28'],
    [1, '2024-01-31', '2024-02-29'],
    [12, '2024-02-29', '2025-02-28'],
    [48, '2024-02-29', '2028-02-29'],
    [12, '2023-02-28', '2024-02-28'],
    [3, '2024-11-30', '2025-02-28'],
    [6, '2025-08-31', '2026-02-28'],
    [1, '2025-12-31', '2026-01-31'],
    [12, '2099-03-01', '2100-03-01'],
    [12, '2096-02-29', '2097-02-28'],
  ])('%d months after %s is %s', (months, from, expected) => {
    expect(every(months, from)).toBe(expected);
  });

  it('a number of days goes over leap days and the change of clocks as over any other', () => {
    const days = (count: number, from: string) =>
      due(kind('look', [{ kind: 'days', every: count }]), from, { checkRecords: [done('look', from)] }).dueOn;
    expect(days(1, '2024-02-28')).toBe('2024-02-29');
    expect(days(365, '2023-03-01')).toBe('2024-02-29');
    expect(days(1, '2025-03-08')).toBe('2025-03-09');
    expect(days(1, '2025-11-01')).toBe('2025-11-02');
  });
});

describe('whichever comes first', () => {
  const all = kind('look', [
    { kind: 'days', every: 200 },
    YEARLY,
    { kind: 'distance', everyKm: miles(1_000) },
    { kind: 'trips', every: 5 },
    { kind: 'event', event: 'submerged', atKm: [] },
    { kind: 'fixed-date', date: 'registration' },
  ]);
  const base = {
    checkRecords: [done('look', '2025-01-01')],
    trailer: trailer({ registrationExpiresOn: day('2025-12-31') }),
  };
  const triggerOf = (more: Partial<TrailerFacts>) => due(all, '2025-06-01', { ...base, ...more }).trigger?.kind;

  it('days, papers, miles, trips or an event', () => {
    expect(triggerOf({})).toBe('days');
    expect(triggerOf({ trailer: trailer({ registrationExpiresOn: day('2025-06-30') }) })).toBe('fixed-date');
    expect(triggerOf({ trips: [trip('2025-03-01', 1_100)] })).toBe('distance');
    expect(triggerOf({ trips: [1, 2, 3, 4, 5].map((of) => trip(`2025-03-0${of}`, 5)) })).toBe('trips');
    expect(triggerOf({ trips: [trip('2025-03-01', 10, { roads: ['water'] })] })).toBe('event');
  });
});

describe('a range', () => {
  const weekly = Array.from({ length: 20 }, (_, week) =>
    trip(dayFromNumber(dayNumber(day('2025-01-06')) + 7 * week), 50),
  );
  const byMiles = kind('look', [{ kind: 'distance', everyKm: miles(2_000) }]);
  const more = { trips: weekly, checkRecords: [done('look', '2025-01-01')] };

  it('stands around the due date, which is as likely too early as too late', () => {
    const { range, dueOn } = due(byMiles, '2025-05-20', more);
    expect(range?.p50).toBe(dueOn);
    expect((range?.p10 ?? '') < (dueOn ?? '') && (dueOn ?? '') < (range?.p90 ?? '')).toBe(true);
    // 1,000 mi left at 50 a week are 20 weeks, from 19 May on: 6 October, give or take a haul.
    expect(Math.abs(dayNumber(dueOn ?? day('2000-01-01')) - dayNumber(day('2025-10-06')))).toBeLessThan(14);
  });

  it('ends where the calendar takes over', () => {
    const both = kind('look', [
      { kind: 'distance', everyKm: miles(2_000) },
      { kind: 'days', every: 270 },
    ]);
    const { range } = due(both, '2025-05-20', more);
    const alone = due(byMiles, '2025-05-20', more).range;
    expect(range?.p10).toBe(alone?.p10);
    expect(range?.p90).toBe('2025-09-28');
  });

  it('is none for a check by the calendar alone', () => {
    expect(due(kind('look', [YEARLY]), '2025-05-20', more).range).toBeNull();
  });

  it('of trips goes by how often it went out', () => {
    const { range, used } = due(kind('look', [{ kind: 'trips', every: 30 }]), '2025-05-20', more);
    expect(used).toEqual({ kind: 'trips', used: 20, limit: 30 });
    // Ten more at one a week from 19 May on: 28 July, give or take one.
    expect(Math.abs(dayNumber(range?.p50 ?? day('2000-01-01')) - dayNumber(day('2025-07-28')))).toBeLessThan(10);
  });

  it('goes on with the usual hires past the last one booked', () => {
    const hires = weekly.map((one, week) => ({ ...one, jobId: `job-${week}` }));
    const answer = due(byMiles, '2025-05-20', {
      ...more,
      trips: hires,
      jobs: [job('2025-05-26', { distanceKm: miles(50) })],
    });
    expect(answer.dueOn).not.toBeNull();
    expect(Math.abs(dayNumber(answer.dueOn ?? day('2000-01-01')) - dayNumber(day('2025-10-06')))).toBeLessThan(14);
  });
});

describe('a check after standing', () => {
  const firstUse = kind('first-use', [{ kind: 'event', event: 'idle', atKm: [] }], { leadDays: 1 });
  // Scenario 15 of the acceptance list: last moved 2 October 2024, asked on 18 April 2025, 198 days later.
  const stood = { trips: [trip('2024-10-02', 30, { roads: null })] };

  it('198 days without a trip ask for a look before the next use, whenever that is', () => {
    expect(due(firstUse, '2025-04-18', stood)).toMatchObject({ state: 'due-soon', dueOn: null });
  });

  it('with a job booked it is wanted the day before', () => {
    const more = { ...stood, jobs: [job('2025-04-25')] };
    expect(due(firstUse, '2025-04-18', more)).toMatchObject({ dueOn: '2025-04-24', state: 'later' });
    expect(due(firstUse, '2025-04-24', more).state).toBe('due-soon');
  });

  it('once done it rests until it has stood again', () => {
    const more = { ...stood, checkRecords: [done('first-use', '2025-04-17')] };
    expect(due(firstUse, '2025-04-18', more)).toMatchObject({ state: 'later', dueOn: null });
    expect(due(firstUse, '2025-07-16', more).state).toBe('due-soon');
  });

  it('a trailer in use is not asked', () => {
    expect(due(firstUse, '2025-04-18', { trips: [trip('2025-04-01', 30)] }).state).toBe('later');
  });

  it('the repack of 5 May 2024 is due in 17 days though it went 61 miles', () => {
    const repack = kind('repack', [EVERY_12000, YEARLY], { leadDays: 24 });
    const more = {
      checkRecords: [done('repack', '2024-05-05')],
      trips: [trip('2024-06-01', 31), trip('2024-10-02', 30, { roads: null })],
    };
    expect(due(repack, '2025-04-18', more)).toMatchObject({ dueOn: '2025-05-05', trigger: YEARLY, state: 'due-soon' });
  });
});

describe('a check by a fixed date', () => {
  const registration = kind('registration', [{ kind: 'fixed-date', date: 'registration' }], { leadDays: 30 });

  it('follows the date on the papers', () => {
    const papers = { trailer: trailer({ registrationExpiresOn: day('2025-07-31') }) };
    expect(due(registration, '2025-07-01', papers)).toMatchObject({ dueOn: '2025-07-31', state: 'due-soon' });
  });

  it('without one it says which date is missing', () => {
    expect(due(registration, '2025-07-01', {})).toMatchObject({ state: 'unknown', unknown: 'no-date-set' });
  });
});

describe('the list of what is due', () => {
  it('has the overdue first, then what was never done, then by day', () => {
    const kinds = ['a', 'b', 'c', 'd'].map((code) => kind(code, [YEARLY]));
    const list = dueChecks(
      facts({
        checkKinds: kinds,
        checkRecords: [done('a', '2025-03-01'), done('b', '2024-09-01'), done('d', '2024-01-05')],
      }),
      day('2025-06-01'),
    );
    expect(list.map(({ code }) => code)).toEqual(['d', 'c', 'b', 'a']);
  });

  it('leaves out checks that are not for this build, and those without a trigger', () => {
    const springs = kind('springs', [YEARLY], {
      appliesTo: { ...kind('x', []).appliesTo, suspensions: ['torsion'] },
    });
    expect(dueChecks(facts({ checkKinds: [springs, kind('pre-trip', [])] }), day('2025-06-01'))).toEqual([]);
  });
});
