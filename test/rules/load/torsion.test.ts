import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import type { Load } from '../../../src/rules/facts/load.js';
import { DEFAULT_POLICY } from '../../../src/rules/facts/yard-policy.js';
import { checkLoad, type LoadCheck, shareOutOfBand } from '../../../src/rules/load/load-check.js';
import { freeOffset, springLoads, springsUnder } from '../../../src/rules/load/springs.js';
import { loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { lbf, newtons, toLbf } from '../../../src/rules/units/force.js';
import { inch, metres, toInch } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { SPRINGS } from '../reference/statics-cases.js';
import { NOSE_HIGH } from '../reference/torsion-cases.js';
import { axle, build, item, load, ticket, tires } from '../sample-facts.js';
import { towVehicle } from '../sample-trailer.js';

const LEVEL_AT = 20;
const perInch = (pounds: number) => lbf(pounds) / inch(1);

interface Standing {
  readonly rate?: number | null;
  readonly raised?: number | null;
  readonly level?: number | null;
  readonly more?: Partial<BuildSheet>;
  readonly cargo?: Partial<Load>;
  readonly ball?: number;
}

/** S4's trailer as facts: 2,800 lb with its balance point at 165, axles at 163.5 and 196.5, 9,000 lb at 160. */
function tandem({ rate = 2_000, raised = 0, level = LEVEL_AT, more = {}, cargo = {}, ball }: Standing = {}): LoadCheck {
  const trailer = build({
    suspension: 'torsion',
    empty: { massKg: lb(2_800), basis: 'weighed', tongueN: lbf((2_800 * 15) / 180) },
    axles: [163.5, 196.5].map((at, index) =>
      axle(index + 1, 7_000, {
        fromCouplerM: inch(at),
        springRateNPerM: rate === null ? null : perInch(rate),
        trackM: inch(80),
      }),
    ),
    hitch: { ...build().hitch, levelHeightM: level === null ? null : inch(level) },
    ...more,
  });
  const truck = ball === undefined ? null : towVehicle({ ballHeightM: inch(ball) });
  const limits = loadLimits({ build: trailer, tires: tires(2), coldPressures: new Map(), towVehicle: truck });
  const carried = load({
    cargo: [item('machine', 9_000)],
    balancePointM: inch(160),
    hitchHeightM: raised === null ? null : inch(LEVEL_AT + raised),
    ...cargo,
  });
  return checkLoad(limits, carried, DEFAULT_POLICY);
}

const pounds = (forces: LoadCheck['axleN']) => forces?.map((one) => Math.round(toLbf(one) * 10) / 10) ?? null;
const tongue = (found: LoadCheck) => toLbf(found.tongueN ?? newtons(0));
const comparedOn = (found: LoadCheck, kind: string) =>
  found.comparisons.filter((one) => one.limit.kind === kind).map((one) => [one.limit.subject, one.standing]);

describe('a load check of torsion axles, their stiffness entered', () => {
  test.each([
    ['S4', 0, [5_283.3, 5_283.3], 1_233.3, 'level'],
    ['S5', 3, [4_687.9, 5_778.8], 1_333.3, 'nose-high'],
    ['S6', -3, [5_878.7, 4_787.9], 1_133.3, 'nose-low'],
  ] as const)('%s', (_id, raised, onAxles, onTongue, standing) => {
    const found = tandem({ raised });
    expect(pounds(found.axleN)).toEqual(onAxles);
    expect(tongue(found)).toBeCloseTo(onTongue, 1);
    expect(found.method).toBe('statics');
    expect(found.attitude?.standing).toBe(standing);
    expect(toInch(found.attitude?.raisedM ?? metres(9))).toBeCloseTo(raised, 9);
    expect(found.unknowns).toEqual([]);
  });

  test('S9: three axles, nose 4 in high', () => {
    const triple = SPRINGS.find(({ id }) => id === 'S9 nose 4 in high');
    const found = tandem({
      raised: 4,
      more: {
        empty: { massKg: lb(4_200), basis: 'weighed', tongueN: lbf((4_200 * (244 - 205)) / 244) },
        axles: [210, 244, 278].map((at, index) =>
          axle(index + 1, 7_000, { fromCouplerM: inch(at), springRateNPerM: perInch(1_800) }),
        ),
      },
      cargo: { cargo: [item('machine', 14_000)], balancePointM: inch(225) },
    });
    expect(pounds(found.axleN)).toEqual(triple?.onAxles);
    expect(tongue(found)).toBeCloseTo(triple?.tongue ?? 0, 1);
  });

  test('the height of the ball stands in where nobody said how it rode', () => {
    expect(pounds(tandem({ raised: null, ball: 23 }).axleN)).toEqual([4_687.9, 5_778.8]);
    expect(pounds(tandem({ raised: 0, ball: 23 }).axleN)).toEqual([5_283.3, 5_283.3]);
  });

  test('a known stiffness breaks a limit: 5,778.8 on axles of 5,500', () => {
    const found = tandem({
      raised: 3,
      more: {
        axles: [163.5, 196.5].map((at, index) =>
          axle(index + 1, 5_500, { fromCouplerM: inch(at), springRateNPerM: perInch(2_000) }),
        ),
      },
    });
    expect(comparedOn(found, 'axle')).toEqual([
      ['1', 'inside'],
      ['2', 'over'],
    ]);
  });

  test('unlike stiffness carries level in its own proportion, and the weights still balance', () => {
    const axles = [163.5, 196.5].map((at, index) =>
      axle(index + 1, 7_000, { fromCouplerM: inch(at), springRateNPerM: perInch(index === 0 ? 1_000 : 2_000) }),
    );
    const found = tandem({ more: { axles } });
    const [front = newtons(0), rear = newtons(0)] = found.axleN ?? [];
    expect(rear / front).toBeCloseTo(2, 9);
    // The empty trailer rests 2,566.7 lb on axles whose middle is (163.5 + 2 × 196.5) / 3 = 185.5 in back.
    const moment = (2_800 - 2_800 / 12) * 185.5 + 9_000 * 160;
    expect(toLbf(front) * 163.5 + toLbf(rear) * 196.5).toBeCloseTo(moment, 3);
  });
});

describe('their stiffness unknown', () => {
  test('level, it does not matter', () => {
    const found = tandem({ rate: null });
    expect(pounds(found.axleN)).toEqual([5_283.3, 5_283.3]);
    expect(tongue(found)).toBeCloseTo(1_233.3, 1);
    expect(found.unknowns).toEqual([]);
  });

  test('nose high, each load lies between those of soft and of stiff axles', () => {
    const found = tandem({ rate: null, raised: NOSE_HIGH.raised });
    const { soft, stiff } = NOSE_HIGH;
    const tenths = (one: number | undefined) => Math.round(toLbf(newtons(one ?? 0)) * 10) / 10;
    expect(found.axleN).toBeNull();
    expect(found.axleRangeN?.map(({ leastN, mostN }) => [tenths(leastN), tenths(mostN)])).toEqual([
      [stiff.onAxles[0], soft.onAxles[0]],
      [soft.onAxles[1], stiff.onAxles[1]],
    ]);
    expect([tenths(found.tongueRangeN?.leastN), tenths(found.tongueRangeN?.mostN)]).toEqual([
      soft.tongue,
      stiff.tongue,
    ]);
    expect(found).toMatchObject({ method: 'range', tongueN: null, tongueShare: null });
    // 1,283 to 1,383 of 11,800 is 10.9 to 11.7 %: inside the band whatever the stiffness.
    expect(found.tongueBand.standing).toBe('inside');
    expect(comparedOn(found, 'axle')).toEqual([
      ['1', 'inside'],
      ['2', 'inside'],
    ]);
    expect(found.unknowns.map(({ stops }) => stops).filter((stops) => stops.endsWith('-check'))).toEqual([]);
  });

  test('what only stiff axles would break stays open, and so does what even soft ones would', () => {
    for (const rating of [5_800, 5_400]) {
      const axles = [163.5, 196.5].map((at, index) => axle(index + 1, rating, { fromCouplerM: inch(at) }));
      const found = tandem({ raised: 3, more: { axles } });
      expect(found.comparisons.filter(({ standing }) => standing === 'over')).toEqual([]);
      expect(found.unknowns).toContainEqual({ lacks: 'spring-rate', stops: 'axle-check' });
    }
  });

  test('axles of two ratings, or of one known and one unknown stiffness, may be of two kinds and are not split', () => {
    const two = (first: number | null, second: number | null, ratings: readonly [number, number]) =>
      tandem({
        raised: 3,
        more: {
          axles: [163.5, 196.5].map((at, index) =>
            axle(index + 1, ratings[index] ?? null, {
              fromCouplerM: inch(at),
              springRateNPerM: index === 0 ? first : second,
            }),
          ),
        },
      });
    for (const found of [two(null, null, [7_000, 5_200]), two(perInch(2_000), null, [7_000, 7_000])]) {
      expect(found.axleN).toBeNull();
      expect(found.unknowns).toContainEqual({ lacks: 'spring-rate', stops: 'axle-loads' });
    }
  });
});

describe('how level it rode unknown', () => {
  test('no axle carries more than all of the moment alone: 1,902,000 lb·in over its place', () => {
    for (const found of [tandem({ raised: null }), tandem({ level: null })]) {
      const most = found.axleRangeN?.map(({ mostN }) => Math.round(toLbf(mostN)));
      expect(most).toEqual([Math.round(1_902_000 / 163.5), Math.round(1_902_000 / 196.5)]);
      expect(Math.round(toLbf(found.axleGroupN ?? newtons(0)))).toBe(Math.round(1_902_000 / 163.5));
      expect(found.attitude).toBeNull();
      expect(found.unknowns).toContainEqual({ lacks: 'torsion-level', stops: 'axle-check' });
    }
  });

  test('which clears a light load: 3,400 lb of cargo', () => {
    const found = tandem({ raised: null, cargo: { cargo: [item('machine', 3_400)] } });
    expect(comparedOn(found, 'axle')).toEqual([
      ['1', 'inside'],
      ['2', 'inside'],
    ]);
    expect(comparedOn(found, 'tire').map(([, standing]) => standing)).toEqual(Array(4).fill('inside'));
  });
});

describe('a scale', () => {
  test('that weighed each axle wins over heights and stiffness', () => {
    const found = tandem({ raised: -3, cargo: { scale: ticket({ axles: [4_000, 6_500], tongue: 1_300 }) } });
    expect(pounds(found.axleN)).toEqual([4_000, 6_500]);
    expect(found.method).toBe('scale');
    expect(found.comparisons.find((one) => one.limit.kind === 'axle')?.measured).toBe(true);
  });

  test('that weighed whole and tongue of S5 leaves the axles to the springs, which no scale measured', () => {
    const found = tandem({ raised: 3, cargo: { scale: ticket({ gross: 11_800, tongue: 1_333.3 }) } });
    expect(found.axleN?.map((one) => Math.round(toLbf(one)))).toEqual([4_688, 5_779]);
    expect(found.comparisons.filter((one) => one.limit.kind === 'axle').map((one) => one.measured)).toEqual([
      false,
      false,
    ]);
  });

  test('and with the stiffness unknown, to a range about them', () => {
    const found = tandem({ rate: null, raised: 3, cargo: { scale: ticket({ gross: 11_800, tongue: 1_333.3 }) } });
    const [front, rear] = found.axleRangeN ?? [];
    expect(toLbf(front?.leastN ?? newtons(0))).toBeLessThan(4_688);
    expect(toLbf(front?.mostN ?? newtons(0))).toBeGreaterThan(4_688);
    expect(toLbf(rear?.mostN ?? newtons(0))).toBeGreaterThan(5_779);
    expect(found.method).toBe('scale');
  });

  test('the split of a weighed sum is the one whose moment gives that sum', () => {
    const springs = fc
      .tuple(fc.double({ min: 3, max: 6, noNaN: true }), fc.integer({ min: 1, max: 3 }))
      .map(([first, count]) => Array.from({ length: count }, (_, index) => metres(first + index * 0.9)));
    fc.assert(
      fc.property(
        springs,
        fc.double({ min: 100_000, max: 500_000, noNaN: true }),
        fc.double({ min: 10_000, max: 500_000, noNaN: true }),
        fc.double({ min: -0.4, max: 0.4, noNaN: true }).map(metres),
        (places, rateNPerM, momentNm, raisedM) => {
          const axles = places.map((fromCouplerM) => ({ fromCouplerM, rateNPerM }));
          const on = { weightN: newtons(0), momentNm };
          const forward = springLoads(axles, on, freeOffset(axles, momentNm), { raisedM, groundM: null });
          const back = springsUnder(axles, forward.onAxlesN, raisedM);
          expect(back.lifted).toBe(forward.lifted);
          for (const [index, force] of back.axleN.entries()) {
            // A ten-millionth of the sum: the two ways lose as much to rounding where an axle barely touches.
            expect(Math.abs(force - (forward.axleN[index] as number))).toBeLessThan(forward.onAxlesN * 1e-7);
          }
        },
      ),
      { seed: 20_251_128, numRuns: 300 },
    );
  });
});

describe('a load off centre', () => {
  test('4 in to the right put 9,000 × 4 / 80 / 2 = 225 lb of each axle from left to right', () => {
    const found = tandem({ cargo: { offCentreM: inch(4) } });
    const sides = found.sideN?.map(({ leftN, rightN }) => [Math.round(toLbf(leftN)), Math.round(toLbf(rightN))]);
    expect(sides).toEqual([
      [2_417, 2_867],
      [2_417, 2_867],
    ]);
    const onTires = found.comparisons.filter((one) => one.limit.kind === 'tire');
    expect(onTires.map((one) => [one.limit.subject, Math.round(toLbf(one.loadN))])).toEqual([
      ['1L', 2_417],
      ['1R', 2_867],
      ['2L', 2_417],
      ['2R', 2_867],
    ]);
  });

  test('to the left it is the other way about, and on shared springs too', () => {
    const found = tandem({ more: { suspension: 'slipper-spring' }, cargo: { offCentreM: inch(-4) } });
    expect(found.sideN?.map(({ leftN }) => Math.round(toLbf(leftN)))).toEqual([2_867, 2_867]);
  });

  test('with the track unknown a side may carry all: it clears a light load and leaves a heavy one open', () => {
    const axles = [163.5, 196.5].map((at, index) =>
      axle(index + 1, 7_000, { fromCouplerM: inch(at), springRateNPerM: perInch(2_000) }),
    );
    const heavy = tandem({ more: { axles }, cargo: { offCentreM: inch(4) } });
    expect(heavy.sideN).toBeNull();
    expect(heavy.unknowns).toContainEqual({ lacks: 'axle-track', stops: 'tire-check' });
    const light = tandem({ more: { axles }, cargo: { offCentreM: inch(4), cargo: [item('machine', 3_000)] } });
    expect(light.unknowns).toEqual([]);
  });
});

describe('where the items of the cargo sit', () => {
  test('their own places give the balance point: 6,000 at 150 and 3,000 at 180 are 9,000 at 160', () => {
    const cargo = [
      item('machine', 6_000, { fromCouplerM: inch(150) }),
      item('attachment', 3_000, { fromCouplerM: inch(180) }),
    ];
    expect(pounds(tandem({ raised: 3, cargo: { cargo, balancePointM: null } }).axleN)).toEqual([4_687.9, 5_778.8]);
  });

  test('while one of them has none, the place of the whole counts', () => {
    const cargo = [item('machine', 6_000, { fromCouplerM: inch(100) }), item('attachment', 3_000)];
    expect(pounds(tandem({ raised: 3, cargo: { cargo } }).axleN)).toEqual([4_687.9, 5_778.8]);
    expect(tandem({ cargo: { cargo, balancePointM: null } }).unknowns).toContainEqual({
      lacks: 'balance-point',
      stops: 'tongue',
    });
  });
});

test('a nose so high that stiff axles would lift the front leaves each between nothing and all', () => {
  const found = tandem({ rate: null, raised: 30 });
  expect(found.axleRangeN?.map(({ leastN }) => leastN)).toEqual([0, 0]);
  expect(Math.round(toLbf(found.axleRangeN?.[1]?.mostN ?? newtons(0)))).toBe(Math.round(1_902_000 / 196.5));
});

describe('the tongue where only its range is known', () => {
  const tail = { cargo: [item('machine', 9_000)], balancePointM: inch(178) };

  test('a load so far back is light on the tongue however level it rides, and the most of it is told', () => {
    // With all of it on the rear axle the tongue has the most it can.
    const back = tandem({ raised: null, cargo: { ...tail, balancePointM: inch(186) } });
    expect(back.tongueBand.standing).toBe('low');
    const held = shareOutOfBand(back);
    const moment = 2_800 * 165 + 9_000 * 186;
    expect(held?.bound).toBe('at-most');
    expect(held?.share).toBeCloseTo((11_800 - moment / 196.5) / 11_800, 6);
    expect(tandem({ raised: null, cargo: tail }).tongueBand.standing).toBe('unknown');
  });

  test('an assumed stiffness never puts it out of its band', () => {
    const found = tandem({ rate: null, raised: 3, cargo: tail });
    expect(toLbf(found.tongueRangeN?.mostN ?? newtons(1e9))).toBeLessThan(0.1 * 11_800);
    expect(found.tongueBand.standing).toBe('unknown');
    expect(shareOutOfBand(found)).toBeNull();
  });

  test('a tongue that is known is held as it is', () => {
    expect(shareOutOfBand(tandem({ cargo: tail }))).toMatchObject({ bound: null });
    expect(shareOutOfBand(tandem())).toBeNull();
  });
});
