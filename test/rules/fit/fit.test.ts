import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import { type Fit, type FitInput, type FitRemedy, fit } from '../../../src/rules/fit/fit.js';
import { miles } from '../../../src/rules/units/distance.js';
import { lbf, massHeldUpBy, newtons, toLbf } from '../../../src/rules/units/force.js';
import { inch, toInch } from '../../../src/rules/units/length.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { kPa, psi, toPsi } from '../../../src/rules/units/pressure.js';
import { build, item, load, marks, placedAxles, ticket, tire, tires, unknownBuild } from '../sample-facts.js';
import { done, facts, job, kind, towVehicle, trip } from '../sample-trailer.js';

// Scenarios 1 to 9 of the acceptance list: numbers worked out by hand there, in pounds.

const ON = day('2025-06-20');
const ASKED = day('2025-06-16');

function ask(more: Partial<TrailerFacts>, input: Partial<FitInput>, asOf = ASKED): Fit {
  const asked: FitInput = {
    load: load(),
    startsOn: ON,
    endsOn: ON,
    commercial: null,
    towVehicle: null,
    driver: null,
    ...input,
  };
  return fit(facts(more), asked, asOf);
}

function remedy<Kind extends FitRemedy['kind']>(answer: Fit, wanted: Kind) {
  return answer.remedies.filter((one): one is Extract<FitRemedy, { kind: Kind }> => one.kind === wanted);
}

const reasonKinds = (answer: Fit) => [...new Set(answer.reasons.map(({ kind: what }) => what))];
const overOf = (answer: Fit, what: string) =>
  answer.reasons
    .flatMap((reason) => (reason.kind === 'over' && reason.comparison.limit.kind === what ? [reason.comparison] : []))
    .map(({ marginN }) => -toLbf(marginN));

describe('scenario 1, outgrown: a heavier track loader on the 14,000 lb plate', () => {
  const cargo = [
    item('track loader', 9_920),
    item('grapple', 1_050, { remedy: 'leave-off' }),
    item('bucket over standard', 310, { remedy: 'swap' }),
    item('mud', 200, { basis: 'assumed', remedy: 'wash' }),
    item('chains', 160),
  ];
  const answer = ask({}, { load: load({ cargo }) });

  it('is not for this trailer: 15,540 in all, 1,540 over the plate', () => {
    expect(answer.verdict).toBe('no-go');
    expect(toLb(answer.loadCheck.grossKg ?? lb(0))).toBeCloseTo(15_540, 6);
    expect(overOf(answer, 'plate')).toEqual([expect.closeTo(1_540, 6)]);
  });

  it('offers to spare grapple, bucket and mud in turn: 490 over, 180 over, 20 under and so to be weighed', () => {
    const steps = remedy(answer, 'lighten').map((step) => ({
      items: step.items.length,
      gross: Math.round(toLb(step.grossKg)),
      over: Math.round(toLb(step.overKg)),
      standing: step.standing,
    }));
    expect(steps).toEqual([
      { items: 1, gross: 14_490, over: 490, standing: 'over' },
      { items: 2, gross: 14_180, over: 180, standing: 'over' },
      { items: 3, gross: 13_980, over: -20, standing: 'near' },
    ]);
    expect(answer.remedies.at(-1)).toEqual({ kind: 'weigh' });
  });

  it('washed and without grapple and big bucket it is weighed first, never a plain go', () => {
    const light = cargo.filter(({ remedy: way }) => way === null);
    const guess = item('fuel, a guess', 0, { basis: 'assumed' });
    expect(ask({}, { load: load({ cargo: [...light, guess] }) }).verdict).toBe('weigh-first');
  });

  it('the same weights all from a scale may go', () => {
    const weighed = ask({}, { load: load({ scale: ticket({ gross: 13_980, tongue: 1_700 }), cargo }) });
    expect(weighed.verdict).toBe('go');
  });
});

