import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  checkTieDowns,
  securingForces,
  type TieDownWay,
  type Tied,
  tieDownNeed,
} from '../../../src/rules/load/tie-downs.js';
import {
  CHAIN_GRADES,
  type ChainGrade,
  type ChainSize,
  chainWorkingLoad,
  type WireRopeSize,
  weakestOf,
  webbingWorkingLoad,
  wireRopeWorkingLoad,
} from '../../../src/rules/load/working-load.js';
import { toLbf } from '../../../src/rules/units/force.js';
import { feet, inch } from '../../../src/rules/units/length.js';
import { kg, lb, toLb } from '../../../src/rules/units/mass.js';
import reference from '../reference/tie-downs.json' with { type: 'json' };

interface Case {
  readonly id: string;
  readonly source: string;
  readonly input: {
    readonly lengthFt?: number;
    readonly weightLb?: number;
    readonly cargoLb?: number;
    readonly blockedForward?: boolean;
    readonly wheelsOrTracks?: boolean;
    readonly tiedowns?: readonly { readonly count: number; readonly wllLb: number; readonly path: string }[];
    readonly components?: readonly { readonly wllLb: number }[];
    readonly material?: string;
    readonly size?: string;
    readonly grade?: string | null;
    readonly widthIn?: number;
    readonly compare?: readonly string[];
  };
  readonly expected: Readonly<Record<string, number | boolean>>;
}

const CASES = reference.cases as unknown as readonly Case[];
const named = (start: (one: Case) => boolean) => CASES.filter(start).map((one): [string, Case] => [one.id, one]);

const WAYS: Readonly<Record<string, TieDownWay>> = {
  'vehicle-to-cargo': 'direct',
  'around-same-side': 'around',
  'side-to-side-over': 'over',
};

function tied({ input }: Case): Tied {
  const pounds = input.cargoLb ?? input.weightLb ?? 0;
  return {
    massKg: lb(pounds),
    lengthM: input.lengthFt === undefined ? null : feet(input.lengthFt),
    blockedAhead: input.blockedForward ?? false,
    machineKg: input.wheelsOrTracks === true ? lb(pounds) : null,
  };
}

test('every published case is tested here', () => {
  expect(CASES).toHaveLength(24);
  const seen = CASES.filter(({ id }) => /^(tdn|agg|wll)-/.test(id));
  expect(seen).toHaveLength(24);
});

describe('how many (49 CFR 393.110)', () => {
  test.each(named(({ id }) => id.startsWith('tdn-')))('%s', (_id, one) => {
    expect(tieDownNeed(tied(one)).count).toBe(one.expected.minTiedowns);
  });

  test('with the length unknown it says that more may be needed', () => {
    const need = tieDownNeed({ massKg: lb(3_000), lengthM: null, blockedAhead: false, machineKg: null });
    expect(need).toMatchObject({ count: 2, because: 'length-unknown' });
  });

  test('exactly thirty feet are two and two more, rounding or not', () => {
    const of = (lengthFt: number) =>
      tieDownNeed({ massKg: lb(9_000), lengthM: feet(lengthFt), blockedAhead: false, machineKg: null }).count;
    expect([of(30), of(30.01)]).toEqual([4, 5]);
  });
});

describe('how strong together (49 CFR 393.106, 393.130)', () => {
  const cases = named(({ input }) => input.tiedowns !== undefined);

  test.each(cases)('%s', (_id, one) => {
    const need = tieDownNeed(tied(one));
    const used = one.input.tiedowns ?? [];
    const check = checkTieDowns(
      need,
      used.map(({ count, wllLb, path }) => ({
        count,
        workingLoadKg: lb(wllLb),
        way: WAYS[path] as TieDownWay,
      })),
    );
    // Exact numbers; nine digits leave room for the rounding of pounds into kilograms.
    expect(toLb(need.workingLoadKg)).toBeCloseTo(one.expected.required as number, 9);
    expect(toLb(check.workingLoadKg)).toBeCloseTo(one.expected.aggregate as number, 9);
    expect(check.standing === 'enough').toBe(one.expected.ok);
    if (one.expected.minTiedowns !== undefined) expect(need.count).toBe(one.expected.minTiedowns);
  });

  test('the cases that count strength number six', () => {
    expect(cases).toHaveLength(6);
  });

  test('a machine of 10,000 lb needs four by its weight, a longer one more by its length', () => {
    const machine = (lengthFt: number) =>
      tieDownNeed({ massKg: lb(10_000), lengthM: feet(lengthFt), blockedAhead: false, machineKg: lb(10_000) });
    expect(machine(15)).toMatchObject({ count: 4, because: 'heavy-machine' });
    expect(machine(31)).toMatchObject({ count: 5, because: 'length' });
  });

  test('tie-downs nobody rated hold nothing until they are, and are not called short', () => {
    const need = tieDownNeed({ massKg: lb(9_000), lengthM: feet(9), blockedAhead: false, machineKg: null });
    const check = checkTieDowns(need, [{ count: 4, workingLoadKg: null, way: 'direct' }]);
    expect(check).toMatchObject({ workingLoadKg: 0, unrated: 4, standing: 'unrated' });
    expect(checkTieDowns(need, [{ count: 1, workingLoadKg: null, way: 'direct' }]).standing).toBe('short');
  });
});

