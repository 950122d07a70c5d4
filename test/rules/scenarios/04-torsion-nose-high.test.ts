import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import type { Load } from '../../../src/rules/facts/load.js';
import { type Fit, type FitReason, type FitRemedy, fit } from '../../../src/rules/fit/fit.js';
import { type Newtons, newtons, toLbf } from '../../../src/rules/units/force.js';
import { inch, toInch } from '../../../src/rules/units/length.js';
import { kg, toLb } from '../../../src/rules/units/mass.js';
import { axle, build, item, load, ticket, tires } from '../sample-facts.js';
import { facts, trip } from '../sample-trailer.js';

// Two 7,000 lb torsion axles on tires of 3,420 lb. The ticket: front axle 3,700, rear 7,200, hitch 1,500; the coupler rode
// 3 in high. Numbers in pounds as the scenario gives them; what it leaves open is worked out beside.

const LEVEL_AT = 20;
const ON_THE_SCALE = load({
  scale: ticket({ tongue: 1_500, axles: [3_700, 7_200] }),
  hitchHeightM: inch(LEVEL_AT + 3),
});

const torsion = (more: Partial<BuildSheet> = {}) =>
  build({ suspension: 'torsion', hitch: { ...build().hitch, levelHeightM: inch(LEVEL_AT) }, ...more });

function ask(build_: BuildSheet, carried: Load): Fit {
  const on = day('2025-06-20');
  const input = { load: carried, startsOn: on, endsOn: on, commercial: null, towVehicle: null, driver: null };
  return fit(facts({ builds: [build_] }), input, day('2025-06-16'));
}

const pounds = (force: Newtons | null | undefined) => Math.round(toLbf(force ?? newtons(0)));
const over = (answer: Fit, kind: string) =>
  answer.reasons.flatMap((reason) =>
    reason.kind === 'over' && reason.comparison.limit.kind === kind
      ? [[reason.comparison.limit.subject, pounds(reason.comparison.loadN), -pounds(reason.comparison.marginN)]]
      : [],
  );
const reasonOf = <Kind extends FitReason['kind']>(answer: Fit, kind: Kind) =>
  answer.reasons.find((one): one is Extract<FitReason, { kind: Kind }> => one.kind === kind);
const remedyOf = <Kind extends FitRemedy['kind']>(answer: Fit, kind: Kind) =>
  answer.remedies.find((one): one is Extract<FitRemedy, { kind: Kind }> => one.kind === kind);

describe('torsion axles, nose high, before a job', () => {
  const answer = ask(torsion(), ON_THE_SCALE);

  it('is fixed first', () => {
    expect(answer.verdict).toBe('go-after');
  });

  it('the rear axle is 200 over, and each of its tires carries 3,600, 180 over', () => {
    expect(over(answer, 'axle')).toEqual([['2', 7_200, 200]]);
    expect(over(answer, 'tire')).toEqual([
      ['2L', 3_600, 180],
      ['2R', 3_600, 180],
    ]);
  });

  it('though 10,900 on the axles is under 14,000', () => {
    const group = answer.loadCheck.comparisons.find((one) => one.limit.kind === 'axle-group');
    expect([pounds(group?.loadN), pounds(group?.limit.limitN), group?.standing]).toEqual([10_900, 14_000, 'inside']);
    expect(over(answer, 'axle-group')).toEqual([]);
    expect(over(answer, 'plate')).toEqual([]);
  });

  it('because it rides 3 in nose high', () => {
    const attitude = reasonOf(answer, 'attitude');
    expect(attitude?.standing).toBe('nose-high');
    expect(toInch(attitude?.raisedM ?? inch(0))).toBeCloseTo(3, 9);
  });

  it('it is levelled and weighed again, and only then lightened', () => {
    expect(answer.remedies.map(({ kind }) => kind)).toEqual(['level', 'weigh', 'unload']);
    expect(toInch(remedyOf(answer, 'level')?.hitchHeightM ?? inch(0))).toBeCloseTo(LEVEL_AT, 9);
  });

  it('the hitch has 1,500 of 12,400, 12.1 %, and is to keep 10 %', () => {
    expect(Math.round(toLb(answer.loadCheck.grossKg ?? kg(0)))).toBe(12_400);
    expect(answer.loadCheck.tongueShare).toBeCloseTo(0.121, 3);
    expect(remedyOf(answer, 'level')?.tongueShareWanted).toBe(0.1);
  });

  it('nothing else is found', () => {
    expect([...new Set(answer.reasons.map(({ kind }) => kind))]).toEqual(['over', 'attitude']);
  });
});