describe('scenario 2, plate against axles: two 7,000 lb axles under a 9,990 plate', () => {
  const small = build({
    plate: { gvwrKg: lb(9_990), coldPressureKpa: psi(80) },
    empty: { massKg: lb(2_980), basis: 'weighed', tongueN: null },
  });
  const cargo = [item('excavator', 7_650), item('bucket set', 340), item('chains', 120)];
  const answer = ask({ builds: [small] }, { load: load({ cargo }) });

  it('is not for this trailer: 11,090 in all, over by 1,100, whatever the axles add up to', () => {
    expect(answer.verdict).toBe('no-go');
    expect(overOf(answer, 'plate')).toEqual([expect.closeTo(1_100, 6)]);
    expect(overOf(answer, 'axle-group')).toEqual([]);
  });
});

describe('scenario 3, soft tires: four ST235/80R16 E found at 50 psi', () => {
  const found = done('pressure', '2025-06-15', {
    lines: ['1L', '1R', '2L', '2R'].map((position) => ({
      code: 'pressure',
      result: null,
      position,
      measured: { quantity: 'cold-pressure-kpa', value: psi(50) },
    })),
  });
  const more = { checkRecords: [found], checkKinds: [kind('pressure', [])] };
  const answer = ask(more, { load: load({ scale: ticket({ gross: 12_100, tongue: 1_450 }) }) });

  it('is fixed first: 10,650 on the axles, 2,663 a tire against 2,600, about 63 over each', () => {
    expect(answer.verdict).toBe('go-after');
    expect(toLbf(answer.loadCheck.axleGroupN ?? newtons(0))).toBeCloseTo(10_650, 6);
    expect(overOf(answer, 'tire')).toEqual(Array(4).fill(expect.closeTo(62.5, 6)));
  });

  it('carries at 65 psi, and the plate asks for 80', () => {
    const [pump] = remedy(answer, 'inflate');
    expect(toPsi(pump?.toKpa ?? kPa(0))).toBeCloseTo(65, 6);
    expect(toLbf(pump?.carriesN ?? newtons(0))).toBeCloseTo(3_000, 6);
    expect(toPsi(pump?.askedByPlateKpa ?? kPa(0))).toBeCloseTo(80, 6);
    expect(pump?.positions).toEqual(['1L', '1R', '2L', '2R']);
  });

  it('no other fault is invented', () => {
    expect(reasonKinds(answer)).toEqual(['over']);
  });

  it('pumped up and written down, it may go', () => {
    const pumped = {
      ...found,
      id: 'later',
      doneOn: day('2025-06-16'),
      lines: found.lines.map((line) => ({
        ...line,
        measured: { quantity: 'cold-pressure-kpa' as const, value: psi(80) },
      })),
    };
    const again = ask(
      { ...more, checkRecords: [found, pumped] },
      { load: load({ scale: ticket({ gross: 12_100, tongue: 1_450 }) }) },
    );
    expect(again.verdict).toBe('go');
  });

  it('tires fitted since the look are not taken for the soft ones', () => {
    const parts = ['1L', '1R', '2L', '2R'].map((position) => tire(position, {}, day('2025-06-16')));
    const again = ask({ ...more, parts }, { load: load({ scale: ticket({ gross: 12_100, tongue: 1_450 }) }) });
    expect(again.verdict).toBe('go');
  });
});

describe('scenario 4, torsion, nose high', () => {
  const scale = ticket({ tongue: 1_500, axles: [3_700, 7_200] });

  it('is fixed first: rear axle 200 over, its tires 180 over each; level it and weigh again', () => {
    const answer = ask({ builds: [build({ suspension: 'torsion' })] }, { load: load({ scale }) });
    expect(answer.verdict).toBe('go-after');
    expect(overOf(answer, 'axle')).toEqual([expect.closeTo(200, 6)]);
    expect(overOf(answer, 'tire')).toEqual([expect.closeTo(180, 6), expect.closeTo(180, 6)]);
    expect(answer.remedies.map(({ kind: what }) => what).slice(0, 2)).toEqual(['level', 'weigh']);
  });

  it('the same totals on equalized springs with no axle ticket give no alarm', () => {
    const answer = ask({}, { load: load({ scale: ticket({ gross: 12_400, tongue: 1_500 }) }) });
    expect(answer.verdict).toBe('go');
  });
});

