import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Assessment, assess } from '../../src/rules/assess.js';
import { type CivilDate, day } from '../../src/rules/calendar/civil-date.js';
import { dayFromNumber, dayNumber, daysAfter } from '../../src/rules/calendar/day-number.js';
import type { CheckRecord } from '../../src/rules/facts/check.js';
import type { Part } from '../../src/rules/facts/part.js';
import type { TrailerFacts } from '../../src/rules/facts/trailer-facts.js';
import type { Job, MeterReading, Trip } from '../../src/rules/facts/use.js';
import { DEFAULT_CHECK_KINDS } from '../../src/rules/inspection/default-check-kinds.js';
import { yardDaysFrom } from '../../src/rules/inspection/yard-days.js';
import { miles } from '../../src/rules/units/distance.js';
import { lb, toLb } from '../../src/rules/units/mass.js';
import { axle, build, item, load, ticket, tire, tires } from './sample-facts.js';
import { done, facts, job, kind, machine, reading, trailer, trip } from './sample-trailer.js';

const flagOf = (assessment: Assessment, rule: string) => assessment.flags.find((flag) => flag.rule === rule);

describe('scenario 1, outgrown', () => {
  const old = machine('old-loader', 8_000);
  const young = machine('new-loader', 9_920, { replacesMachineId: old.id });
  const trips = ['2025-03-02', '2025-04-02', '2025-05-02'].map((on) =>
    trip(on, 40, {
      machineId: old.id,
      load: load({ cargo: [item('old loader', 8_000, { machineId: old.id }), item('chains', 160)] }),
    }),
  );
  const heavy = load({
    cargo: [
      item('loader', 9_920, { machineId: young.id }),
      item('grapple', 1_050),
      item('bucket over standard', 310),
      item('chains', 160),
      item('mud', 200, { basis: 'assumed' }),
    ],
  });

  it('the flag names the new machine and the one it replaced: 11,640 on a payload of 10,100', () => {
    const jobs = [job('2025-06-20', { machineId: young.id, load: heavy })];
    const flag = flagOf(assess(facts({ trips, jobs, machines: [old, young] }), day('2025-06-16')), 'outgrown');
    expect(flag).toMatchObject({
      severity: 'limit',
      evidence: { machineId: 'new-loader', replacedMachineId: 'old-loader' },
    });
    const evidence = flag?.evidence.kind === 'outgrown' ? flag.evidence : null;
    expect(toLb(evidence?.payloadKg ?? lb(0))).toBeCloseTo(10_100, 6);
    expect(toLb(evidence?.overKg ?? lb(0))).toBeCloseTo(1_540, 6);
  });

  it('before any job is booked, what rode along with the old machine is taken to ride along with the new', () => {
    const extras = trips.map((one) => ({ ...one, load: load({ cargo: [...one.load.cargo, item('grapple', 1_050)] }) }));
    const flag = flagOf(assess(facts({ trips: extras, machines: [old, young] }), day('2025-06-16')), 'outgrown');
    expect(flag?.evidence.kind === 'outgrown' && toLb(flag.evidence.machineKg)).toBeCloseTo(9_920 + 160 + 1_050, 6);
  });

  it('the old machine fits, so as long as it is the usual one nothing is said', () => {
    expect(flagOf(assess(facts({ trips, machines: [old] }), day('2025-06-16')), 'outgrown')).toBeUndefined();
  });

  it('a machine weighed at last counts at what it weighs, whatever earlier hauls were entered with', () => {
    const weighed = machine('old-loader', 10_500, { basis: 'weighed' });
    const flag = flagOf(assess(facts({ trips, machines: [weighed] }), day('2025-06-16')), 'outgrown');
    expect(flag?.evidence.kind === 'outgrown' && toLb(flag.evidence.machineKg)).toBeCloseTo(10_500 + 160, 6);
    const brochure = machine('old-loader', 10_500, { basis: 'stated' });
    expect(flagOf(assess(facts({ trips, machines: [brochure] }), day('2025-06-16')), 'outgrown')).toBeUndefined();
  });

  it('once hauled it is over the plate and drifts out of its class', () => {
    const taken = [...trips, trip('2025-06-10', 40, { machineId: young.id, load: heavy })];
    const assessment = assess(facts({ trips: taken, machines: [old, young] }), day('2025-06-16'));
    expect(flagOf(assessment, 'over-plate')).toMatchObject({ severity: 'limit', since: '2025-06-10' });
    expect(flagOf(assessment, 'class-drift')).toMatchObject({
      evidence: { over90: 1, over100: 1, machineId: 'new-loader' },
    });
  });
});

