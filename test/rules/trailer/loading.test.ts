import { describe, expect, it } from 'vitest';
import { checkJacks } from '../../../src/rules/trailer/jacks.js';
import { loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { loadingOf } from '../../../src/rules/trailer/loading.js';
import { parkingRange } from '../../../src/rules/trailer/machine-room.js';
import { lbf, newtons, toLbf } from '../../../src/rules/units/force.js';
import { feet, inch, metres, toInch } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { G1 } from '../reference/geometry-cases.js';
import { build, placedAxles, unknownBuild } from '../sample-facts.js';

const deck = { ...unknownBuild().deck, frontFromCouplerM: inch(60), lengthM: inch(192), heightM: inch(G1.height) };

describe('where a machine may stand', () => {
  const on = (lengthM: number | null, balanceM: number | null) =>
    parkingRange(build({ deck }), {
      lengthM: lengthM === null ? null : inch(lengthM),
      balancePointM: balanceM === null ? null : inch(balanceM),
    });
  const inches = (range: ReturnType<typeof on>) => range && [toInch(range.fromM), toInch(range.toM)];

  it('is the deck less what it has ahead of and behind its balance point', () => {
    expect(inches(on(120, 50))).toEqual([expect.closeTo(110, 9), expect.closeTo(182, 9)]);
  });

  it('is the whole deck while its length or balance point is unknown', () => {
    expect(inches(on(null, 50))).toEqual([expect.closeTo(60, 9), expect.closeTo(252, 9)]);
    expect(inches(on(120, null))).toEqual([expect.closeTo(60, 9), expect.closeTo(252, 9)]);
  });

  it('on a gravity tilt is no further back than the pivot: behind it the deck would not lie down', () => {
    const tilt = build({ body: 'gravity-tilt', deck: { ...deck, pivotFromCouplerM: inch(170) } });
    expect(inches(parkingRange(tilt, { lengthM: inch(120), balancePointM: inch(50) }))).toEqual([
      expect.closeTo(110, 9),
      expect.closeTo(170, 9),
    ]);
    expect(parkingRange(tilt, { lengthM: inch(130), balancePointM: inch(120) })).toBeNull();
  });

  it('is nowhere for one longer than the deck', () => {
    expect(on(200, 90)).toBeNull();
    expect(parkingRange(build(), { lengthM: null, balancePointM: null })).toBeNull();
  });
});

describe('what is found of a build while a machine drives on', () => {
  const limits = (more: Parameters<typeof build>[0]) =>
    loadLimits({ build: build(more), tires: [], coldPressures: new Map(), towVehicle: null });
  const rear = { ...unknownBuild().rear, rampLengthM: inch(G1.ramp), dovetailM: metres(0) };
  const comes = { balancePointM: null, wheelbaseM: null, clearanceM: null };

  it('the slope of its ramps and the friction they ask for: G1', () => {
    const sheet = build({ deck, rear });
    const { slope } = loadingOf(sheet, limits({ deck, rear }), comes, lb(8_000));
    expect(((slope?.angle ?? 0) * 180) / Math.PI).toBeCloseTo(G1.degrees, 2);
    expect(slope?.friction).toBeCloseTo(G1.friction, 3);
    expect(slope?.isMost).toBe(false);
  });

  it('a tilted deck is its own ramp, and where nothing is known nothing is said', () => {
    const tilted = { ...deck, pivotFromCouplerM: inch(152) };
    const tilt = build({ body: 'gravity-tilt', deck: tilted });
    // 34 in over 100 in from the pivot to the rear edge.
    const { slope } = loadingOf(tilt, limits({ body: 'gravity-tilt', deck: tilted }), comes, lb(8_000));
    expect(slope?.angle).toBeCloseTo(Math.asin(0.34), 9);
    expect(slope?.isMost).toBe(true);
    expect(loadingOf(unknownBuild(), limits({}), comes, lb(8_000))).toEqual({
      climb: null,
      slope: null,
      crest: null,
      tilt: null,
    });
  });

  it('ramps too short to reach the ground have no slope', () => {
    const short = { ...rear, rampLengthM: inch(30) };
    expect(loadingOf(build({ deck, rear: short }), limits({ deck, rear: short }), comes, lb(8_000)).slope).toBeNull();
  });

  it('a deck that ends ahead of the axles needs no support', () => {
    const ahead = { ...deck, lengthM: feet(8) };
    const more = {
      deck: ahead,
      axles: placedAxles(180),
      empty: { massKg: lb(2_800), basis: 'weighed' as const, tongueN: lbf(233) },
      rear: { ...rear, stabilizers: true },
    };
    const { climb } = loadingOf(build(more), limits(more), comes, lb(8_000));
    expect(climb?.loads).toMatchObject({ liftN: 0, support: null });
  });
});

describe('jacks', () => {
  const jacks = { count: 2, liftKg: lb(5_000), supportKg: lb(12_000), fromCouplerM: inch(60) };

  it('lift and hold what they do together', () => {
    // 4,000 lb × 300 / 240 = 5,000 lb on two of 5,000.
    const check = checkJacks({ jacks }, lbf(4_000), inch(300));
    expect(toLbf(check?.loadN ?? newtons(0))).toBeCloseTo(5_000, 6);
    expect(toLbf(check?.liftN ?? newtons(0))).toBeCloseTo(10_000, 6);
    expect(check).toMatchObject({ short: null, isLeast: false });
  });

  it('past what they hold says so before what they lift', () => {
    expect(checkJacks({ jacks }, lbf(9_000), inch(300))?.short).toBe('lift');
    expect(checkJacks({ jacks }, lbf(30_000), inch(300))?.short).toBe('support');
  });

  it('with their place unknown the tongue weight is the least they carry', () => {
    const check = checkJacks({ jacks: { ...jacks, fromCouplerM: null } }, lbf(4_000), inch(300));
    expect(check).toMatchObject({ isLeast: true, loadN: lbf(4_000) });
  });

  it('without a capacity, or without a jack, there is nothing to say', () => {
    expect(checkJacks({ jacks: { ...jacks, liftKg: null, supportKg: null } }, lbf(1), inch(300))).toBeNull();
    expect(checkJacks({ jacks: { ...jacks, count: 0 } }, lbf(1), inch(300))).toBeNull();
  });
});