describe('scenario 5, tail heavy', () => {
  it('moves the machine 12 to 14.5 in forward, where the hitch stops at 1,200 lb', () => {
    const answer = ask(
      { builds: [build({ axles: placedAxles(192) })] },
      {
        load: load({ cargo: [item('machine', 7_400)], scale: ticket({ gross: 11_000, tongue: 640 }) }),
        towVehicle: towVehicle({ gvwrKg: lb(9_000), hitchTongueN: lbf(1_200) }),
        commercial: false,
      },
    );
    const [move] = remedy(answer, 'move-load');
    expect(answer.verdict).toBe('go-after');
    expect(toInch(move?.forwardFromM ?? inch(0))).toBeCloseTo(11.9, 1);
    expect(toInch(move?.forwardToM ?? inch(0))).toBeCloseTo(14.5, 1);
    expect(toLbf(move?.tongueToN ?? newtons(0))).toBeCloseTo(1_200, 6);
  });
});

describe('scenario 6, the licence line: Theo has no commercial licence', () => {
  const theo = { name: 'Theo', cdl: 'none' } as const;
  const truck = towVehicle({ gvwrKg: lb(11_200) });
  const ordinary = { towVehicle: truck, driver: theo, load: load({ cargo: [item('nothing', 0)] }) };

  it('11,200 and 14,000 are 25,200: allowed by rating, commercial rules apply', () => {
    const answer = ask({}, ordinary);
    expect(answer.verdict).toBe('go');
    const rules = answer.reasons.find((reason) => reason.kind === 'commercial-rules');
    expect(rules?.kind === 'commercial-rules' && Math.round(toLb(rules.combinationKg))).toBe(25_200);
    expect(rules?.kind === 'commercial-rules' && Math.round(toLb(rules.thresholdKg))).toBe(10_001);
  });

  it('with the 15,400 trailer they are 26,600: not Theo, even empty', () => {
    const bigger = build({ plate: { gvwrKg: lb(15_400), coldPressureKpa: psi(80) } });
    const answer = ask({ builds: [bigger] }, ordinary);
    expect(answer.verdict).toBe('no-go');
    expect(answer.reasons).toContainEqual(
      expect.objectContaining({ kind: 'licence', threshold: 'cdl-a', driverHolds: 'none' }),
    );
    expect(remedy(answer, 'another-driver')).toHaveLength(1);
    expect(ask({ builds: [bigger] }, { ...ordinary, driver: { name: 'Ana', cdl: 'A' } }).verdict).toBe('go');
  });

  it('commercial rules are not spoken of where the haul is said to be private', () => {
    expect(reasonKinds(ask({}, { ...ordinary, commercial: false }))).not.toContain('commercial-rules');
  });
});