describe('scenario 7, the annual inspection', () => {
  const annual = kind('annual', [{ kind: 'months', every: 12, toMonthEnd: true }], {
    leadDays: 14,
    blocks: 'commercial-jobs',
    proof: { what: 'report or decal', keepMonths: 14 },
  });
  const checkRecords = [done('annual', '2025-03-14', { proofOnTrailer: false })];
  const passed = facts({ checkKinds: [annual], checkRecords });

  it('warns 14 days before 14 March 2026', () => {
    expect(assess(passed, day('2026-02-27')).due[0]?.state).toBe('later');
    expect(assess(passed, day('2026-02-28')).due[0]?.state).toBe('due-soon');
    expect(assess(passed, day('2025-12-01')).wakeOn).toBe('2026-02-28');
  });

  it('a missing decal is its own item though the report is in date', () => {
    const assessment = assess(passed, day('2025-06-01'));
    expect(assessment.due[0]?.state).toBe('later');
    expect(flagOf(assessment, 'missing-proof')).toMatchObject({ severity: 'limit', since: '2025-03-14' });
  });

  it('where nobody looked for it, that is unknown and no flag', () => {
    const unseen = facts({ checkKinds: [annual], checkRecords: [done('annual', '2025-03-14')] });
    const assessment = assess(unseen, day('2025-06-01'));
    expect(flagOf(assessment, 'missing-proof')).toBeUndefined();
    expect(assessment.unknowns).toContainEqual({ lacks: 'proof-seen', stops: 'proof' });
  });

  it('expired, it is flagged with its last good day', () => {
    expect(flagOf(assess(passed, day('2026-04-03')), 'overdue-check')).toMatchObject({
      severity: 'limit',
      since: '2026-03-15',
      evidence: { dueOn: '2026-03-14' },
    });
  });
});

describe('scenario 8, date codes', () => {
  it('on 20 November 2025 tires of 1519 are 6 years 7 months, a spare of 3216 is 9 years 3 months', () => {
    const parts = [...tires(2, { dateCode: '1519' }), tire('spare', { dateCode: '3216' })];
    const flag = flagOf(assess(facts({ parts }), day('2025-11-20')), 'tire-age');
    expect(flag?.evidence).toMatchObject({
      limitYears: 6,
      tires: [
        { position: '1L', years: 6, months: 7 },
        { position: '1R', years: 6, months: 7 },
        { position: '2L', years: 6, months: 7 },
        { position: '2R', years: 6, months: 7 },
        { position: 'spare', years: 9, months: 3 },
      ],
    });
  });
});

describe('scenario 12, what is due', () => {
  const repack = kind(
    'repack',
    [
      { kind: 'months', every: 12, toMonthEnd: false },
      { kind: 'distance', everyKm: miles(12_000) },
    ],
    { leadDays: 24 },
  );
  const jobs = [job('2025-05-20'), job('2025-05-28'), job('2025-06-09')];
  const readings = [reading('2024-06-02', 10_000), reading('2025-05-11', 13_100)];
  const yard = facts({ checkKinds: [repack], checkRecords: [done('repack', '2024-06-02')], jobs, readings });

  it('is 2 June by date, the job of 9 June is the first at risk, and there are three runs of yard days', () => {
    expect(assess(yard, day('2025-05-12')).due[0]).toMatchObject({
      dueOn: '2025-06-02',
      trigger: { kind: 'months' },
      firstJobAtRisk: { jobId: 'job-2025-06-09', startsOn: '2025-06-09' },
      yardDays: [
        { from: '2025-05-13', to: '2025-05-19' },
        { from: '2025-05-21', to: '2025-05-27' },
        { from: '2025-05-29', to: '2025-06-02' },
      ],
    });
  });

  it('the day stays when the job of 9 June is cancelled', () => {
    const cancelled = { ...yard, jobs: [...jobs.slice(0, 2), job('2025-06-09', { state: 'cancelled' })] };
    expect(assess(cancelled, day('2025-05-12')).due[0]).toMatchObject({ dueOn: '2025-06-02', firstJobAtRisk: null });
  });

  it('done on 23 May it is due on 23 May 2026', () => {
    const redone = { ...yard, checkRecords: [...yard.checkRecords, done('repack', '2025-05-23')] };
    expect(assess(redone, day('2025-05-24')).due[0]).toMatchObject({ dueOn: '2026-05-23', lastDoneOn: '2025-05-23' });
  });
});