describe('the same with the axles’ places known, 163.5 and 196.5 in back', () => {
  const placed = torsion({
    axles: [163.5, 196.5].map((at, index) => axle(index + 1, 7_000, { fromCouplerM: inch(at) })),
  });
  const machine = [item('machine', 8_500)];
  const answer = ask(placed, { ...ON_THE_SCALE, cargo: machine, balancePointM: inch(160) });

  it('level, the share on the hitch falls below 10 %: 12,400 less (3,700 × 163.5 + 7,200 × 196.5) / 180', () => {
    const level = remedyOf(answer, 'level');
    // 2,019,750 / 180 = 11,220.8 on the axles.
    expect(level?.axleN?.map(pounds)).toEqual([5_610, 5_610]);
    expect(pounds(level?.tongueN)).toBe(1_179);
    expect(level?.tongueShare).toBeCloseTo(0.0951, 4);
  });

  it('instead, at least 748 lb come off where the load sits', () => {
    // 360 over on the rear tires; a pound at 160 in relieves the rear axle of 160 × 196.5 / (163.5² + 196.5²).
    const relief = (160 * 196.5) / (163.5 ** 2 + 196.5 ** 2);
    expect(toLb(remedyOf(answer, 'unload')?.leastKg ?? kg(0))).toBeCloseTo(360 / relief, 6);
    expect(Math.round(360 / relief)).toBe(748);
  });

  it('a bump under an axle is warned of, and decides nothing', () => {
    const road = reasonOf(answer, 'road');
    expect(road?.ratesAssumed).toBe(true);
    expect(road?.mostN).toBeGreaterThan(road?.ratedN ?? Number.POSITIVE_INFINITY);
    expect(answer.verdict).toBe('go-after');
  });
});

describe('where levelling would not do', () => {
  it('12,900 lb on two axles are 6,450 each level, and tires of 3,200 are not enough: not this trailer', () => {
    const scale = ticket({ tongue: 1_100, axles: [5_700, 7_200] });
    const on = day('2025-06-20');
    const weaker = facts({ builds: [torsion()], parts: tires(2, { maxLoadSingleKg: kg(1_451) }) });
    const input = { startsOn: on, endsOn: on, commercial: null, towVehicle: null, driver: null };
    const answer = fit(weaker, { ...input, load: load({ scale }) }, on);
    expect(answer.verdict).toBe('no-go');
    expect(remedyOf(answer, 'level')).toBeUndefined();
  });
});

describe('equalized springs with the same totals and no axle ticket', () => {
  const answer = ask(build(), load({ scale: ticket({ gross: 12_400, tongue: 1_500 }) }));

  it('are 5,450 each and raise no alarm', () => {
    expect(answer.loadCheck.axleN?.map(pounds)).toEqual([5_450, 5_450]);
    expect(answer.verdict).toBe('go');
    expect(answer.reasons).toEqual([]);
  });

  it('raise no flag after a trip either', () => {
    const trips = [trip('2025-06-10', 30, { load: load({ scale: ticket({ gross: 12_400, tongue: 1_500 }) }) })];
    expect(assess(facts({ trips }), day('2025-06-16')).flags).toEqual([]);
  });
});

describe('a trip so hauled', () => {
  const trips = [trip('2025-06-10', 30, { load: ON_THE_SCALE })];
  const { flags } = assess(facts({ builds: [torsion()], trips }), day('2025-06-16'));

  it('is flagged over one axle and over its tires, and put down to how it rode', () => {
    expect(flags.map(({ rule, severity }) => [rule, severity])).toEqual([
      ['over-axle', 'limit'],
      ['over-tire', 'limit'],
    ]);
    for (const { evidence } of flags) {
      expect(evidence.kind === 'over-limit' && evidence.attitude?.standing).toBe('nose-high');
      expect(evidence.kind === 'over-limit' && toInch(evidence.attitude?.raisedM ?? inch(0))).toBeCloseTo(3, 9);
    }
  });

  it('the ticket alone tells as much when nobody measured the hitch', () => {
    const unmeasured = [trip('2025-06-10', 30, { load: { ...ON_THE_SCALE, hitchHeightM: null } })];
    const [flag] = assess(facts({ builds: [torsion()], trips: unmeasured }), day('2025-06-16')).flags;
    expect(flag?.evidence.kind === 'over-limit' && flag.evidence.attitude).toEqual({
      standing: 'nose-high',
      raisedM: null,
    });
  });

  it('on springs that share, one axle over is not put down to that', () => {
    const [flag] = assess(facts({ trips }), day('2025-06-16')).flags;
    expect(flag?.rule).toBe('over-axle');
    expect(flag?.evidence.kind === 'over-limit' && flag.evidence.attitude).toBeNull();
  });
});
