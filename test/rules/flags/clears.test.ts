import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { daysAfter } from '../../../src/rules/calendar/day-number.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import type { Clearance } from '../../../src/rules/flags/clearance.js';
import type { Flag, FlagRule } from '../../../src/rules/flags/flag.js';
import { lb } from '../../../src/rules/units/mass.js';
import { kPa, psi } from '../../../src/rules/units/pressure.js';
import { build, item, load, ticket, tire, tires } from '../sample-facts.js';
import { done, facts, kind, machine, trip } from '../sample-trailer.js';

// What a flag says would clear it must clear it: each way is gone and looked at.

const ON = day('2025-06-16');

function flagOn(rule: FlagRule, of: TrailerFacts, on = ON): Flag | null {
  return assess(of, on).flags.find((flag) => flag.rule === rule) ?? null;
}

function wayOf<Kind extends Clearance['kind']>(flag: Flag | null, wanted: Kind): Extract<Clearance, { kind: Kind }> {
  const way = flag?.clears.find((one) => one.kind === wanted);
  if (way === undefined) throw new Error(`says nothing of ${wanted}`);
  return way as Extract<Clearance, { kind: Kind }>;
}

describe('what is said to clear a flag clears it', () => {
  const heavy = load({ scale: ticket({ gross: 14_900, tongue: 700, axles: [7_400, 6_800] }) });

  it.each(['over-plate', 'over-axle', 'tongue-share'] as const)(
    '%s: gone on the day it names if nothing more is hauled so, and not a day before',
    (rule) => {
      const of = facts({ trips: [trip('2025-05-01', 30, { load: heavy }), trip('2025-06-01', 30, { load: heavy })] });
      const { clearsOn } = wayOf(flagOn(rule, of), 'no-more-until');
      expect(flagOn(rule, of, daysAfter(clearsOn, -1))).not.toBeNull();
      expect(flagOn(rule, of, clearsOn)).toBeNull();
      // The day is one the assessment wakes on, or later than that.
      expect(assess(of, daysAfter(clearsOn, -1)).wakeOn).toBe(clearsOn);
    },
  );

  it('over-plate: gone when the trip is corrected', () => {
    expect(
      wayOf(flagOn('over-plate', facts({ trips: [trip('2025-06-01', 30, { load: heavy })] })), 'correct').fact,
    ).toBe('trip');
    const light = load({ scale: ticket({ gross: 10_000 }) });
    expect(flagOn('over-plate', facts({ trips: [trip('2025-06-01', 30, { load: light })] }))).toBeNull();
  });

  it('overdue-check and a failed one: gone when the check is passed', () => {
    const monthly = kind('monthly', [{ kind: 'months', every: 1, toMonthEnd: false }]);
    for (const record of [done('monthly', '2025-04-01'), done('monthly', '2025-06-10', { outcome: 'fail' })]) {
      const of = facts({ checkKinds: [monthly], checkRecords: [record] });
      const { checkKindId } = wayOf(flagOn('overdue-check', of), 'pass-check');
      const pass = done('monthly', '2025-06-15', { checkKindId });
      expect(flagOn('overdue-check', { ...of, checkRecords: [record, pass] })).toBeNull();
    }
  });

  it('missing-proof: gone when the paper is seen', () => {
    const annual = kind('annual', [{ kind: 'months', every: 12, toMonthEnd: true }], {
      proof: { what: 'decal', keepMonths: 14 },
    });
    const without = done('annual', '2025-03-01', { proofOnTrailer: false });
    const of = facts({ checkKinds: [annual], checkRecords: [without] });
    const { checkKindId, what } = wayOf(flagOn('missing-proof', of), 'carry-proof');
    expect(what).toBe('decal');
    const seen = done('annual', '2025-06-01', { checkKindId, proofOnTrailer: true });
    expect(flagOn('missing-proof', { ...of, checkRecords: [without, seen] })).toBeNull();
  });

  it('on-hold: gone when that hold is lifted', () => {
    const hold = { id: 'h', openedOn: day('2025-06-01'), reason: 'hub', openedByName: 'Ann', liftedOn: null };
    const of = facts({ holds: [hold] });
    expect(wayOf(flagOn('on-hold', of), 'lift-hold').holdId).toBe('h');
    expect(flagOn('on-hold', { ...of, holds: [{ ...hold, liftedOn: ON }] })).toBeNull();
  });

  it('tire-age: gone when the tires it names are new', () => {
    const parts = [...tires(1, { dateCode: '1018' }), tire('2L'), tire('2R')];
    const of = facts({ parts });
    const { positions } = wayOf(flagOn('tire-age', of), 'replace-tires');
    const changed = parts.map((one) => (positions.includes(one.position ?? '') ? tire(one.position ?? '') : one));
    expect(flagOn('tire-age', { ...of, parts: changed })).toBeNull();
  });

  it('tire-pressure: gone when the tires it names are found at the pressure wanted', () => {
    const pressures = kind('pressures', [{ kind: 'months', every: 1, toMonthEnd: false }]);
    const found = (on: string, kpa: number) =>
      done('pressures', on, {
        lines: ['1L', '2R'].map((position) => ({
          code: 'pressure',
          result: null,
          position,
          measured: { quantity: 'cold-pressure-kpa' as const, value: kpa },
        })),
      });
    const of = facts({ checkKinds: [pressures], checkRecords: [found('2025-06-01', kPa(400))] });
    expect(wayOf(flagOn('tire-pressure', of), 'inflate-tires').positions).toEqual(['1L', '2R']);
    const pumped = { ...of, checkRecords: [...of.checkRecords, found('2025-06-10', psi(80))] };
    expect(flagOn('tire-pressure', pumped)).toBeNull();
  });

  describe('outgrown', () => {
    const cargo = (pounds: number) => load({ cargo: [item('dozer', pounds, { machineId: 'dozer' })] });
    const trips = [trip('2025-05-01', 30, { machineId: 'dozer', load: cargo(10_900) })];
    const of = facts({ trips, machines: [machine('dozer', 10_900)] });
    const flag = flagOn('outgrown', of);

    it('gone when the machine is weighed at no more than it says', () => {
      const { massKg } = wayOf(flag, 'machine-at-most');
      const weighed = { ...machine('dozer', 1), massKg };
      expect(flagOn('outgrown', { ...of, machines: [weighed] })).toBeNull();
    });

    it('gone when a build leaves the payload it asks for', () => {
      const { payloadKg } = wayOf(flag, 'payload-of-at-least');
      const stronger = build({
        plate: { gvwrKg: lb(30_000), coldPressureKpa: null },
        hitch: { ...build().hitch, couplerRatingKg: lb(30_000) },
        axles: build().axles.map((one) => ({ ...one, gawrKg: lb(15_000) })),
      });
      const parts = tires(2, { maxLoadSingleKg: lb(8_000) });
      const rebuilt = { ...of, builds: [stronger], parts };
      expect(assess(rebuilt, ON).ratings?.payloadKg).toBeGreaterThan(payloadKg);
      expect(flagOn('outgrown', rebuilt)).toBeNull();
    });

    it('gone when another trailer takes the machine and this one carries another', () => {
      expect(wayOf(flag, 'other-trailer').machineId).toBe('dozer');
      const others = Array.from({ length: 10 }, (_, place) =>
        trip(daysAfter(day('2025-05-10'), place), 30, { machineId: 'mini' }),
      );
      expect(flagOn('outgrown', { ...of, trips: [...trips, ...others] })).toBeNull();
    });
  });
});

it('every flag of a trailer in a bad way has a day, a way out, and no day ahead of today', () => {
  const heavy = load({
    cargo: [item('dozer', 12_000, { machineId: 'dozer' })],
    scale: ticket({ gross: 15_900, tongue: 500 }),
  });
  const monthly = kind('monthly', [{ kind: 'months', every: 1, toMonthEnd: false }]);
  const { flags } = assess(
    facts({
      parts: tires(2, { dateCode: '1018' }),
      trips: [trip('2025-06-01', 30, { machineId: 'dozer', load: heavy })],
      machines: [machine('dozer', 12_000)],
      checkKinds: [monthly],
      checkRecords: [done('monthly', '2025-04-01')],
    }),
    ON,
  );
  const rules = flags.map((flag) => flag.rule);
  expect(rules).toEqual(
    expect.arrayContaining([
      'over-plate',
      'over-coupler',
      'tongue-share',
      'tire-age',
      'overdue-check',
      'class-drift',
      'outgrown',
    ]),
  );
  for (const flag of flags) {
    expect(flag.clears.length).toBeGreaterThan(0);
    expect(flag.since === null || flag.since <= ON).toBe(true);
  }
  expect(new Set(flags.map((flag) => flag.key)).size).toBe(flags.length);
});