describe('flags', () => {
  it('a trip is judged against the build of its day', () => {
    const stronger = build({
      id: 'b2',
      effectiveFrom: day('2025-05-01'),
      plate: { gvwrKg: lb(15_400), coldPressureKpa: null },
      axles: [axle(1, 8_000), axle(2, 8_000)],
    });
    const heavy = load({ cargo: [item('machine', 10_200)] });
    const at = (on: string) =>
      flagOf(
        assess(
          facts({ builds: [build(), stronger], parts: [], trips: [trip(on, 10, { load: heavy })] }),
          day('2025-06-01'),
        ),
        'over-plate',
      );
    expect(at('2025-04-20')).toBeDefined();
    expect(at('2025-05-20')).toBeUndefined();
  });

  it('an overload of a quarter ago no longer speaks of the present', () => {
    const over = facts({ trips: [trip('2025-01-10', 10, { load: load({ cargo: [item('machine', 10_200)] }) })] });
    expect(flagOf(assess(over, day('2025-04-10')), 'over-plate')).toBeDefined();
    expect(flagOf(assess(over, day('2025-04-11')), 'over-plate')).toBeUndefined();
  });

  it('four of ten loads above 90 % of payload are drift, three are not', () => {
    const trips = (heavy: number) =>
      Array.from({ length: 10 }, (_, place) =>
        trip(daysAfter(day('2025-05-01'), place), 10, {
          load: load({ cargo: [item('machine', place < heavy ? 9_500 : 5_000)] }),
        }),
      );
    expect(flagOf(assess(facts({ trips: trips(3) }), day('2025-06-01')), 'class-drift')).toBeUndefined();
    expect(flagOf(assess(facts({ trips: trips(4) }), day('2025-06-01')), 'class-drift')).toMatchObject({
      severity: 'watch',
      since: '2025-05-01',
      evidence: { trips: 10, over90: 4, over100: 0, ownClass: 'medium', looksLike: 'heavy' },
    });
  });

  it('a tail-heavy ticket is watched, with its share', () => {
    const trips = [trip('2025-05-20', 10, { load: load({ scale: ticket({ gross: 11_000, tongue: 640 }) }) })];
    expect(flagOf(assess(facts({ trips }), day('2025-06-01')), 'tongue-share')).toMatchObject({
      severity: 'watch',
      evidence: { share: expect.closeTo(0.0582, 4), low: 0.1 },
    });
  });

  it('a hold stops the trailer until it is lifted', () => {
    const hold = { id: 'h', openedOn: day('2025-05-10'), reason: 'ramp bent', openedByName: 'Luis', liftedOn: null };
    const held = facts({ holds: [hold] });
    expect(assess(held, day('2025-05-12'))).toMatchObject({
      readiness: 'down',
      flags: [{ key: 'on-hold:h', severity: 'stop' }],
    });
    const lifted = facts({ holds: [{ ...hold, liftedOn: day('2025-05-12') }] });
    expect(assess(lifted, day('2025-05-12')).readiness).toBe('ready');
    expect(assess(lifted, day('2025-05-11')).readiness).toBe('down');
  });

  it('a failed safety check that stops every job stops the trailer', () => {
    const brakes = kind('brakes', [{ kind: 'months', every: 6, toMonthEnd: false }], {
      safety: true,
      blocks: 'all-jobs',
    });
    const failed = facts({ checkKinds: [brakes], checkRecords: [done('brakes', '2025-05-10', { outcome: 'fail' })] });
    expect(assess(failed, day('2025-05-10'))).toMatchObject({ readiness: 'down', flags: [{ severity: 'stop' }] });
  });

  it('a trailer that was sold asks for nothing', () => {
    const sold = facts({ trailer: trailer({ status: 'sold' }), parts: tires(2, { dateCode: '1510' }) });
    expect(assess(sold, day('2025-05-12'))).toMatchObject({ readiness: 'gone', due: [], flags: [] });
  });
});

