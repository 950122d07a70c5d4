import { describe, expect, test } from 'vitest';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import type { Load } from '../../../src/rules/facts/load.js';
import type { Part } from '../../../src/rules/facts/part.js';
import { DEFAULT_POLICY } from '../../../src/rules/facts/yard-policy.js';
import type { LimitKind } from '../../../src/rules/load/limit.js';
import { checkLoad, type LoadCheck } from '../../../src/rules/load/load-check.js';
import { type LoadLimitsInput, loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { lbf, toLbf } from '../../../src/rules/units/force.js';
import { inch } from '../../../src/rules/units/length.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { type Kilopascals, psi } from '../../../src/rules/units/pressure.js';
import reference from '../reference/weights-and-ratings.json' with { type: 'json' };
import { axle, build, item, load, placedAxles, ticket, tire, tires, unknownBuild } from '../sample-facts.js';

function check(trailer: BuildSheet, wheels: readonly Part[], carried: Load, more: Partial<LoadLimitsInput> = {}) {
  const limits = loadLimits({ build: trailer, tires: wheels, coldPressures: new Map(), towVehicle: null, ...more });
  return checkLoad(limits, carried, DEFAULT_POLICY);
}

/** What was compared under one kind of limit: subject, load, margin in lb to a tenth, standing. */
function compared(found: LoadCheck, kind: LimitKind) {
  const tenth = (force: Parameters<typeof toLbf>[0]) => Math.round(toLbf(force) * 10) / 10;
  return found.comparisons
    .filter((one) => one.limit.kind === kind)
    .map((one) => [one.limit.subject, tenth(one.loadN), tenth(one.marginN), one.standing]);
}

function faults(found: LoadCheck) {
  return found.comparisons.filter((one) => one.standing !== 'inside').map((one) => one.limit.kind);
}

function soft(pressure: number, positions: readonly string[]): ReadonlyMap<string, Kilopascals> {
  return new Map(positions.map((position) => [position, psi(pressure)]));
}

const FOUR = ['1L', '1R', '2L', '2R'];

describe('a machine that outgrew its trailer', () => {
  const bucket = item('wider bucket', 310);
  const everything = [item('track loader', 9_920), bucket, item('grapple', 1_050), item('chains', 160)];
  const mud = item('mud', 200, { basis: 'assumed' });

  test('15,540 lb on a 14,000 lb plate is 1,540 over', () => {
    const found = check(build(), tires(2), load({ cargo: [...everything, mud] }));
    expect(toLb(found.grossKg ?? lb(0))).toBeCloseTo(15_540, 6);
    expect(compared(found, 'plate')).toEqual([[null, 15_540, -1_540, 'over']]);
  });

  test('each thing left behind takes its own weight off, and 20 lb under is too near to go unweighed', () => {
    const standard = item('track loader', 9_920);
    const chains = item('chains', 160);
    const plate = (cargo: Load['cargo']) => compared(check(build(), tires(2), load({ cargo })), 'plate')[0];
    expect(plate([standard, bucket, chains, mud])).toEqual([null, 14_490, -490, 'over']);
    expect(plate([standard, chains, mud])).toEqual([null, 14_180, -180, 'over']);
    expect(plate([item('track loader', 9_920, { basis: 'stated' }), chains])).toEqual([null, 13_980, 20, 'near']);
  });

  test('the same 13,980 lb is plainly inside once every weight in it was weighed', () => {
    const found = check(build(), tires(2), load({ cargo: [item('track loader', 9_920), item('chains', 160)] }));
    expect(compared(found, 'plate')).toEqual([[null, 13_980, 20, 'inside']]);
    expect(found.comparisons.find((one) => one.limit.kind === 'plate')?.measured).toBe(true);
  });

  test('with the empty weight only from a brochure it is too near again', () => {
    const stated = build({ empty: { massKg: lb(3_900), basis: 'stated', tongueN: null } });
    const found = check(stated, tires(2), load({ cargo: [item('track loader', 9_920), item('chains', 160)] }));
    expect(compared(found, 'plate')).toEqual([[null, 13_980, 20, 'near']]);
  });

  test('a weigh ticket settles a sum of guesses', () => {
    const guessed = [item('track loader', 9_920, { basis: 'stated' }), mud];
    const found = check(build(), tires(2), load({ cargo: guessed, scale: ticket({ gross: 13_980 }) }));
    expect(compared(found, 'plate')).toEqual([[null, 13_980, 20, 'inside']]);
    expect(toLb(found.cargoKg ?? lb(0))).toBeCloseTo(10_080, 6);
  });

  test('exactly the rating is not over it', () => {
    const found = check(build(), tires(2), load({ scale: ticket({ gross: 14_000 }) }));
    expect(compared(found, 'plate')).toEqual([[null, 14_000, 0, 'inside']]);
  });
});

test('the plate holds though the axles add up to more', () => {
  const fence = build({
    plate: { gvwrKg: lb(9_990), coldPressureKpa: psi(80) },
    empty: { massKg: lb(2_980), basis: 'weighed', tongueN: null },
  });
  const cargo = [item('excavator', 7_650), item('bucket set', 340), item('chains', 120)];
  const found = check(fence, tires(2), load({ cargo }));
  expect(compared(found, 'plate')).toEqual([[null, 11_090, -1_100, 'over']]);
  expect(compared(found, 'axle-group')).toEqual([[null, 11_090, 2_910, 'inside']]);
  expect(found.method).toBe('bound');
  expect(faults(found)).toEqual(['plate']);
});

describe('a tire at its limit', () => {
  // 49 CFR 393.75(g): not above the load marked on the sidewall.
  test.each(reference.cases.filter((one) => one.id.startsWith('tire-')).map((one) => [one.id, one] as const))(
    '%s',
    (_id, { input, expected }) => {
      const wheels = tires(1, { maxLoadSingleKg: lb(input.tireMaxLb ?? 0) });
      const onAxle = (input.loadOnTireLb ?? 0) * 2;
      const found = check(build({ axles: [axle(1, 8_000)] }), wheels, load({ scale: ticket({ axles: [onAxle] }) }));
      expect(compared(found, 'tire').map(([, , , standing]) => standing !== 'over')).toEqual([
        expected.ok,
        expected.ok,
      ]);
    },
  );
});

describe('soft tires', () => {
  const carried = load({ scale: ticket({ gross: 12_100, tongue: 1_450 }) });

  test('at 50 psi each of four carries 2,662.5 lb against 2,600: 62.5 over', () => {
    const found = check(build(), tires(2), carried, { coldPressures: soft(50, FOUR) });
    expect(toLbf(found.axleGroupN ?? lbf(0))).toBeCloseTo(10_650, 6);
    expect(compared(found, 'tire')).toEqual(FOUR.map((position) => [position, 2_662.5, -62.5, 'over']));
    expect(found.comparisons.find((one) => one.limit.kind === 'tire')?.limit.origin).toBe('tire-table');
  });

  test('no other fault is invented', () => {
    const found = check(build(), tires(2), carried, { coldPressures: soft(50, FOUR) });
    expect(new Set(faults(found))).toEqual(new Set(['tire']));
    expect(found.tongueBand.standing).toBe('inside');
    expect(found.unknowns).toEqual([]);
  });

  test('at 65 psi they carry 3,000 and at the plate pressure 3,420', () => {
    const at65 = check(build(), tires(2), carried, { coldPressures: soft(65, FOUR) });
    expect(compared(at65, 'tire')[0]).toEqual(['1L', 2_662.5, 337.5, 'inside']);
    expect(compared(check(build(), tires(2), carried), 'tire')[0]).toEqual(['1L', 2_662.5, 757.5, 'inside']);
  });

  test('one soft tire is named alone', () => {
    const found = check(build(), tires(2), carried, { coldPressures: soft(50, ['2R']) });
    expect(compared(found, 'tire').filter(([, , , standing]) => standing === 'over')).toEqual([
      ['2R', 2_662.5, -62.5, 'over'],
    ]);
  });

  test('softer than any published row, its capacity is unknown and no tire of it is compared', () => {
    const found = check(build(), tires(2), carried, { coldPressures: soft(20, ['1L', '2R']) });
    expect(compared(found, 'tire').map(([position]) => position)).toEqual(['1R', '2L']);
    expect(found.unknowns).toEqual([{ lacks: 'tire-table-row', stops: 'tire-check', subject: '1L,2R' }]);
  });

  test('a plate that asks less air than the sidewall is taken at its word', () => {
    const plate = { gvwrKg: lb(14_000), coldPressureKpa: psi(50) };
    expect(compared(check(build({ plate }), tires(2), carried), 'tire')[0]).toEqual(['1L', 2_662.5, -62.5, 'over']);
  });
});

describe('torsion axles', () => {
  const torsion = build({ suspension: 'torsion' });

  test('an axle ticket shows the rear axle 200 over and its tires 180 over, though the group is under', () => {
    const found = check(torsion, tires(2), load({ scale: ticket({ tongue: 1_500, axles: [3_700, 7_200] }) }));
    expect(compared(found, 'axle-group')).toEqual([[null, 10_900, 3_100, 'inside']]);
    expect(compared(found, 'axle')).toEqual([
      ['1', 3_700, 3_300, 'inside'],
      ['2', 7_200, -200, 'over'],
    ]);
    expect(compared(found, 'tire').slice(2)).toEqual([
      ['2L', 3_600, -180, 'over'],
      ['2R', 3_600, -180, 'over'],
    ]);
    expect(toLb(found.grossKg ?? lb(0))).toBeCloseTo(12_400, 6);
    // 1,500 of 12,400.
    expect(found.tongueShare).toBeCloseTo(0.121, 3);
    expect(found.unknowns).toEqual([]);
  });

  test('without one they are not split: each axle may carry nearly all', () => {
    const found = check(torsion, tires(2), load({ scale: ticket({ gross: 12_400, tongue: 1_500 }) }));
    expect(found.axleN).toBeNull();
    expect(compared(found, 'axle-group')).toEqual([[null, 10_900, 3_100, 'inside']]);
    expect([...compared(found, 'axle'), ...compared(found, 'tire')]).toEqual([]);
    expect(found.unknowns).toEqual([
      { lacks: 'torsion-level', stops: 'axle-loads' },
      { lacks: 'torsion-level', stops: 'axle-check' },
      { lacks: 'torsion-level', stops: 'tire-check' },
    ]);
  });

  test('a load that one axle and two tires could carry alone is cleared all the same', () => {
    const found = check(torsion, tires(2), load({ scale: ticket({ gross: 6_000, tongue: 700 }) }));
    expect(compared(found, 'axle').map(([, , , standing]) => standing)).toEqual(['inside', 'inside']);
    expect(compared(found, 'tire').map(([, pounds]) => pounds)).toEqual([2_650, 2_650, 2_650, 2_650]);
    expect(found.unknowns).toEqual([{ lacks: 'torsion-level', stops: 'axle-loads' }]);
  });

  test('a single torsion axle has nothing to share', () => {
    const single = build({ suspension: 'torsion', axles: [axle(1, 7_000)] });
    const found = check(single, tires(1), load({ scale: ticket({ gross: 6_000, tongue: 700 }) }));
    expect(compared(found, 'axle')).toEqual([['1', 5_300, 1_700, 'inside']]);
    expect(found.unknowns).toEqual([]);
  });

  test('the same totals on equalized springs are 5,450 lb an axle and raise no alarm', () => {
    const found = check(build(), tires(2), load({ scale: ticket({ gross: 12_400, tongue: 1_500 }) }));
    expect(found.axleN?.map((one) => Math.round(toLbf(one)))).toEqual([5_450, 5_450]);
    expect(faults(found)).toEqual([]);
    expect(found.unknowns).toEqual([]);
  });

  test('an axle ticket wins over the even split of equalized springs too', () => {
    const found = check(build(), tires(2), load({ scale: ticket({ axles: [3_700, 7_200], tongue: 1_500 }) }));
    expect(compared(found, 'axle')[1]).toEqual(['2', 7_200, -200, 'over']);
  });
});

describe('a weaker tire on one corner', () => {
  const mixed = [
    ...tires(2).filter((one) => one.position !== '2L'),
    tire('2L', { maxLoadSingleKg: lb(3_000), loadRange: 'D', maxColdPressureKpa: psi(65) }),
  ];

  test('12,500 lb on equalized axles is 125 too many for it and not for the others', () => {
    const found = check(build(), mixed, load({ scale: ticket({ axles: [6_250, 6_250], tongue: 1_400 }) }));
    expect(compared(found, 'tire')).toEqual([
      ['1L', 3_125, 295, 'inside'],
      ['1R', 3_125, 295, 'inside'],
      ['2L', 3_125, -125, 'over'],
      ['2R', 3_125, 295, 'inside'],
    ]);
  });

  test('12,000 lb is what the group carries', () => {
    const found = check(build(), mixed, load({ scale: ticket({ gross: 13_400, tongue: 1_400 }) }));
    expect(compared(found, 'tire')[2]).toEqual(['2L', 3_000, 0, 'inside']);
  });
});

describe('where the load sits', () => {
  // An empty trailer of 2,800 lb at 165 in, axles at 180: its tongue is 2,800 × 15 / 180.
  const empty = { massKg: lb(2_800), basis: 'weighed' as const, tongueN: lbf((2_800 * 15) / 180) };
  const trailer = build({ empty, axles: placedAxles(180) });
  const sitting = (at: number | null, more: Partial<BuildSheet> = {}) =>
    check(
      { ...trailer, ...more },
      tires(2),
      load({ cargo: [item('machine', 9_000)], balancePointM: at === null ? null : inch(at) }),
    );

  test('statics give the tongue and the axles: 833.3 and 10,966.7 lb', () => {
    const found = sitting(168);
    expect(toLbf(found.tongueN ?? lbf(0))).toBeCloseTo(833.3, 1);
    expect(toLbf(found.axleGroupN ?? lbf(0))).toBeCloseTo(10_966.7, 1);
    expect(found.axleN?.map((one) => toLbf(one))).toEqual([expect.closeTo(5_483.3, 1), expect.closeTo(5_483.3, 1)]);
    expect(found.method).toBe('statics');
  });

  test('7 % on the tongue is below a bumper pull’s band, 12 % inside, 17 % above', () => {
    expect(sitting(168).tongueBand).toEqual({ low: 0.1, high: 0.15, standing: 'low' });
    expect(sitting(156.35).tongueBand.standing).toBe('inside');
    expect(sitting(145).tongueBand.standing).toBe('high');
  });

  test('a tongue from statics is never called measured', () => {
    const found = sitting(156);
    expect(found.comparisons.filter((one) => one.measured).map((one) => one.limit.kind)).toEqual(['plate', 'coupler']);
  });

  test('behind the axles the tongue is negative and the axles carry more than the gross', () => {
    const found = sitting(200);
    expect(found.tongueN).toBeLessThan(0);
    expect(found.axleGroupN).toBeGreaterThan(lbf(11_800));
  });

  test('each missing fact is named', () => {
    const lacking = (more: Partial<BuildSheet>, at: number | null) =>
      sitting(at, more)
        .unknowns.filter((one) => one.stops === 'tongue')
        .map((one) => one.lacks);
    expect(lacking({}, null)).toEqual(['balance-point']);
    expect(lacking({ axles: [axle(1, 7_000), axle(2, 7_000)] }, 168)).toEqual(['axle-places']);
    expect(lacking({ empty: { ...empty, tongueN: null } }, 168)).toEqual(['empty-tongue']);
    expect(lacking({ suspension: null }, null)).toEqual(['suspension', 'balance-point']);
    expect(lacking({ suspension: 'torsion' }, 168)).toEqual(['torsion-level']);
  });

  test('a vertical rating of coupler or hitch is held against the tongue', () => {
    const hitch = { ...trailer.hitch, couplerTongueN: lbf(1_000) };
    const towVehicle = {
      id: 'truck-1',
      name: 'Truck',
      gvwrKg: lb(11_200),
      massKg: null,
      gcwrKg: null,
      hitchRatingKg: lb(11_000),
      hitchTongueN: lbf(1_200),
      ballSizeM: null,
      ballHeightM: null,
    };
    const carried = load({ cargo: [item('machine', 9_000)], balancePointM: inch(156.35) });
    const found = check({ ...trailer, hitch }, tires(2), carried, { towVehicle });
    expect(compared(found, 'coupler-tongue')).toEqual([
      [null, expect.closeTo(1_416, 0), expect.closeTo(-416, 0), 'over'],
    ]);
    expect(compared(found, 'tow-hitch')).toEqual([[null, 11_800, -800, 'over']]);
    expect(compared(found, 'tow-hitch-tongue')[0]?.[3]).toBe('over');
  });
});

test('a tongue that is left over from guesses and an axle ticket is not measured, the axles are', () => {
  const hitch = { ...build().hitch, couplerTongueN: lbf(1_000) };
  const guessed = load({
    cargo: [item('machine', 8_080, { basis: 'stated' })],
    scale: ticket({ axles: [5_500, 5_500] }),
  });
  const found = check(build({ hitch }), tires(2), guessed);
  expect(compared(found, 'coupler-tongue')).toEqual([[null, 980, 20, 'near']]);
  expect(found.comparisons.filter((one) => one.measured).map((one) => one.limit.kind)).toEqual([
    'axle-group',
    'axle',
    'axle',
    'tire',
    'tire',
    'tire',
    'tire',
  ]);
});

describe('while the tongue is unknown the axles are taken to carry everything', () => {
  test('that clears what it can', () => {
    const found = check(build(), tires(2), load({ cargo: [item('machine', 6_000)] }));
    expect(found).toMatchObject({ method: 'bound', tongueN: null, axleN: null, tongueShare: null });
    expect(compared(found, 'axle')).toEqual([
      ['1', 4_950, 2_050, 'inside'],
      ['2', 4_950, 2_050, 'inside'],
    ]);
    expect(compared(found, 'tire')[0]).toEqual(['1L', 2_475, 945, 'inside']);
    expect(found.tongueBand.standing).toBe('unknown');
    expect(found.unknowns.filter((one) => one.stops.endsWith('-check'))).toEqual([]);
  });

  test('what it would break is unknown, not over: four 3,420 lb tires may well carry their part of 13,980', () => {
    const found = check(build(), tires(2), load({ cargo: [item('machine', 10_080)] }));
    expect(compared(found, 'tire')).toEqual([]);
    expect(found.unknowns).toContainEqual({ lacks: 'balance-point', stops: 'tire-check' });
    expect(faults(found)).toEqual([]);
  });
});

describe('what nobody has said', () => {
  test('a build of which nothing is known compares nothing and names what is missing', () => {
    const found = check(unknownBuild(), [], load());
    expect(found).toMatchObject({
      grossKg: null,
      cargoKg: null,
      tongueN: null,
      axleGroupN: null,
      method: null,
      comparisons: [],
    });
    expect(found.unknowns).toEqual([
      { lacks: 'gvwr', stops: 'plate-check' },
      { lacks: 'axle-ratings', stops: 'axle-check' },
      { lacks: 'tire-ratings', stops: 'tire-check' },
      { lacks: 'coupler-rating', stops: 'coupler-check' },
      { lacks: 'empty-mass', stops: 'gross' },
      { lacks: 'cargo-mass', stops: 'gross' },
    ]);
  });

  test('an empty list of cargo is not an empty deck', () => {
    expect(check(build(), tires(2), load())).toMatchObject({ grossKg: null, cargoKg: null });
  });

  test('a wheel with no tire recorded, and an axle with no rating, are named', () => {
    const trailer = build({ axles: [axle(1, null), axle(2, 7_000)] });
    const wheels = tires(2).filter((one) => one.position !== '2R');
    const found = check(trailer, wheels, load({ cargo: [item('machine', 3_000)] }));
    expect(found.unknowns).toContainEqual({ lacks: 'axle-ratings', stops: 'axle-check', subject: '1' });
    expect(found.unknowns).toContainEqual({ lacks: 'tire-ratings', stops: 'tire-check', subject: '2R' });
    expect(compared(found, 'axle-group')).toEqual([]);
  });

  test('an unknown hitch has no band to be outside of', () => {
    const trailer = build({ hitch: unknownBuild().hitch });
    const found = check(trailer, tires(2), load({ scale: ticket({ gross: 10_000, tongue: 100 }) }));
    expect(found.tongueBand.standing).toBe('unknown');
  });
});

describe('axles of different strength', () => {
  const uneven = build({ axles: [axle(1, 7_000), axle(2, 5_200)] });

  test('on equalized springs the weaker sets the group', () => {
    const found = check(uneven, tires(2), load({ scale: ticket({ gross: 11_000, tongue: 500 }) }));
    expect(compared(found, 'axle-group')).toEqual([[null, 10_500, -100, 'over']]);
  });

  test('torsion axles add up', () => {
    const found = check(
      { ...uneven, suspension: 'torsion' },
      tires(2),
      load({ scale: ticket({ gross: 11_000, tongue: 500 }) }),
    );
    expect(compared(found, 'axle-group')).toEqual([[null, 10_500, 1_700, 'inside']]);
  });

  test('the lesser of plate and axle maker holds, and says whose it is', () => {
    const derated = build({
      axles: [axle(1, 7_000, { ratingKg: lb(6_000) }), axle(2, 7_000, { ratingKg: lb(8_000) })],
    });
    const found = check(derated, tires(2), load({ scale: ticket({ gross: 11_000, tongue: 500 }) }));
    const limits = found.comparisons.filter((one) => one.limit.kind === 'axle').map((one) => one.limit);
    expect(limits).toMatchObject([
      { subject: '1', origin: 'axle-maker', limitN: lbf(6_000) },
      { subject: '2', origin: 'plate', limitN: lbf(7_000) },
    ]);
  });
});

test('dual wheels share their axle among four tires at the dual rating', () => {
  const duals = build({
    axles: [axle(1, 10_000, { wheelsPerSide: 2 })],
    plate: { gvwrKg: null, coldPressureKpa: null },
  });
  const wheels = ['1LO', '1LI', '1RI', '1RO'].map((position) => tire(position, { maxLoadDualKg: lb(2_400) }));
  const found = check(duals, wheels, load({ scale: ticket({ gross: 11_000, tongue: 1_200 }) }));
  expect(compared(found, 'tire')).toEqual(
    ['1LO', '1LI', '1RI', '1RO'].map((position) => [position, 2_450, -50, 'over']),
  );
});

test('the order in which axles and tires are listed changes nothing', () => {
  const carried = load({ scale: ticket({ axles: [3_700, 7_200], tongue: 1_500 }) });
  const straight = check(build(), tires(2), carried);
  const turned = check({ ...build(), axles: build().axles.toReversed() }, tires(2).toReversed(), carried);
  expect(turned).toEqual(straight);
});
