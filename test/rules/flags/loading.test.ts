import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { daysAfter } from '../../../src/rules/calendar/day-number.js';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import type { Load, Machine } from '../../../src/rules/facts/load.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import type { Flag, FlagRule } from '../../../src/rules/flags/flag.js';
import { RECENT_DAYS } from '../../../src/rules/flags/flag-context.js';
import { lbf, toLbf } from '../../../src/rules/units/force.js';
import { feet, inch } from '../../../src/rules/units/length.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { build, item, load, placedAxles, unknownBuild } from '../sample-facts.js';
import { facts, machine, trip } from '../sample-trailer.js';

const TODAY = day('2026-06-01');

/** The trailer of case S11: 2,800 lb empty with 233.3 on its tongue, axles at 180 in, deck from 60 to 252 in. */
function trailer(more: Partial<BuildSheet> = {}): BuildSheet {
  const unknown = unknownBuild();
  return build({
    body: 'fixed-deck',
    empty: { massKg: lb(2_800), basis: 'weighed', tongueN: lbf((2_800 * 15) / 180) },
    axles: placedAxles(180),
    deck: { ...unknown.deck, frontFromCouplerM: inch(60), lengthM: inch(192), widthM: inch(82) },
    fenders: { kind: 'double-broke', clearWidthM: inch(80) },
    rear: { ...unknown.rear, ramps: 'stand-up', stabilizers: false },
    ...more,
  });
}

function hauled(pounds: number, on: string, more: Partial<Load> = {}) {
  return trip(on, 40, { load: load({ cargo: [item('loader', pounds, { machineId: 'loader' })], ...more }) });
}

function loader(more: Partial<Machine> = {}): Machine {
  return machine('loader', 8_000, { contact: 'rubber-tracks', lengthM: feet(11), widthM: inch(70), ...more });
}

function raised(more: Partial<TrailerFacts>, rule: FlagRule, asOf = TODAY): readonly Flag[] {
  return assess(facts({ builds: [trailer()], machines: [loader()], ...more }), asOf).flags.filter(
    (flag) => flag.rule === rule,
  );
}

function evidenceOf<Kind extends Flag['evidence']['kind']>(flags: readonly Flag[], kind: Kind) {
  const found = flags.map(({ evidence }) => evidence).find((one) => one.kind === kind);
  if (found === undefined) throw new Error(`no evidence of ${kind}`);
  return found as Extract<Flag['evidence'], { kind: Kind }>;
}

describe('ramps and rear support', () => {
  const trips = [hauled(8_000, '2026-05-20'), hauled(900, '2026-05-10')];

  it('a machine that pulls the hitch up with nothing under the tail is a limit, with the trips it was', () => {
    const flags = raised({ trips }, 'ramp-support');
    const evidence = evidenceOf(flags, 'rear-lift');
    // Case S11: 2,967 lb.
    expect(toLbf(evidence.liftN)).toBeCloseTo(2_966.67, 1);
    // 900 lb at the tail: 233.3 − 900 × 72 / 180 = −126.7 still pulls.
    expect(evidence.trips.map((one) => one.tripId)).toEqual(['trip-2026-05-10-40', 'trip-2026-05-20-40']);
    expect(flags[0]).toMatchObject({ key: 'ramp-support:lift', severity: 'limit', since: '2026-05-10' });
    expect(flags[0]?.clears[0]).toEqual({ kind: 'rear-support' });
  });

  it('a machine too light to lift it is not among them', () => {
    const light = raised({ trips: [hauled(500, '2026-05-10'), hauled(8_000, '2026-05-20')] }, 'ramp-support');
    expect(evidenceOf(light, 'rear-lift').trips).toHaveLength(1);
  });

  it.each([
    ['stabilizers', { ramps: 'stand-up', stabilizers: true }],
    ['a knee brace', { ramps: 'stand-up-knee-brace', stabilizers: false }],
    ['nobody said', { ramps: 'stand-up', stabilizers: null }],
  ] as const)('%s: no flag', (_what, rear) => {
    const builds = [trailer({ rear: { ...unknownBuild().rear, ...rear } })];
    expect(raised({ builds, trips }, 'ramp-support')).toEqual([]);
  });

  it('a machine over the ramps’ rating says by how much, and what ramps would do', () => {
    const builds = [trailer({ rear: { ...unknownBuild().rear, stabilizers: true, rampRatingKg: lb(7_000) } })];
    const flags = raised({ builds, trips }, 'ramp-support');
    const evidence = evidenceOf(flags, 'over-ramp');
    expect(toLb(evidence.overKg)).toBeCloseTo(1_000, 6);
    expect(evidence.trips.map((one) => one.tripId)).toEqual(['trip-2026-05-20-40']);
    expect(flags[0]?.clears[0]).toMatchObject({ kind: 'part-of-at-least', part: 'ramp' });
  });
});