describe('what one may hold (49 CFR 393.108)', () => {
  test.each(named(({ input }) => input.material === 'chain' && input.compare === undefined))('%s', (_id, one) => {
    const held = chainWorkingLoad(one.input.size as ChainSize, (one.input.grade ?? null) as ChainGrade | null);
    expect(toLb(held ?? kg(0))).toBeCloseTo(one.expected.wllLb as number, 9);
  });

  test.each(named(({ input }) => input.compare !== undefined))(
    '%s: the higher grade is the weaker chain',
    (_id, one) => {
      for (const grade of one.input.compare ?? []) {
        const held = chainWorkingLoad(one.input.size as ChainSize, grade as ChainGrade);
        expect(toLb(held ?? kg(0))).toBeCloseTo(one.expected[grade] as number, 9);
      }
    },
  );

  test.each(named(({ input }) => input.material === 'webbing'))('%s', (_id, one) => {
    const held = webbingWorkingLoad(inch(one.input.widthIn ?? 0));
    expect(toLb(held ?? kg(0))).toBeCloseTo(one.expected.wllLb as number, 9);
  });

  test.each(named(({ input }) => input.components !== undefined))('%s', (_id, one) => {
    const parts = (one.input.components ?? []).map(({ wllLb }) => lb(wllLb));
    expect(toLb(weakestOf(parts) ?? kg(0))).toBeCloseTo(one.expected.tiedownWll as number, 9);
    expect(weakestOf([...parts, null])).toBeNull();
  });

  test('every row of the three tables', () => {
    for (const grade of CHAIN_GRADES) {
      for (const [size, pounds] of Object.entries(reference.chainWllLb[grade])) {
        expect(toLb(chainWorkingLoad(size as ChainSize, grade) ?? kg(0))).toBeCloseTo(pounds, 9);
      }
    }
    expect(chainWorkingLoad('7/16', 'grade80')).toBeNull();
    for (const [width, pounds] of Object.entries(reference.webbingWllLb)) {
      const inches = width === '1 3/4' ? 1.75 : Number(width);
      expect(toLb(webbingWorkingLoad(inch(inches)) ?? kg(0))).toBeCloseTo(pounds, 9);
    }
    for (const [size, pounds] of Object.entries(reference.wireRope6x37Lb)) {
      expect(toLb(wireRopeWorkingLoad(size as WireRopeSize))).toBeCloseTo(pounds, 9);
    }
  });

  test('a strap between two widths takes the narrower row, one below them all has none', () => {
    expect(toLb(webbingWorkingLoad(inch(2.9)) ?? kg(0))).toBeCloseTo(2_000, 9);
    expect(webbingWorkingLoad(inch(1))).toBeNull();
  });
});

test('what securing must withstand: 0.8 g forward, half rearward and sideways (49 CFR 393.102)', () => {
  const { forward_g, rearward_g, lateral_g } = reference.forces;
  const forces = securingForces(lb(10_000));
  expect(toLbf(forces.forwardN)).toBeCloseTo(forward_g * 10_000, 6);
  expect(toLbf(forces.rearwardN)).toBeCloseTo(rearward_g * 10_000, 6);
  expect(toLbf(forces.sidewaysN)).toBeCloseTo(lateral_g * 10_000, 6);
});

test('a heavier or longer cargo never needs fewer or weaker tie-downs', () => {
  const cargo = fc.record({
    pounds: fc.integer({ min: 100, max: 30_000 }),
    feetLong: fc.double({ min: 1, max: 50, noNaN: true }),
    blockedAhead: fc.boolean(),
    isMachine: fc.boolean(),
  });
  const need = (one: { pounds: number; feetLong: number; blockedAhead: boolean; isMachine: boolean }) =>
    tieDownNeed({
      massKg: lb(one.pounds),
      lengthM: feet(one.feetLong),
      blockedAhead: one.blockedAhead,
      machineKg: one.isMachine ? lb(one.pounds) : null,
    });
  fc.assert(
    fc.property(cargo, fc.integer({ min: 0, max: 5_000 }), fc.double({ min: 0, max: 10, noNaN: true }), (one, w, l) => {
      const before = need(one);
      const after = need({ ...one, pounds: one.pounds + w, feetLong: one.feetLong + l });
      expect(after.count).toBeGreaterThanOrEqual(before.count);
      expect(after.workingLoadKg).toBeGreaterThanOrEqual(before.workingLoadKg);
    }),
    { seed: 3, numRuns: 200 },
  );
});
