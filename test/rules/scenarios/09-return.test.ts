import { describe, expect, test } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { Handover, Seen } from '../../../src/rules/facts/handover.js';
import type { Part } from '../../../src/rules/facts/part.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import { type FitInput, fit } from '../../../src/rules/fit/fit.js';
import { takeBack } from '../../../src/rules/handover/take-back.js';
import { rankTrailers } from '../../../src/rules/ranking/rank-trailers.js';
import { lbf, toLbf } from '../../../src/rules/units/force.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { axle, build, item, load, marks, tire, tires } from '../sample-facts.js';
import { facts, trailer } from '../sample-trailer.js';

// Unit 118: plate 14,000 lb, equalized springs, out on Friday with four tires of 3,420 lb. Monday at 9:40 its left rear
// tire is a load range D of 3,000 lb, its right ramp is bent and its coupler stiff. Tuesday's hire puts 12,500 lb on the
// axles. Worked by hand: the weakest tire sets the group, 4 × 3,000 = 12,000 lb where 4 × 3,420 were 13,680.
const FRIDAY = day('2026-04-10');
const MONDAY = day('2026-04-13');
const TUESDAY = day('2026-04-14');
const WEAK = marks({ loadRange: 'D', maxLoadSingleKg: lb(3_000), dateCode: '0226' });

function seen(thing: Seen['thing'], position: string | null, more: Partial<Seen> = {}): Seen {
  return { thing, position, condition: 'sound', tire: null, ballSizeM: null, note: null, photoIds: [], ...more };
}

const OUT: Handover = {
  id: 'out-1',
  trailerId: 'trailer-1',
  jobId: 'hire-1',
  way: 'out',
  outId: null,
  hitch: null,
  signature: null,
  on: FRIDAY,
  customer: 'Brindle Pools',
  byName: 'Luis',
  seen: [
    ...['1L', '1R', '2L', '2R'].map((at) => seen('tire', at, { tire: marks(), photoIds: [`out-${at}`] })),
    seen('ramp', 'left'),
    seen('ramp', 'right', { photoIds: ['out-ramp'] }),
    seen('coupler', null),
  ],
};
const BACK = {
  seen: [
    ...['1L', '1R', '2R'].map((at) => seen('tire', at, { tire: marks() })),
    seen('tire', '2L', { tire: WEAK, photoIds: ['back-2L'] }),
    seen('ramp', 'left'),
    seen('ramp', 'right', { condition: 'bent', photoIds: ['back-ramp'] }),
    seen('coupler', null, { condition: 'stiff' }),
  ],
};

const taken = takeBack(OUT, BACK);

/** The trailer as it stands on Monday: the tire that is on it now, and on hold. */
function asTakenBack(): TrailerFacts {
  const parts: Part[] = tires(2).map((one) => (one.position === '2L' ? { ...one, removedOn: MONDAY } : one));
  for (const { position, marks: found } of taken.swappedTires) {
    parts.push({ ...tire(position, found, MONDAY), id: `tire-${position}-found` });
  }
  const hold = { openedOn: MONDAY, openedByName: 'Luis', liftedOn: null };
  return facts({
    trailer: trailer({ yardNumber: '118' }),
    parts,
    holds: taken.hold === null ? [] : [{ ...hold, id: 'hold-1', reason: 'came back changed' }],
  });
}

/** Tuesday's hire: 14,000 lb in all would be within the plate; 12,500 of it on the axles by the ticket. */
const TUESDAYS_HIRE: FitInput = {
  load: load({
    cargo: [item('loader', 9_900)],
    scale: { grossKg: lb(13_800), tongueN: lbf(1_300), axleN: [lbf(6_250), lbf(6_250)] },
  }),
  startsOn: TUESDAY,
  endsOn: TUESDAY,
  commercial: null,
  towVehicle: null,
  driver: null,
};

describe('a hired trailer comes back changed', () => {
  test('the tire and the ramp are chargeable against the pictures of the way out; the coupler is looked at', () => {
    expect(taken.changes.map(({ thing, position, answer }) => [thing, position, answer])).toEqual([
      ['tire', '2L', 'chargeable'],
      ['ramp', 'right', 'chargeable'],
      ['coupler', null, 'inspect'],
    ]);
    expect(taken.changes.slice(0, 2).map(({ was, is }) => [was?.photoIds, is.photoIds])).toEqual([
      [['out-2L'], ['back-2L']],
      [['out-ramp'], ['back-ramp']],
    ]);
    expect(taken.customer).toBe('Brindle Pools');
  });

  test('it is held, and on hold it is down', () => {
    expect(taken.hold?.because.map(({ thing }) => thing)).toEqual(['tire', 'ramp', 'coupler']);
    expect(assess(asTakenBack(), MONDAY).readiness).toBe('down');
  });

  test('its axles carry 12,000 lb together and no longer 13,680', () => {
    const before = assess(facts({ parts: tires(2) }), FRIDAY).ratings;
    const after = assess(asTakenBack(), MONDAY).ratings;
    expect(toLb(before?.axleGroupKg ?? lb(0))).toBeCloseTo(13_680, 6);
    expect(toLb(after?.axleGroupKg ?? lb(0))).toBeCloseTo(12_000, 6);
  });

  test('Tuesday’s hire is at risk: with the hold lifted its tires would still be 125 lb over', () => {
    const held = fit(asTakenBack(), TUESDAYS_HIRE, MONDAY);
    expect(held.verdict).toBe('no-go');
    expect(held.reasons.map(({ kind }) => kind)).toContain('hold');
    const lifted = fit({ ...asTakenBack(), holds: [] }, TUESDAYS_HIRE, MONDAY);
    const over = lifted.reasons.find((reason) => reason.kind === 'over' && reason.comparison.limit.subject === '2L');
    // 12,500 lb over two axles and two wheels each are 3,125 lb.
    expect(over?.kind === 'over' ? toLbf(over.comparison.marginN) : null).toBeCloseTo(3_000 - 3_125, 6);
  });

  test('the yard’s other trailer that carries it even with nothing on the hitch is named in its place', () => {
    const heavy = facts({
      trailer: trailer({ id: 'trailer-2', yardNumber: '121' }),
      builds: [
        build({
          plate: { gvwrKg: lb(16_000), coldPressureKpa: null },
          axles: [axle(1, 8_000), axle(2, 8_000)],
          hitch: { ...build().hitch, couplerRatingKg: lb(18_000) },
        }),
      ],
      parts: tires(2, { maxLoadSingleKg: lb(4_000), loadRange: 'G' }),
    });
    const haul = { ...TUESDAYS_HIRE, jobId: 'hire-2', plannedTrailerId: 'trailer-1' };
    const ranked = rankTrailers([asTakenBack(), heavy], haul, MONDAY);
    expect(ranked.map(({ yardNumber, fit: { verdict } }) => [yardNumber, verdict])).toEqual([
      ['121', 'go'],
      ['118', 'no-go'],
    ]);
    // The tightest limit is the plate: 3,900 lb empty and 9,900 of load leave 2,200 of 16,000; its tires have
    // 4 × 4,000 − 13,800 likewise.
    expect(ranked[0]?.marginShare).toBeCloseTo(2_200 / 16_000, 9);
  });
});