describe('scenario 7, the annual inspection passed on 14 March 2025, a job on 3 April 2026', () => {
  const annual = kind('annual', [{ kind: 'months', every: 12, toMonthEnd: true }], {
    blocks: 'commercial-jobs',
    proof: { what: 'annual report or decal', keepMonths: 14 },
    work: { hours: 1.5, place: 'shop', parts: [], bundle: null, together: [] },
    leadDays: 14,
  });
  const passed = { checkKinds: [annual], checkRecords: [done('annual', '2025-03-14', { inspectedBy: 'own' })] };
  const april = {
    startsOn: day('2026-04-03'),
    endsOn: day('2026-04-03'),
    commercial: true,
    towVehicle: towVehicle({ gvwrKg: lb(11_200) }),
    load: load({ cargo: [item('machine', 5_000)] }),
  };

  it('warns as soon as the job is booked: due before it, so after the inspection', () => {
    const answer = ask(passed, april, day('2025-12-01'));
    expect(answer.verdict).toBe('go-after');
    expect(answer.reasons).toContainEqual(expect.objectContaining({ kind: 'due', when: 'before' }));
    expect(remedy(answer, 'do-check')).toEqual([
      { kind: 'do-check', checkKindId: annual.id, code: 'annual', by: '2026-03-14' },
    ]);
  });

  it('on the morning of 3 April it is blocked: shop work and no day left', () => {
    expect(ask(passed, april, day('2026-04-03')).verdict).toBe('no-go');
  });

  it('even read as a State pass, good to the end of March, it is expired', () => {
    const byState = { ...passed, checkRecords: [done('annual', '2025-03-14', { inspectedBy: 'state' })] };
    expect(ask(byState, april, day('2026-04-03')).verdict).toBe('no-go');
    expect(
      ask(byState, { ...april, startsOn: day('2026-03-31'), endsOn: day('2026-03-31') }, day('2026-03-30')).verdict,
    ).toBe('go');
  });

  it('passed again, the job may go', () => {
    const again = { ...passed, checkRecords: [...passed.checkRecords, done('annual', '2026-03-20')] };
    expect(ask(again, april, day('2026-03-21')).verdict).toBe('go');
  });

  it('a private haul is not stopped by it', () => {
    expect(ask(passed, { ...april, commercial: false }, day('2026-04-03')).verdict).toBe('go');
  });

  it('never proven stops a commercial job too, and says which paper', () => {
    const answer = ask({ checkKinds: [annual] }, april, day('2026-04-01'));
    expect(answer.verdict).toBe('go-after');
    expect(answer.reasons).toContainEqual({
      kind: 'never-proven',
      checkKindId: annual.id,
      what: 'annual report or decal',
    });
  });
});

describe('scenario 8, tires past age', () => {
  const parts = [...tires(2, { dateCode: '1519' }), tire('spare', { dateCode: '3216' })];

  it('four of week 15 of 2019 and a spare of 2016 are replaced first', () => {
    const answer = ask({ parts }, { load: load({ cargo: [item('machine', 5_000)] }) }, day('2025-11-20'));
    expect(answer.verdict).toBe('go-after');
    expect(remedy(answer, 'replace-tires')).toEqual([
      { kind: 'replace-tires', positions: ['1L', '1R', '2L', '2R', 'spare'] },
    ]);
  });

  it('a spare past age is said and keeps nobody in', () => {
    const answer = ask(
      { parts: [...tires(2), tire('spare', { dateCode: '3216' })] },
      { load: load({ cargo: [item('machine', 5_000)] }) },
      day('2025-11-20'),
    );
    expect(answer.verdict).toBe('go');
    expect(reasonKinds(answer)).toContain('tires-past-age');
  });
});

describe('scenario 9, a weaker tire came back', () => {
  it('one tire of 3,000 among 3,420 holds the group to 12,000, so 12,500 is too much', () => {
    const parts = [
      ...tires(2).filter(({ position }) => position !== '2L'),
      tire('2L', { maxLoadSingleKg: lb(3_000), loadRange: 'D', maxColdPressureKpa: psi(65) }),
    ];
    const answer = ask({ parts }, { load: load({ scale: ticket({ gross: 14_000, tongue: 1_500 }) }) });
    expect(answer.verdict).toBe('no-go');
    expect(overOf(answer, 'tire')).toEqual([expect.closeTo(125, 6)]);
  });
});