// A yard's two years in a few numbers, for the properties below.

const START = dayNumber(day('2024-01-01'));
const SPAN = 600;
const anyDay = fc.integer({ min: 0, max: SPAN }).map((days) => dayFromNumber(START + days));
const KINDS = DEFAULT_CHECK_KINDS.map((one) => ({ ...one, id: `kind-${one.code}` }));

const anyTrip: fc.Arbitrary<Trip> = fc
  .record({
    id: fc.uuid(),
    on: anyDay,
    days: fc.integer({ min: 0, max: 3 }),
    mi: fc.option(fc.integer({ min: 1, max: 900 })),
    pounds: fc.integer({ min: 2_000, max: 12_000 }),
    tongue: fc.option(fc.integer({ min: 300, max: 2_600 })),
    roads: fc.constantFrom(null, [], ['salt'] as const, ['gravel'] as const, ['water'] as const),
    jobId: fc.constantFrom(null, 'job-a', 'job-b'),
    machineId: fc.constantFrom(null, 'm1', 'm2'),
  })
  .map(({ id, on, days, mi, pounds, tongue, roads, jobId, machineId }) => ({
    id,
    startedOn: on,
    endedOn: daysAfter(on, days),
    distanceKm: mi === null ? null : miles(mi),
    machineId,
    load: load({
      cargo: [item('machine', pounds, { machineId })],
      scale: tongue === null ? null : ticket({ gross: pounds + 3_900, tongue }),
    }),
    roads,
    jobId,
  }));

const anyJob: fc.Arbitrary<Job> = fc
  .record({
    id: fc.constantFrom('job-a', 'job-b', 'job-c', 'job-d'),
    on: anyDay,
    days: fc.integer({ min: 0, max: 5 }),
    mi: fc.option(fc.integer({ min: 5, max: 2_000 })),
  })
  .map(({ id, on, days, mi }) =>
    job(on, { id, endsOn: daysAfter(on, days), distanceKm: mi === null ? null : miles(mi), machineId: 'm2' }),
  );

const anyRecord: fc.Arbitrary<CheckRecord> = fc
  .record({
    id: fc.uuid(),
    on: anyDay,
    of: fc.constantFrom(...KINDS),
    pass: fc.boolean(),
    aboard: fc.constantFrom(null, true, false),
    found: fc.integer({ min: 300, max: 560 }),
  })
  .map(({ id, on, of, pass, aboard, found }) => ({
    id,
    checkKindId: of.id,
    doneOn: on,
    outcome: pass ? ('pass' as const) : ('fail' as const),
    byPersonId: null,
    lines: [
      {
        code: 'pressure',
        result: null,
        position: '1L',
        measured: { quantity: 'cold-pressure-kpa' as const, value: found },
      },
    ],
    inspectedBy: null,
    proofOnTrailer: aboard,
    costCents: null,
  }));

const anyTire: fc.Arbitrary<Part> = fc
  .record({
    id: fc.uuid(),
    position: fc.constantFrom('1L', '1R', '2L', '2R', 'spare'),
    on: fc.option(anyDay),
    off: fc.option(anyDay),
    code: fc.constantFrom('1017', '3018', '4418', '2424', '5299', null),
  })
  .map(({ id, position, on, off, code }) => ({
    ...tire(position, { dateCode: code }),
    id,
    fittedOn: on,
    removedOn: off,
  }));