describe('room for the machine', () => {
  const trips = [hauled(8_000, '2026-05-20')];

  it('too wide between the fenders is a limit', () => {
    const flags = raised({ trips, machines: [loader({ widthM: inch(81) })] }, 'too-wide');
    expect(flags).toMatchObject([{ key: 'too-wide:loader', severity: 'limit', since: '2026-05-20' }]);
    expect(evidenceOf(flags, 'too-wide')).toMatchObject({ machineM: inch(81), roomM: inch(80), between: 'fenders' });
  });

  it('exactly as wide as the room fits, and over drive-over fenders nothing is said', () => {
    expect(raised({ trips, machines: [loader({ widthM: inch(80) })] }, 'too-wide')).toEqual([]);
    const builds = [trailer({ fenders: { kind: 'drive-over', clearWidthM: inch(80) } })];
    expect(raised({ builds, trips, machines: [loader({ widthM: inch(96) })] }, 'too-wide')).toEqual([]);
  });

  it('longer than the tilting part is a limit when its tracks have no room, else something to watch', () => {
    const deck = { ...trailer().deck, lengthM: feet(22), tiltLengthM: feet(16), pivotFromCouplerM: inch(190) };
    const builds = [trailer({ body: 'gravity-tilt', deck })];
    const severity = (wheelbase: number | null) =>
      raised(
        {
          builds,
          trips,
          machines: [loader({ lengthM: feet(17), wheelbaseM: wheelbase === null ? null : feet(wheelbase) })],
        },
        'too-long',
      ).map((flag) => flag.severity);
    expect([severity(16.5), severity(8), severity(null)]).toEqual([['limit'], ['watch'], ['watch']]);
    expect(
      evidenceOf(raised({ builds, trips, machines: [loader({ lengthM: feet(17) })] }, 'too-long'), 'too-long').of,
    ).toBe('tilt');
  });
});

describe('the jack', () => {
  const jacks = (lift: number, more: Partial<BuildSheet['jacks']> = {}) => ({
    count: 1,
    liftKg: lb(lift),
    supportKg: null,
    fromCouplerM: inch(36),
    ...more,
  });

  it('under less than the empty tongue is a limit whatever was hauled', () => {
    // 233.3 lb × 180 / 144 = 291.7 lb on the jack.
    const flags = raised({ builds: [trailer({ jacks: jacks(250) })] }, 'jack-load');
    expect(flags).toMatchObject([{ severity: 'limit', since: '2020-01-01' }]);
    const { check, when } = evidenceOf(flags, 'jack-load');
    expect(when).toBe('empty');
    expect(toLbf(check.loadN)).toBeCloseTo(291.67, 1);
    expect(flags[0]?.clears).toContainEqual({ kind: 'part-of-at-least', part: 'jack', ratingN: check.loadN });
  });

  it('under less than the tongue as loaded is something to watch', () => {
    // S1's 9,000 lb at 156.35 in: 1,416 lb on the tongue, 1,770 on the jack.
    const trips = [hauled(9_000, '2026-05-20', { balancePointM: inch(156.35) })];
    const loaded = (lift: number) => raised({ trips, builds: [trailer({ jacks: jacks(lift) })] }, 'jack-load');
    expect(loaded(1_700)).toMatchObject([{ severity: 'watch', since: '2026-05-20' }]);
    expect(toLbf(evidenceOf(loaded(1_700), 'jack-load').check.loadN)).toBeCloseTo(1_770, 0);
    expect(loaded(1_800)).toEqual([]);
  });

  it('two jacks share, and with their number unknown nothing is called short', () => {
    const trips = [hauled(9_000, '2026-05-20', { balancePointM: inch(156.35) })];
    const flags = (count: number | null) =>
      raised({ trips, builds: [trailer({ jacks: jacks(1_000, { count }) })] }, 'jack-load').length;
    expect([flags(1), flags(2), flags(null)]).toEqual([1, 0, 0]);
  });
});