describe('what else a fit looks at', () => {
  it('an open hold is a no, whatever the load', () => {
    const holds = [
      { id: 'h1', openedOn: day('2025-06-10'), reason: 'right ramp bent', openedByName: 'Luis', liftedOn: null },
    ];
    const answer = ask({ holds }, { load: load({ cargo: [item('machine', 1_000)] }) });
    expect(answer.verdict).toBe('no-go');
    expect(answer.reasons[0]).toEqual({ kind: 'hold', reason: 'right ramp bent' });
  });

  it('a plate nobody has read gives no answer, and says which fact is missing', () => {
    const answer = ask({ builds: [unknownBuild()] }, { load: load({ cargo: [item('machine', 1_000)] }) });
    expect(answer.verdict).toBe('cannot-say');
    expect(answer.reasons).toContainEqual({ kind: 'unknown', lacks: 'gvwr', stops: 'plate-check' });
  });

  it('no build sheet at all gives no answer either', () => {
    expect(ask({ builds: [] }, { load: load({ cargo: [item('machine', 1_000)] }) }).verdict).toBe('cannot-say');
  });

  it('a 2 in ball under a 2-5/16 in coupler is changed first', () => {
    const coupled = build({ hitch: { ...build().hitch, ballSizeM: inch(2.3125) } });
    const answer = ask(
      { builds: [coupled] },
      {
        load: load({ cargo: [item('machine', 1_000)] }),
        towVehicle: towVehicle({ ballSizeM: inch(2), gvwrKg: lb(8_000) }),
      },
    );
    expect(answer.verdict).toBe('go-after');
    expect(reasonKinds(answer)).toContain('ball-size');
  });

  it('a safety check nobody ever recorded is said, and is no fault', () => {
    const repack = kind('repack', [{ kind: 'months', every: 12, toMonthEnd: false }], {
      safety: true,
      blocks: 'all-jobs',
    });
    const answer = ask({ checkKinds: [repack] }, { load: load({ cargo: [item('machine', 1_000)] }) });
    expect(answer.verdict).toBe('go');
    expect(answer.reasons).toContainEqual(expect.objectContaining({ kind: 'due', when: 'before' }));
  });

  it('a check that falls due on the way is done before it goes', () => {
    const repack = kind('repack', [{ kind: 'months', every: 12, toMonthEnd: false }], {
      safety: true,
      blocks: 'all-jobs',
    });
    const answer = ask(
      { checkKinds: [repack], checkRecords: [done('repack', '2024-06-21')] },
      { load: load({ cargo: [item('machine', 1_000)] }), endsOn: day('2025-06-23') },
    );
    expect(answer.verdict).toBe('go-after');
    expect(answer.reasons).toContainEqual(expect.objectContaining({ kind: 'due', when: 'during' }));
  });

  it('nuts to be torqued 10 miles after a wheel was off are said before a trip that passes them, and stop nothing', () => {
    const torque = kind('torque', [{ kind: 'event', event: 'wheel-off', atKm: [miles(10)] }], {
      safety: true,
      blocks: 'all-jobs',
      work: { hours: 0.25, place: 'road', parts: [], bundle: null, together: [] },
    });
    const changed = { checkKinds: [torque], parts: [...tires(2).slice(1), tire('1L', {}, day('2025-06-10'))] };
    const cargo = load({ cargo: [item('machine', 1_000)] });
    const booked = job('2025-06-20', { distanceKm: miles(14), load: cargo });
    const before = ask({ ...changed, trips: [trip('2025-06-11', 8)], jobs: [booked] }, booked);
    expect(before.verdict).toBe('go');
    expect(before.reasons).toContainEqual(expect.objectContaining({ kind: 'due', when: 'during' }));
    const missed = ask({ ...changed, trips: [trip('2025-06-11', 22)], jobs: [booked] }, booked);
    expect(missed.verdict).toBe('go-after');
  });

  it('the tires of the day of the job are the ones that count', () => {
    const fitted = tire('1L', { dateCode: '0125' }, day('2025-06-18'));
    const weak = {
      ...tire('1L', { maxLoadSingleKg: lb(1_500), loadRange: 'B' }),
      id: 'weak',
      removedOn: day('2025-06-18'),
    };
    const parts = [...tires(2).filter(({ position }) => position !== '1L'), weak, fitted];
    expect(ask({ parts }, { load: load({ scale: ticket({ gross: 12_100, tongue: 1_450 }) }) }).verdict).toBe('go');
    expect(marks(fitted.tire ?? {}).maxLoadSingleKg).toBe(lb(3_420));
    expect(massHeldUpBy(lbf(1))).toBeCloseTo(lb(1), 9);
  });
});
