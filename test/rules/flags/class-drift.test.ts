import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { daysAfter } from '../../../src/rules/calendar/day-number.js';
import type { Trip } from '../../../src/rules/facts/use.js';
import { classDriftFlags } from '../../../src/rules/flags/class-drift.js';
import type { Flag } from '../../../src/rules/flags/flag.js';
import { loadsOfQuarter, loadTrend, ninetiethShare } from '../../../src/rules/flags/loads-of-quarter.js';
import { trailerOn } from '../../../src/rules/history/trailer-on.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { build, item, load } from '../sample-facts.js';
import { facts, trip } from '../sample-trailer.js';

const START = day('2025-01-01');

/** One trip every `every` days from New Year, each with so many pounds of cargo. The sample trailer carries 10,100 lb. */
function hauls(pounds: readonly number[], every = 1, miles: number | null = 40): Trip[] {
  return pounds.map((carried, place) => {
    const on = daysAfter(START, place * every);
    return trip(on, miles, {
      id: `trip-${place}`,
      machineId: 'dozer',
      load: load({ cargo: [item('machine', carried)] }),
    });
  });
}

function drift(trips: readonly Trip[], asOf = '2025-12-01') {
  const [flag] = classDriftFlags({ trailer: trailerOn(facts({ trips }), day(asOf)) });
  if (flag === undefined) return null;
  if (flag.evidence.kind !== 'class-drift') throw new Error('another flag');
  return { ...flag, evidence: flag.evidence };
}

function loadsOf(trips: readonly Trip[]) {
  return loadsOfQuarter(trailerOn(facts({ trips }), day('2025-12-01')), 10);
}

const LIGHT = 5_000;
/** 94 % of payload. */
const HEAVY = 9_500;
/** 104 %. */
const OVER = 10_500;

describe('class drift', () => {
  it('says how heavy, how often, since when, by which machine and on which trips', () => {
    const flag = drift(hauls([...Array(6).fill(LIGHT), ...Array(4).fill(HEAVY)]));
    expect(flag).toMatchObject({
      severity: 'watch',
      since: '2025-01-07',
      evidence: {
        from: '2025-01-01',
        to: '2025-01-10',
        trips: 10,
        over90: 4,
        over100: 0,
        machineId: 'dozer',
        tripIds: ['trip-6', 'trip-7', 'trip-8', 'trip-9'],
        ownClass: 'medium',
        looksLike: 'heavy',
        wantsMore: [],
      },
    });
    expect(flag?.evidence.weakest?.limit.kind).toBe('plate');
  });

  it('names every limit the heaviest load went over, the furthest first', () => {
    const flag = drift(hauls([LIGHT, OVER + 1_000]));
    expect(flag?.severity).toBe('limit');
    // 3,900 + 11,500 on a plate of 14,000 and a coupler of 15,000; the axles' load without a tongue is a bound and breaks nothing.
    expect(flag?.evidence.wantsMore.map((one) => one.limit.kind)).toEqual(['plate', 'coupler']);
  });

  it('looks back a quarter from the latest load, and at ten in any case', () => {
    expect(loadsOf(hauls(Array(30).fill(LIGHT), 10))).toHaveLength(10);
    expect(loadsOf(hauls(Array(120).fill(LIGHT), 1))).toHaveLength(91);
    // A trailer that stands: the same a year later.
    const trips = hauls([OVER]);
    expect(drift(trips, '2027-06-01')?.evidence).toEqual(drift(trips, '2025-02-01')?.evidence);
  });

  it('a machine that came lately shows though the quarter was mostly light', () => {
    const flag = drift(hauls([...Array(40).fill(LIGHT), ...Array(4).fill(HEAVY)]));
    expect(flag?.evidence).toMatchObject({ trips: 44, over90: 4 });
  });

  it('trips whose load nobody told are passed over', () => {
    const untold = trip(day('2025-01-20'), 30);
    expect(drift([...hauls([OVER]), untold])?.evidence.trips).toBe(1);
  });

  it('clears after exactly as many lighter trips as it says', () => {
    for (const pounds of [
      [...Array(6).fill(LIGHT), ...Array(4).fill(HEAVY)],
      Array(10).fill(HEAVY),
      [LIGHT, OVER, LIGHT, HEAVY],
      [OVER],
    ]) {
      const flag = drift(hauls(pounds));
      const wanted = wantedTrips(flag);
      expect(drift(hauls([...pounds, ...Array(wanted - 1).fill(LIGHT)]))).not.toBeNull();
      expect(drift(hauls([...pounds, ...Array(wanted).fill(LIGHT)]))).toBeNull();
    }
  });

  it('asks for the payload that would leave a tenth over the heaviest load', () => {
    const clears = drift(hauls([OVER]))?.clears ?? [];
    const payload = clears.find((one) => one.kind === 'payload-of-at-least');
    expect(payload?.kind === 'payload-of-at-least' && toLb(payload.payloadKg)).toBeCloseTo(10_500 / 0.9, 6);
  });
});

