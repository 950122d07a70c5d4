import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestPlace, sharesLeftAt } from '../../../src/rules/envelope/best-place.js';
import { perNewtonAt } from '../../../src/rules/envelope/boundary.js';
import {
  boundsOf,
  type Edge,
  type Envelope,
  type EnvelopeInput,
  envelope,
  weightOnEdge,
} from '../../../src/rules/envelope/envelope.js';
import { payloadAt } from '../../../src/rules/envelope/payload-at.js';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import type { Load } from '../../../src/rules/facts/load.js';
import { DEFAULT_POLICY } from '../../../src/rules/facts/yard-policy.js';
import { checkLoad, type LoadCheck } from '../../../src/rules/load/load-check.js';
import type { LoadLimits } from '../../../src/rules/load/load-limits.js';
import { loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { lbf, newtons, toLbf, weightOf } from '../../../src/rules/units/force.js';
import { inch, metres, toInch } from '../../../src/rules/units/length.js';
import { kg, lb, toLb } from '../../../src/rules/units/mass.js';
import { SPRINGS } from '../reference/statics-cases.js';
import { axle, build, load, placedAxles, tires } from '../sample-facts.js';

/** The trailer of case S1: 2,800 lb empty at 165 in, axles' middle at 180, so 233.3 lb on its tongue. */
const empty = { massKg: lb(2_800), basis: 'weighed' as const, tongueN: lbf((2_800 * 15) / 180) };

function limitsOf(more: Partial<BuildSheet> = {}): LoadLimits {
  const trailer = build({ empty, axles: placedAxles(180), ...more });
  return loadLimits({ build: trailer, tires: tires(2), coldPressures: new Map(), towVehicle: null });
}

const deck = { frontM: inch(48), rearM: inch(288) };
const shared = (more: Partial<EnvelopeInput> = {}): EnvelopeInput => ({
  limits: limitsOf(),
  deck,
  raisedM: null,
  ...more,
});

function edgesOf(found: Envelope): readonly Edge[] {
  if (found.kind !== 'known') throw new Error(`not known: ${found.lacks.join(', ')}`);
  return found.edges;
}

function boundsIn(input: EnvelopeInput) {
  const found = boundsOf(input);
  if (found.kind !== 'known') throw new Error(`not known: ${found.lacks.join(', ')}`);
  return found.bounds;
}

const corner = ({ from }: Edge) => [Math.round(toInch(from.balancePointM) * 100) / 100, Math.round(toLb(from.cargoKg))];

describe('a 14,000 lb trailer on springs that share', () => {
  test('its corners and what makes each edge', () => {
    // By hand, in lb and in, from T = 233.33 + w (180 − x) / 180 and G = 2,800 + w:
    //   plate: w = 11,200. Tires: G − T = 4 × 3,420 = 13,680, so w x / 180 = 11,113.33.
    //   10 % of G: w (0.9 − x / 180) = 46.67.   15 % of G: w (0.85 − x / 180) = 186.67.
    //   plate meets 15 %: x = 180 (0.85 − 186.67 / 11,200) = 150.00; tires meet the plate at x = 178.61, behind the
    //   10 % line, which meets the plate at x = 180 (0.9 − 46.67 / 11,200) = 161.25.
    //   The empty trailer has 8.3 % on its tongue, so the 10 % line cuts the bare deck off; it meets the deck's front
    //   edge at x = 48, w = 46.67 / 0.6333 = 73.7, and the 15 % line meets it at w = 186.67 / 0.5833 = 320.
    const edges = edgesOf(envelope(shared()));
    const named = edges.map((edge) => [edge.kind, ...corner(edge)]);
    expect(new Set(named.map(([kind]) => kind))).toEqual(
      new Set(['plate', 'tongue-share-low', 'tongue-share-high', 'deck-front']),
    );
    expect(named).toContainEqual(['tongue-share-low', 48, 74]);
    expect(named.map(([, x, w]) => [x, w])).toEqual(
      expect.arrayContaining([
        [48, 74],
        [48, 320],
        [150, 11_200],
        [161.25, 11_200],
      ]),
    );
    expect(edges).toHaveLength(4);
  });

  test('the edges go round it without a gap', () => {
    const edges = edgesOf(envelope(shared()));
    for (const [index, edge] of edges.entries()) expect(edge.to).toEqual(edges[(index + 1) % edges.length]?.from);
  });

  test('with no hitch known the tongue sets no edge, and the bare deck is one', () => {
    const unhitched = limitsOf({ hitch: { ...build().hitch, kind: null } });
    const kinds = edgesOf(envelope(shared({ limits: unhitched }))).map((edge) => edge.kind);
    expect(kinds).toEqual(expect.arrayContaining(['no-cargo', 'deck-front', 'plate', 'tire', 'deck-rear']));
  });

  test('on weaker tires it is the tires that end it, and it says which', () => {
    const weak = loadLimits({
      build: build({ empty, axles: placedAxles(180) }),
      tires: tires(2, { maxLoadSingleKg: lb(2_600), maxColdPressureKpa: null }),
      coldPressures: new Map(),
      towVehicle: null,
    });
    const found = edgesOf(envelope(shared({ limits: weak }))).filter((edge) => edge.kind === 'tire');
    expect(found).toHaveLength(1);
    expect(found[0]?.subject).toBe('1L');
    // 4 × 2,600 = 10,400 on the axles: w x / 180 = 7,833.3, whatever x.
    expect(toLb(weightOnEdge(found[0] as Edge, inch(160)) ?? kg(0))).toBeCloseTo((7_833.333 * 180) / 160, 1);
  });

  test('a coupler rated for little on its ball sets an edge of its own', () => {
    const hitch = { ...build().hitch, kind: 'bumper-pull' as const, couplerTongueN: lbf(1_200) };
    const kinds = edgesOf(envelope(shared({ limits: limitsOf({ hitch }) }))).map((edge) => edge.kind);
    expect(kinds).toContain('coupler-tongue');
  });

  test('axles 35 in apart are one axle to the law: 20,000 lb end it below what they are rated for', () => {
    const heavy = limitsOf({
      plate: { gvwrKg: lb(30_000), coldPressureKpa: null },
      axles: placedAxles(180, 12_000),
      hitch: { ...build().hitch, couplerRatingKg: lb(30_000) },
    });
    const untired = { ...heavy, axles: heavy.axles.map((one) => ({ ...one, tires: [] })) };
    const edge = edgesOf(envelope(shared({ limits: untired }))).find(({ kind }) => kind === 'legal-axles');
    expect(edge?.subject).toBe('1-2');
    // 20,000 = 2,566.7 + w x / 180
    expect(toLb(weightOnEdge(edge as Edge, inch(156)) ?? kg(0))).toBeCloseTo((17_433.333 * 180) / 156, 1);
  });

  test('what is missing is named, and nothing is drawn', () => {
    const lacking = (more: Partial<BuildSheet>) => envelope(shared({ limits: limitsOf(more) }));
    expect(lacking({ empty: { ...empty, tongueN: null } })).toEqual({ kind: 'unknown', lacks: ['empty-tongue'] });
    expect(lacking({ axles: [axle(1, 7_000), axle(2, 7_000)] })).toEqual({ kind: 'unknown', lacks: ['axle-places'] });
    expect(lacking({ suspension: null })).toEqual({ kind: 'unknown', lacks: ['suspension'] });
    expect(lacking({ suspension: 'torsion' })).toEqual({ kind: 'unknown', lacks: ['torsion-level'] });
  });

  test('no rating at all: no envelope', () => {
    const limits = limitsOf();
    const bare = {
      ...limits,
      plate: null,
      axleGroup: null,
      axles: [],
      coupler: null,
      hitchKnown: false,
    };
    expect(envelope(shared({ limits: bare }))).toEqual({ kind: 'unknown', lacks: ['ratings'] });
  });

  test('an empty trailer past its plate: nothing is inside', () => {
    const heavy = limitsOf({ plate: { gvwrKg: lb(2_000), coldPressureKpa: null } });
    expect(edgesOf(envelope(shared({ limits: heavy })))).toEqual([]);
  });
});

describe('payload at a balance point', () => {
  const at = (place: number, more: Partial<BuildSheet> = {}) =>
    payloadAt(boundsIn(shared({ limits: limitsOf(more) })), inch(place));

  test('the plate governs in the middle, the tongue ahead of it and behind it', () => {
    expect(at(155)?.governedBy?.kind).toBe('plate');
    expect(toLb(at(155)?.mostKg ?? kg(0))).toBeCloseTo(11_200, 6);
    expect(at(140)?.governedBy?.kind).toBe('tongue-share-high');
    // 186.67 / (0.85 − 140 / 180)
    expect(toLb(at(140)?.mostKg ?? kg(0))).toBeCloseTo(186.6667 / (0.85 - 140 / 180), 1);
    expect(at(170)).toMatchObject({ mostKg: 0 });
    expect(at(170)?.governedBy?.kind).toBe('tongue-share-low');
  });

  test('below the 10 % line more weight is wanted: the empty trailer is tail heavy', () => {
    expect(at(155)?.leastBy?.kind).toBe('tongue-share-low');
    expect(toLb(at(155)?.leastKg ?? kg(0))).toBeCloseTo(46.6667 / (0.9 - 155 / 180), 2);
  });
});

describe('torsion axles', () => {
  // S4: 2,800 lb at 165 in, axles at 163.5 and 196.5, 2,000 lb/in, level with 9,000 lb at 160.
  const RATE = lbf(2_000) / inch(1);
  const torsionLimits = (rate: number | null, pounds = 6_000) =>
    limitsOf({
      suspension: 'torsion',
      axles: [163.5, 196.5].map((at, index) =>
        axle(index + 1, pounds, { fromCouplerM: inch(at), springRateNPerM: rate }),
      ),
    });
  const held = (by: number, rate: number | null = RATE): EnvelopeInput => ({
    limits: torsionLimits(rate),
    deck,
    raisedM: inch(by),
  });

  const onFlatGround = SPRINGS.filter(({ ground }) => ground === null);
  test.each(onFlatGround)('$id: the axle loads behind the edges are the worked ones', (worked) => {
    const [bare, machine] = worked.weights as [{ pounds: number; at: number }, { pounds: number; at: number }];
    const centreIn = worked.axles.reduce((sum, at) => sum + at, 0) / worked.axles.length;
    const limits = limitsOf({
      suspension: 'torsion',
      empty: {
        massKg: lb(bare.pounds),
        basis: 'weighed',
        tongueN: lbf((bare.pounds * (centreIn - bare.at)) / centreIn),
      },
      axles: worked.axles.map((at, index) =>
        axle(index + 1, 6_000, { fromCouplerM: inch(at), springRateNPerM: lbf(worked.rate) / inch(1) }),
      ),
    });
    const { boundaries } = boundsIn({ limits, deck, raisedM: inch(worked.raised) });
    const onAxles = boundaries
      .filter(({ kind }) => kind === 'axle')
      .map((one) => toLbf(newtons(lbf(6_000) - one.mostN + perNewtonAt(one, inch(machine.at)) * lbf(machine.pounds))));
    // Printed to a tenth of a pound.
    expect(onAxles).toEqual(worked.onAxles.map((load) => expect.closeTo(load, 1)));
  });

  test('nose high the rear axle ends it sooner, and between two rates the stiffer one does', () => {
    const most = (input: EnvelopeInput) => payloadAt(boundsIn(input), inch(158));
    const level = toLb(most(held(0))?.mostKg ?? kg(0));
    const high = most(held(3));
    expect(high?.governedBy?.subject).toBe('2');
    expect(toLb(high?.mostKg ?? kg(0))).toBeLessThan(level - 500);
    // With no rate entered it lies between 1,000 and 3,000 lb/in, and the stiffer end has the last word.
    expect(most(held(3, null))?.mostKg).toBeCloseTo(most(held(3, lbf(3_000) / inch(1)))?.mostKg ?? 0, 6);
    // Level, no rate is needed.
    expect(most(held(0, null))?.mostKg).toBeCloseTo(most(held(0))?.mostKg ?? 0, 6);
  });

  test('so high that the front axle hangs with a light load, the envelope ends where it touches', () => {
    const kinds = edgesOf(envelope(held(9))).map((edge) => edge.kind);
    expect(kinds).toContain('axle-off-ground');
  });

  test('what is missing is named', () => {
    const bare = held(0);
    expect(envelope({ ...bare, raisedM: null })).toEqual({ kind: 'unknown', lacks: ['torsion-level'] });
    const unlike = limitsOf({
      suspension: 'torsion',
      axles: [axle(1, 6_000, { fromCouplerM: inch(163.5) }), axle(2, 5_000, { fromCouplerM: inch(196.5) })],
    });
    expect(envelope({ ...bare, limits: unlike })).toEqual({ kind: 'unknown', lacks: ['spring-rate'] });
  });

  test('what is inside passes the load check at that height, what is outside fails it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 48, max: 288, noNaN: true }),
        fc.double({ min: -6, max: 6, noNaN: true }),
        fc.integer({ min: 500, max: 4_000 }),
        fc.integer({ min: 3_500, max: 8_000 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (place, by, rate, rating, share) => {
          const limits = torsionLimits(lbf(rate) / inch(1), rating);
          const at = payloadAt(boundsIn({ limits, deck, raisedM: inch(by) }), inch(place));
          if (at === null) throw new Error('nothing holds it from above');
          const rode = { hitchHeightM: metres(LEVEL_M + inch(by)) };
          const levelled = { ...limits, torsion: limits.torsion && { ...limits.torsion, levelHeightM: LEVEL_M } };
          if (at.mostKg > at.leastKg) {
            const inside = at.leastKg + (at.mostKg - at.leastKg) * (0.000_001 + 0.999_998 * share);
            expect(passes(judged(levelled, inch(place), inside, rode))).toBe(true);
          }
          // Past the line at which an axle lifts the check goes on and the envelope does not.
          if (at.governedBy?.kind === 'axle-off-ground' || at.mostKg === 0) return;
          expect(passes(judged(levelled, inch(place), at.mostKg * (1.000_001 + share), rode))).toBe(false);
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });
});

/** The height at which the torsion trailers here stand level. */
const LEVEL_M = inch(20);

/** Trailers of many shapes, on springs that share, all facts known. */
const trailers = fc.record({
  centre: fc.integer({ min: 120, max: 260 }),
  emptyPounds: fc.integer({ min: 1_500, max: 6_000 }),
  emptyShare: fc.double({ min: 0.05, max: 0.2, noNaN: true }),
  plate: fc.integer({ min: 7_000, max: 40_000 }),
  axleRating: fc.integer({ min: 3_500, max: 14_000 }),
  tireRating: fc.integer({ min: 1_800, max: 7_000 }),
  coupler: fc.integer({ min: 7_000, max: 40_000 }),
  couplerTongue: fc.option(fc.integer({ min: 500, max: 3_000 })),
});
type Shape = typeof trailers extends fc.Arbitrary<infer T> ? T : never;

function limitsFor(shape: Shape): LoadLimits {
  return loadLimits({
    build: build({
      empty: {
        massKg: lb(shape.emptyPounds),
        basis: 'weighed',
        tongueN: lbf(shape.emptyPounds * shape.emptyShare),
      },
      plate: { gvwrKg: lb(shape.plate), coldPressureKpa: null },
      axles: placedAxles(shape.centre, shape.axleRating),
      hitch: {
        ...build().hitch,
        couplerRatingKg: lb(shape.coupler),
        couplerTongueN: shape.couplerTongue === null ? null : lbf(shape.couplerTongue),
      },
    }),
    tires: tires(2, { maxLoadSingleKg: lb(shape.tireRating), maxColdPressureKpa: null }),
    coldPressures: new Map(),
    towVehicle: null,
  });
}

/** A cargo held against every limit by the load check itself. */
function judged(limits: LoadLimits, balancePointM: number, cargoKg: number, more: Partial<Load> = {}): LoadCheck {
  const cargo = [
    { name: 'it', massKg: kg(cargoKg), basis: 'weighed' as const, machineId: null, remedy: null, fromCouplerM: null },
  ];
  return checkLoad(limits, load({ cargo, balancePointM: metres(balancePointM), ...more }), DEFAULT_POLICY);
}

function passes({ comparisons, tongueBand }: LoadCheck): boolean {
  return comparisons.every((one) => one.standing !== 'over') && tongueBand.standing === 'inside';
}

describe('for any trailer on springs that share', () => {
  const runs = { seed: 7, numRuns: 200 };

  test('every corner lies on both limits that meet there', () => {
    fc.assert(
      fc.property(trailers, (shape) => {
        const edges = edgesOf(envelope(shared({ limits: limitsFor(shape) })));
        for (const [index, edge] of edges.entries()) {
          const before = edges[(index + edges.length - 1) % edges.length] as Edge;
          for (const { boundary } of [edge, before]) {
            if (boundary === null) continue;
            const usedN = perNewtonAt(boundary, edge.from.balancePointM) * weightOf(edge.from.cargoKg);
            // A millionth of the heaviest load there is; rounding alone leaves 1e-12.
            expect(Math.abs(usedN - boundary.mostN)).toBeLessThan(1e-6 * lbf(20_000));
          }
        }
      }),
      runs,
    );
  });

  test('what is inside passes the load check, what is outside fails it', () => {
    fc.assert(
      fc.property(
        trailers,
        fc.double({ min: 48, max: 288, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (shape, place, share) => {
          const limits = limitsFor(shape);
          const at = payloadAt(boundsIn(shared({ limits })), inch(place));
          if (at === null) throw new Error('nothing holds it from above');
          if (at.mostKg > at.leastKg) {
            const inside = at.leastKg + (at.mostKg - at.leastKg) * (0.000_001 + 0.999_998 * share);
            expect(passes(judged(limits, inch(place), inside))).toBe(true);
          }
          expect(passes(judged(limits, inch(place), at.mostKg * (1.000_001 + share) + 0.001))).toBe(false);
          if (at.leastKg > 0) expect(passes(judged(limits, inch(place), at.leastKg * 0.999_999 * share))).toBe(false);
        },
      ),
      runs,
    );
  });

  test('the drawn edges are where the payload at a balance point says they are', () => {
    fc.assert(
      fc.property(trailers, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (shape, share) => {
        const input = shared({ limits: limitsFor(shape) });
        for (const edge of edgesOf(envelope(input))) {
          const place = metres(edge.from.balancePointM + (edge.to.balancePointM - edge.from.balancePointM) * share);
          const weight = weightOnEdge(edge, place);
          if (weight === null || edge.from.balancePointM === edge.to.balancePointM) continue;
          const at = payloadAt(boundsIn(input), place);
          const nearest = Math.min(Math.abs(weight - (at?.mostKg ?? 0)), Math.abs(weight - (at?.leastKg ?? 0)));
          expect(nearest).toBeLessThan(1e-6 * lb(20_000));
        }
      }),
      runs,
    );
  });

  test('no sampled place leaves more of the tightest limit than the best place', () => {
    fc.assert(
      fc.property(trailers, fc.integer({ min: 1_000, max: 12_000 }), (shape, pounds) => {
        const limits = limitsFor(shape);
        const bounds = boundsIn(shared({ limits }));
        const parking = { massKg: lb(pounds), alongside: [], fromM: inch(60), toM: inch(270) };
        const emptyN = lbf(shape.emptyPounds);
        const best = bestPlace(bounds, emptyN, parking);
        if (best === null) throw new Error('no place');
        const tightest = (place: number) =>
          Math.min(
            ...sharesLeftAt(bounds, emptyN, parking, metres(place))
              .filter(({ boundary }) => boundary.perMoment !== 0)
              .map((one) => one.share),
          );
        expect(tightest(best.balancePointM)).toBeCloseTo(best.tightest.share, 9);
        for (let step = 0; step <= 40; step++) {
          expect(tightest(inch(60 + (210 * step) / 40))).toBeLessThanOrEqual(best.tightest.share + 1e-9);
        }
        const inside = best.inside;
        if (inside !== null && best.tightestOfAll.share > 1e-9 && inside.toM - inside.fromM > 1e-3) {
          const middle = metres((inside.fromM + inside.toM) / 2);
          expect(passes(judged(limits, middle, lb(pounds)))).toBe(true);
          expect(passes(judged(limits, best.balancePointM, lb(pounds)))).toBe(true);
        }
      }),
      runs,
    );
  });
});

test('the best place for S1’s machine alone leaves as much to 10 % as to 15 % of the tongue', () => {
  const best = bestPlace(boundsIn(shared()), lbf(2_800), {
    massKg: lb(9_000),
    alongside: [],
    fromM: inch(100),
    toM: inch(230),
  });
  // 12 % of 11,800 lb is 1,416 lb on the tongue: the place of case S2.
  expect(toInch(best?.balancePointM ?? metres(0))).toBeCloseTo(156.35, 2);
  expect(best?.tightest.share).toBeCloseTo(0.2, 9);
  // 14,000 lb of plate carry 11,800: 15.7 % is left, and no place changes that.
  expect(best?.tightestOfAll.boundary.kind).toBe('plate');
  expect(best?.tightestOfAll.share).toBeCloseTo(2_200 / 14_000, 9);
});

test('a chain box up front moves the machine back', () => {
  const bounds = boundsIn(shared());
  const parking = { massKg: lb(9_000), alongside: [], fromM: inch(100), toM: inch(230) };
  const alone = bestPlace(bounds, lbf(2_800), parking);
  const beside = bestPlace(bounds, lbf(2_800), {
    ...parking,
    alongside: [{ massKg: lb(300), fromCouplerM: inch(40) }],
  });
  expect(Number(beside?.balancePointM)).toBeGreaterThan(Number(alone?.balancePointM));
});