const anyReading: fc.Arbitrary<MeterReading> = fc
  .record({ on: anyDay, mi: fc.integer({ min: 0, max: 20_000 }) })
  .map(({ on, mi }) => reading(on, mi));

const anyFacts: fc.Arbitrary<TrailerFacts> = fc
  .record({
    trips: fc.uniqueArray(anyTrip, { maxLength: 14, selector: ({ id }) => id }),
    jobs: fc.uniqueArray(anyJob, { maxLength: 4, selector: ({ id }) => id }),
    checkRecords: fc.uniqueArray(anyRecord, { maxLength: 14, selector: ({ id }) => id }),
    parts: fc.uniqueArray(anyTire, { maxLength: 6, selector: ({ id }) => id }),
    readings: fc.oneof(fc.constant([]), fc.uniqueArray(anyReading, { maxLength: 4, selector: ({ id }) => id })),
    changedOn: fc.option(anyDay),
    registration: fc.option(anyDay),
    hold: fc.option(fc.record({ on: anyDay, off: fc.option(anyDay) })),
  })
  .map(({ changedOn, registration, hold, ...lists }) =>
    facts({
      ...lists,
      machines: [machine('m1', 6_000), machine('m2', 10_400, { replacesMachineId: 'm1' })],
      builds: [
        build(),
        ...(changedOn === null ? [] : [build({ id: 'b2', effectiveFrom: changedOn, suspension: 'torsion' })]),
      ],
      trailer: trailer({ registrationExpiresOn: registration }),
      holds:
        hold === null ? [] : [{ id: 'h', openedOn: hold.on, reason: 'bent', openedByName: 'Luis', liftedOn: hold.off }],
    }),
  );

/** The checks every new yard has; added last, so that a counterexample can be read. */
const withChecks = (some: TrailerFacts): TrailerFacts => ({ ...some, checkKinds: KINDS });

/** An assessment without what may differ from day to day: the day itself, and yard days that have passed. */
function readOn(assessment: Assessment, on: CivilDate) {
  return {
    ...assessment,
    asOf: null,
    wakeOn: null,
    due: assessment.due.map((item) => ({ ...item, yardDays: yardDaysFrom(item.yardDays, daysAfter(on, 1)) })),
  };
}

describe('an assessment', () => {
  it('does not depend on the order in which facts are handed over', () => {
    fc.assert(
      fc.property(anyFacts, anyDay, fc.infiniteStream(fc.nat()), (some, asOf, order) => {
        const shuffled = <T>(list: readonly T[]): T[] =>
          list
            .map((one) => ({ one, at: order.next().value }))
            .sort((a, b) => a.at - b.at)
            .map(({ one }) => one);
        const turned: TrailerFacts = {
          ...some,
          builds: shuffled(some.builds),
          parts: shuffled(some.parts),
          trips: shuffled(some.trips),
          readings: shuffled(some.readings),
          jobs: shuffled(some.jobs),
          checkKinds: shuffled(KINDS).map((one) => ({ ...one, triggers: shuffled(one.triggers) })),
          checkRecords: shuffled(some.checkRecords),
          machines: shuffled(some.machines),
        };
        expect(assess(turned, asOf)).toEqual(assess(withChecks(some), asOf));
      }),
      { numRuns: 150 },
    );
  });

  it('reads the same on every day before its wake date', () => {
    fc.assert(
      fc.property(anyFacts, anyDay, (found, asOf) => {
        const some = withChecks(found);
        const kept = assess(some, asOf);
        const last = kept.wakeOn === null ? daysAfter(asOf, 400) : daysAfter(kept.wakeOn, -1);
        for (let on = daysAfter(asOf, 1); on <= last; on = daysAfter(on, 1)) {
          expect(readOn(assess(some, on), on), `kept on ${asOf}, read on ${on}`).toEqual(readOn(kept, on));
        }
      }),
      { numRuns: 200 },
    );
  });

  it('wakes on a later day, or never', () => {
    fc.assert(
      fc.property(anyFacts, anyDay, (some, asOf) => {
        const { wakeOn } = assess(withChecks(some), asOf);
        expect(wakeOn === null || wakeOn > asOf).toBe(true);
      }),
    );
  });
});