describe('the loads of a quarter', () => {
  it('nine in ten: as R puts it, quantile(1:10 / 10, 0.9) = 0.91', () => {
    // R 4: quantile(c(0.1, 0.2, …, 1.0), 0.9) is 0.91 (type 7, its default).
    const loads = loadsOf(hauls(Array.from({ length: 10 }, (_, place) => 1_010 * (place + 1))));
    expect(ninetiethShare(loads)).toBeCloseTo(0.91, 9);
  });

  it('a steady growth is found as it is, and is clear', () => {
    // 101 lb a day on 10,100 lb: 1 % a day, 30 % a month.
    const trend = loadTrend(loadsOf(hauls(Array.from({ length: 12 }, (_, place) => 4_000 + 101 * place))));
    expect(trend?.shareAMonth).toBeCloseTo(0.3, 9);
    expect(trend?.isClear).toBe(true);
  });

  it('up and down by turns is no trend, and five loads are too few', () => {
    const zigzag = Array.from({ length: 12 }, (_, place) => (place % 2 === 0 ? 4_000 : 9_000));
    expect(loadTrend(loadsOf(hauls(zigzag)))?.isClear).toBe(false);
    expect(loadTrend(loadsOf(hauls(zigzag.slice(0, 5))))).toBeNull();
    expect(loadTrend(loadsOf(hauls(zigzag, 0)))).toBeNull();
  });

  it('damage: one load at 104 % against 90 %, to the power of each part', () => {
    const damage = drift(hauls([OVER]))?.evidence.damage;
    // Gross 14,400 where 90 % of payload is 3,900 + 9,090 = 12,990. The next class up is rated 16,000 where this one is 14,000.
    const ratio = 14_400 / 12_990;
    expect(damage?.map((one) => one.part)).toEqual(['bearing', 'weld', 'spring']);
    for (const [part, exponent] of [
      ['bearing', 10 / 3],
      ['weld', 3],
      ['spring', 4.5],
    ] as const) {
      const one = damage?.find((found) => found.part === part);
      expect(one?.onThis).toBeCloseTo(ratio ** exponent, 9);
      expect(one?.onNext).toBeCloseTo((ratio * (14_000 / 16_000)) ** exponent, 9);
    }
  });

  it('damage goes by miles, and without any it is unknown', () => {
    const far = hauls([OVER, LIGHT]).map((one, place) => ({ ...one, distanceKm: place === 0 ? one.distanceKm : null }));
    expect(drift(far)?.evidence.damage?.[1]?.onThis).toBeCloseTo((14_400 / 12_990) ** 3, 9);
    expect(drift(hauls([OVER], 1, null))?.evidence.damage).toBeNull();
  });

  it('the payload of the day counts, not that of today', () => {
    const lesser = build({
      id: 'lesser',
      effectiveFrom: day('2025-02-01'),
      plate: { ...build().plate, gvwrKg: lb(12_000) },
    });
    const trailer = trailerOn(facts({ builds: [build(), lesser], trips: hauls([HEAVY]) }), day('2025-12-01'));
    expect(loadsOfQuarter(trailer, 10)[0]?.share).toBeCloseTo(9_500 / 10_100, 9);
  });
});

function wantedTrips(flag: Flag | null): number {
  const clearance = flag?.clears.find((one) => one.kind === 'lighter-trips');
  if (clearance?.kind !== 'lighter-trips') throw new Error('no such clearance');
  return clearance.trips;
}