describe('tie-downs', () => {
  const chains = (count: number, pounds: number | null) => [
    { count, workingLoadKg: pounds === null ? null : lb(pounds), way: 'direct' as const },
  ];
  const held = (pounds: number, on: string, count: number, wll: number | null) =>
    hauled(pounds, on, { tieDowns: chains(count, wll) });

  it('12,000 lb under four straps of 2,000 counts for 4,000 of 6,000', () => {
    const flags = raised(
      { trips: [held(12_000, '2026-05-20', 4, 2_000), held(12_000, '2026-05-25', 4, 6_600)] },
      'tie-downs-short',
    );
    const { tied, trips, on } = evidenceOf(flags, 'tie-downs-short');
    expect([toLb(tied.workingLoadKg), toLb(tied.need.workingLoadKg)]).toEqual([
      expect.closeTo(4_000, 6),
      expect.closeTo(6_000, 6),
    ]);
    expect(trips.map((one) => one.tripId)).toEqual(['trip-2026-05-20-40']);
    expect([on, flags[0]?.severity, flags[0]?.since]).toEqual(['2026-05-20', 'limit', '2026-05-20']);
  });

  it('three chains on a machine of 10,000 lb are one too few', () => {
    const flags = raised({ trips: [held(10_000, '2026-05-20', 3, 11_300)] }, 'tie-downs-short');
    expect(evidenceOf(flags, 'tie-downs-short').tied.need).toMatchObject({ count: 4, because: 'heavy-machine' });
  });

  it('what nobody said, and what nobody rated, raises nothing', () => {
    expect(raised({ trips: [hauled(12_000, '2026-05-20')] }, 'tie-downs-short')).toEqual([]);
    expect(raised({ trips: [held(12_000, '2026-05-20', 4, null)] }, 'tie-downs-short')).toEqual([]);
  });
});

describe('as days pass', () => {
  it('each of these flags is gone once its trips are old, and the assessment wakes for it', () => {
    const builds = [
      trailer({
        jacks: { count: 1, liftKg: lb(1_700), supportKg: null, fromCouplerM: inch(36) },
        rear: { ...unknownBuild().rear, ramps: 'stand-up', stabilizers: false, rampRatingKg: lb(7_000) },
      }),
    ];
    const trips = [
      hauled(9_000, '2026-05-20', {
        balancePointM: inch(156.35),
        tieDowns: [{ count: 1, workingLoadKg: lb(1_000), way: 'direct' }],
      }),
    ];
    const known = facts({ builds, trips, machines: [loader({ widthM: inch(90), lengthM: feet(30) })] });
    const rules = (on: typeof TODAY) =>
      assess(known, on)
        .flags.map((flag) => flag.key)
        .sort();
    const ours = [
      'jack-load',
      'ramp-support:lift',
      'ramp-support:rating',
      'tie-downs-short',
      'too-long:loader',
      'too-wide:loader',
    ];
    expect(rules(TODAY)).toEqual(expect.arrayContaining(ours));
    const clearsOn = daysAfter(day('2026-05-20'), RECENT_DAYS + 1);
    expect(rules(daysAfter(clearsOn, -1))).toEqual(expect.arrayContaining(ours));
    expect(rules(clearsOn).filter((key) => ours.includes(key))).toEqual([]);
    for (const flag of assess(known, TODAY).flags.filter(({ key }) => ours.includes(key))) {
      expect(flag.clears).toContainEqual({ kind: 'no-more-until', clearsOn });
    }
    // Day by day from one waking to the next: nothing reads differently in between.
    let asleepFrom = TODAY;
    for (let on = TODAY; on <= clearsOn; on = daysAfter(on, 1)) {
      const wakes = assess(known, asleepFrom).wakeOn;
      if (wakes !== null && wakes <= on) asleepFrom = on;
      expect(rules(on)).toEqual(rules(asleepFrom));
    }
  });
});

it('a force of nothing is no lift', () => {
  const builds = [trailer({ deck: { ...trailer().deck, lengthM: inch(119) } })];
  // The deck ends ahead of the axles: at its rear edge the machine presses the hitch down.
  expect(raised({ builds, trips: [hauled(8_000, '2026-05-20')] }, 'ramp-support')).toEqual([]);
});
