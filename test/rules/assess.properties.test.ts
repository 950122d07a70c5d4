import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/rules/assess.js';
import { day } from '../../src/rules/calendar/civil-date.js';
import { dayFromNumber, dayNumber, daysAfter } from '../../src/rules/calendar/day-number.js';
import type { TrailerFacts } from '../../src/rules/facts/trailer-facts.js';
import { DEFAULT_CHECK_KINDS } from '../../src/rules/inspection/default-check-kinds.js';
import { yardDaysFrom } from '../../src/rules/inspection/yard-days.js';
import { miles } from '../../src/rules/units/distance.js';
import { build, item, load } from './sample-facts.js';
import { done, facts, job, kind, machine, reading, trip } from './sample-trailer.js';

const TODAY = day('2025-06-16');
const onDay = (before: number) => dayFromNumber(dayNumber(TODAY) - before);

const checkKinds = [
  ...DEFAULT_CHECK_KINDS.map((one) => ({ ...one, id: `kind-${one.code}` })),
  kind('by-trips', [{ kind: 'trips', every: 7 }]),
];

const someTrip = fc
  .record({
    before: fc.integer({ min: 1, max: 500 }),
    days: fc.integer({ min: 1, max: 3 }),
    mi: fc.option(fc.integer({ min: 0, max: 400 })),
    pounds: fc.integer({ min: 0, max: 12_000 }),
    roads: fc.option(fc.subarray(['salt', 'gravel', 'water'] as const)),
    hired: fc.boolean(),
  })
  .map(({ before, days, mi, pounds, roads, hired }) =>
    trip(onDay(before), mi, {
      endedOn: onDay(Math.max(0, before - days + 1)),
      roads,
      jobId: hired ? `job-${before}` : null,
      load: load({ cargo: [item('machine', pounds, { machineId: 'loader' })] }),
    }),
  );
const someRecord = fc
  .record({
    kind: fc.constantFrom(...checkKinds.map(({ code }) => code)),
    before: fc.integer({ min: 0, max: 500 }),
    outcome: fc.constantFrom('pass', 'fail'),
  })
  .map(({ kind: code, before, outcome }) => done(code, onDay(before), { outcome, id: `${code}-${before}-${outcome}` }));
const someReading = fc
  .record({ before: fc.integer({ min: 0, max: 500 }), mi: fc.integer({ min: 0, max: 9_000 }) })
  .map(({ before, mi }) => reading(onDay(before), mi));
const someJob = fc
  .record({ ahead: fc.integer({ min: 0, max: 60 }), mi: fc.option(fc.integer({ min: 0, max: 900 })) })
  .map(({ ahead, mi }) => job(onDay(-ahead), { distanceKm: mi === null ? null : miles(mi) }));

const byId = { selector: ({ id }: { id: string }) => id };
const someFacts: fc.Arbitrary<TrailerFacts> = fc
  .record({
    trips: fc.uniqueArray(someTrip, { maxLength: 25, ...byId }),
    checkRecords: fc.uniqueArray(someRecord, { maxLength: 25, ...byId }),
    readings: fc.uniqueArray(someReading, { maxLength: 5, ...byId }),
    jobs: fc.uniqueArray(someJob, { maxLength: 4, ...byId }),
  })
  .map((lists) =>
    facts({
      ...lists,
      checkKinds,
      builds: [build({ id: 'b1' }), build({ id: 'b2', effectiveFrom: day('2025-02-01'), suspension: 'torsion' })],
      machines: [machine('loader', 9_920)],
    }),
  );

/** The same facts with each list in another order. */
function shuffled(all: TrailerFacts, seed: number): TrailerFacts {
  let state = seed;
  const next = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state;
  };
  const entries = Object.entries(all).map(([name, value]) => [
    name,
    Array.isArray(value)
      ? value
          .map((one) => [next(), one] as const)
          .sort((a, b) => a[0] - b[0])
          .map(([, one]) => one)
      : value,
  ]);
  return Object.fromEntries(entries) as TrailerFacts;
}

/** Fixed, so that a failure today is a failure tomorrow. */
const RUNS = { seed: 20_250_616, numRuns: 150 };

describe('assess', () => {
  it('gives the same answer twice, and leaves the facts as they were', () => {
    fc.assert(
      fc.property(someFacts, (one) => {
        const before = structuredClone(one);
        const first = assess(one, TODAY);
        expect(assess(one, TODAY)).toEqual(first);
        expect(one).toEqual(before);
      }),
      RUNS,
    );
  });

  it('does not depend on the order in which facts are handed over', () => {
    fc.assert(
      fc.property(someFacts, fc.nat(), (one, seed) => {
        expect(assess(shuffled(one, seed), TODAY)).toEqual(assess(one, TODAY));
      }),
      RUNS,
    );
  });

  it('is the same when kept as text and rebuilt from facts that were kept as text', () => {
    fc.assert(
      fc.property(someFacts, (one) => {
        const kept = JSON.parse(JSON.stringify(assess(one, TODAY)));
        const rebuilt = assess(JSON.parse(JSON.stringify(one)) as TrailerFacts, TODAY);
        expect(rebuilt).toEqual(kept);
      }),
      RUNS,
    );
  });

  it('says the same on every day before it wakes, but for the day itself and yard days gone by', () => {
    fc.assert(
      fc.property(someFacts, fc.double({ min: 0, max: 0.999, noNaN: true }), (one, part) => {
        const first = assess(one, TODAY);
        const days = first.wakeOn === null ? 400 : dayNumber(first.wakeOn) - dayNumber(TODAY);
        const later = onDay(-Math.floor(days * part));
        const read = (assessment: ReturnType<typeof assess>) => ({
          ...assessment,
          asOf: null,
          wakeOn: null,
          due: assessment.due.map((due) => ({ ...due, yardDays: yardDaysFrom(due.yardDays, daysAfter(later, 1)) })),
        });
        expect(read(assess(one, later))).toEqual(read(first));
      }),
      RUNS,
    );
  });

  it('has ranges in order, whose middle is the due date where use decides it', () => {
    fc.assert(
      fc.property(someFacts, (one) => {
        for (const { range, dueOn, trigger } of assess(one, TODAY).due) {
          if (range === null) continue;
          const dates = [range.p10, range.p50, range.p90].map((date) => date ?? '9999-12-31');
          expect(dates).toEqual(dates.toSorted());
          if (dueOn !== null && (trigger?.kind === 'distance' || trigger?.kind === 'trips'))
            expect(dueOn).toBe(range.p50);
        }
      }),
      RUNS,
    );
  });

  it('one more mile on the last trip never brings a check by distance later', () => {
    fc.assert(
      fc.property(someFacts, fc.integer({ min: 1, max: 500 }), (one, more) => {
        const last = one.trips.toSorted((a, b) => (a.endedOn < b.endedOn ? -1 : 1)).at(-1);
        if (last === undefined || last.distanceKm === null || one.readings.length > 0) return;
        const longer = { ...last, distanceKm: miles(last.distanceKm / miles(1) + more) };
        const usedBy = (all: TrailerFacts) =>
          new Map(assess(all, TODAY).due.map(({ code, used }) => [code, used?.kind === 'distance' ? used.usedKm : 0]));
        const before = usedBy(one);
        const after = usedBy({ ...one, trips: one.trips.map((each) => (each.id === last.id ? longer : each)) });
        for (const [code, usedKm] of before) expect(after.get(code) ?? 0).toBeGreaterThanOrEqual(usedKm - 1e-6);
      }),
      RUNS,
    );
  });
});
