import { describe, expect, test } from 'vitest';
import { dueMark, duePhrase, dueReason, ifNot, usedWords } from '../../src/mail/words/due-words.js';
import { reasonWords, remedyWords } from '../../src/mail/words/fit-words.js';
import { flagWords } from '../../src/mail/words/flag-words.js';
import { unknownWords } from '../../src/mail/words/unknown-words.js';
import { day } from '../../src/rules/calendar/civil-date.js';
import type { CheckKind } from '../../src/rules/facts/check.js';
import type { FitReason, FitRemedy } from '../../src/rules/fit/fit.js';
import type { Flag } from '../../src/rules/flags/flag.js';
import type { Due } from '../../src/rules/inspection/due.js';
import type { Comparison } from '../../src/rules/load/limit.js';
import { miles } from '../../src/rules/units/distance.js';
import { lbf } from '../../src/rules/units/force.js';
import { inch } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';
import { psi } from '../../src/rules/units/pressure.js';

const ASOF = day('2025-05-12');

const HUBS: CheckKind = {
  id: 'hubs',
  code: 'hub-repack',
  name: 'Hub repack',
  triggers: [
    { kind: 'months', every: 12, toMonthEnd: false },
    { kind: 'distance', everyKm: miles(12_000) },
  ],
  appliesTo: {
    bodies: null,
    suspensions: null,
    brakes: null,
    hitches: null,
    deckMaterials: null,
    lubricants: null,
    ramps: null,
  },
  safety: true,
  blocks: 'all-jobs',
  proof: null,
  work: { hours: 2, place: 'shop', parts: ['4 seals', 'grease'], bundle: null, together: [] },
  leadDays: 24,
  ownerPersonId: null,
  backupPersonId: null,
  source: 'Common practice, no source.',
  lines: [],
};

const DUE: Due = {
  checkKindId: 'hubs',
  code: 'hub-repack',
  state: 'due-soon',
  dueOn: day('2025-06-02'),
  trigger: { kind: 'months', every: 12, toMonthEnd: false },
  lastDoneOn: day('2024-06-02'),
  used: null,
  range: null,
  stops: null,
  firstJobAtRisk: null,
  yardDays: [],
  unknown: null,
  failed: false,
};

const OVER_PLATE: Comparison = {
  limit: { kind: 'plate', subject: null, limitN: lbf(14_000), origin: 'plate' },
  loadN: lbf(15_540),
  marginN: lbf(-1_540),
  measured: true,
  standing: 'over',
};

const NEAR_PLATE: Comparison = {
  ...OVER_PLATE,
  loadN: lbf(13_980),
  marginN: lbf(20),
  measured: false,
  standing: 'near',
};

const NAMES = { asOf: ASOF, checkKinds: new Map([['hubs', HUBS]]), machines: new Map([['m1', 'the track loader']]) };

describe('why a trailer does not simply go', () => {
  const cases: readonly (readonly [reason: FitReason, says: string])[] = [
    [
      { kind: 'over', comparison: OVER_PLATE },
      'The whole trailer, loaded: 15,540 lb where 14,000 lb are allowed on the plate, over by 1,540 lb.',
    ],
    [
      { kind: 'near', comparison: NEAR_PLATE },
      'The whole trailer, loaded: 13,980 lb where 14,000 lb are allowed on the plate, 20 lb to spare, but not every weight in it was weighed.',
    ],
    [
      { kind: 'tongue-share', share: 0.058, bound: null, low: 0.1, high: 0.15 },
      '5.8 % of the weight would be on the tongue; 10 % to 15 % is wanted.',
    ],
    [
      { kind: 'tongue-share', share: 0.08, bound: 'at-most', low: 0.1, high: 0.15 },
      'At most 8 % of the weight would be on the tongue; 10 % to 15 % is wanted.',
    ],
    [
      { kind: 'attitude', standing: 'nose-high', raisedM: inch(3) },
      'The trailer rides nose high by 3 in: the rear torsion axle carries more.',
    ],
    [
      { kind: 'attitude', standing: 'nose-low', raisedM: null },
      'The trailer rides nose low: the front torsion axle carries more.',
    ],
    [
      {
        ...{ kind: 'road', way: 'bump', heightM: inch(6), mostN: lbf(11_633), axle: 1, ratedN: lbf(7_000) },
        ...{ liftsAtM: inch(5.373), lifts: 2, ratesAssumed: false },
      },
      'Over a 6 in bump axle 1 carries 11,633 lb. From 5.4 in on, axle 2 leaves the ground.',
    ],
    [{ kind: 'hold', reason: 'left ramp bent.' }, 'On hold: Left ramp bent.'],
    [{ kind: 'due', due: DUE, when: 'before' }, 'Due by Mon 2 Jun: Hub repack.'],
    [
      { kind: 'due', due: { ...DUE, state: 'overdue' }, when: 'during' },
      'Overdue since Mon 2 Jun, while it is away: Hub repack.',
    ],
    [
      { kind: 'never-proven', checkKindId: 'hubs', what: 'annual inspection report' },
      'Nothing on record proves: annual inspection report.',
    ],
    [
      { kind: 'tires-past-age', positions: ['1L', '2RO', 'spare'] },
      "Tires past the yard's age limit: axle 1 left, axle 2 right outer and the spare.",
    ],
    [
      {
        kind: 'licence',
        threshold: 'cdl-a',
        combinationKg: lb(26_600),
        thresholdKg: lb(26_001),
        driverHolds: 'none',
      },
      'Truck and trailer are rated 26,600 lb together; from 26,001 lb a class A licence is asked for, even empty. The driver holds none. State rules may be stricter.',
    ],
    [
      { kind: 'commercial-rules', combinationKg: lb(25_200), thresholdKg: lb(10_001) },
      'Truck and trailer are rated 25,200 lb together: from 10,001 lb in commerce the commercial vehicle rules apply. Check your state.',
    ],
    [
      { kind: 'ball-size', couplerM: inch(2.3125), ballM: inch(2) },
      'The coupler takes a 2-5/16 in ball, the truck has 2 in.',
    ],
    [
      { kind: 'unknown', lacks: 'balance-point', stops: 'tongue' },
      'Where the load sits on the deck is not known, so nobody can work out the weight on the tongue.',
    ],
  ];

  test.each(cases)('$kind is a sentence with its numbers in pounds', (reason, says) => {
    expect(reasonWords(reason, NAMES)).toBe(says);
  });
});

describe('what would make it yes', () => {
  const cases: readonly (readonly [remedy: FitRemedy, says: string])[] = [
    [
      { kind: 'lighten', items: ['grapple'], grossKg: lb(14_490), overKg: lb(490), standing: 'over' },
      'Without “grapple”: 14,490 lb, still 490 lb over.',
    ],
    [
      { kind: 'lighten', items: ['grapple', 'mud'], grossKg: lb(13_980), overKg: lb(-20), standing: 'near' },
      'Without “grapple” and “mud”: 13,980 lb, inside, but so near that it must be weighed first.',
    ],
    [
      {
        kind: 'move-load',
        forwardFromM: inch(11.935),
        forwardToM: inch(14.53),
        tongueFromN: lbf(1_100),
        tongueToN: lbf(1_200),
      },
      'Move the load 11.9 in to 14.5 in forward: 1,100 lb to 1,200 lb on the tongue. Then weigh again.',
    ],
    [
      {
        kind: 'move-load',
        forwardFromM: inch(-4),
        forwardToM: inch(-6),
        tongueFromN: lbf(1_600),
        tongueToN: lbf(1_500),
      },
      'Move the load 4 in to 6 in back: 1,600 lb to 1,500 lb on the tongue. Then weigh again.',
    ],
    [
      {
        kind: 'inflate',
        positions: ['1L', '1R'],
        toKpa: psi(65),
        askedByPlateKpa: psi(80),
        carriesN: lbf(3_000),
      },
      'Pump up axle 1 left and axle 1 right to 65 psi cold: each then carries 3,000 lb; the plate asks for 80 psi.',
    ],
    [
      { kind: 'do-check', checkKindId: 'hubs', code: 'hub-repack', by: day('2025-06-02') },
      'Hub repack by Mon 2 Jun (2 h in the shop; bring 4 seals and grease).',
    ],
    [{ kind: 'replace-tires', positions: ['spare'] }, 'Replace the tires: the spare.'],
    [
      {
        ...{ kind: 'level', hitchHeightM: inch(20), axleN: [lbf(5_610), lbf(5_610)] },
        ...{ tongueN: lbf(1_179), tongueShare: 0.0951, tongueShareWanted: 0.1 },
      },
      'Raise or lower the ball mount until the deck is level, then weigh each axle again. The tongue then carries about 9.5 %. See that the tongue keeps 10 %.',
    ],
    [{ kind: 'unload', leastKg: lb(748.27) }, 'Or take at least 749 lb off the deck, and weigh each axle again.'],
    [{ kind: 'unload', leastKg: null }, 'Or take weight off the deck, and weigh each axle again.'],
    [{ kind: 'weigh' }, 'Weigh it loaded, truck and trailer, before it goes.'],
    [{ kind: 'another-driver' }, 'Send a driver with the licence for it.'],
    [{ kind: 'lift-hold' }, 'Repair and record it, or have a named person lift the hold.'],
  ];

  test.each(cases)('$kind is a step to do', (remedy, says) => {
    expect(remedyWords(remedy, NAMES)).toBe(says);
  });
});

describe('when a check is due, and why then', () => {
  test('by the calendar, with everything else that could end it', () => {
    expect(dueReason(DUE, HUBS, ASOF)).toBe(
      'Last done Sun 2 Jun 2024; due every 12 months or every 12,000 mi, whichever comes first. By the calendar that is Mon 2 Jun.',
    );
    expect(dueMark(DUE, ASOF)).toBe('By Mon 2 Jun');
  });

  test('by the miles, with how many are used', () => {
    const used = {
      kind: 'distance' as const,
      usedKm: miles(11_400),
      limitKm: miles(12_000),
      harshKm: miles(0),
      loadKm: miles(0),
    };
    const due: Due = { ...DUE, trigger: { kind: 'distance', everyKm: miles(12_000) }, used };
    expect(dueReason(due, HUBS, ASOF)).toContain('By the miles that is Mon 2 Jun.');
    expect(usedWords(due)).toBe('11,400 of 12,000 mi');
  });

  test('overdue says since when and for how long', () => {
    const due: Due = { ...DUE, state: 'overdue', dueOn: day('2025-05-01') };
    expect(dueMark(due, ASOF)).toBe('Overdue since Thu 1 May');
    expect(dueReason(due, HUBS, ASOF)).toContain('that is Thu 1 May, 11 days ago.');
    expect(ifNot(HUBS, 'overdue', 'T-07')).toBe(
      'Until it is done, T-07 is not ready for any job. Somebody can be hurt if it is left out.',
    );
  });

  test('a check that failed, one never done and one wanted before the next trip say so', () => {
    const failed: Due = { ...DUE, state: 'overdue', dueOn: day('2025-05-08'), failed: true };
    expect(dueReason(failed, HUBS, ASOF)).toBe('It failed on Fri 9 May and stays due until a pass is recorded.');
    expect(duePhrase(failed, ASOF)).toBe('failed, and not put right since');
    const never: Due = { ...DUE, state: 'never-done', dueOn: null, lastDoneOn: null, trigger: null };
    expect(dueMark(never, ASOF)).toBe('No record of it');
    expect(dueReason(never, HUBS, ASOF)).toMatch(/^There is no record of it; due every 12 months/);
    const next: Due = { ...DUE, dueOn: null };
    expect(dueMark(next, ASOF)).toBe('Before the next trip');
    expect(dueReason(next, HUBS, ASOF)).toContain('It is wanted before the next trip.');
  });

  test('a day of another year is named with its year', () => {
    expect(dueMark({ ...DUE, dueOn: day('2026-01-02') }, ASOF)).toBe('By Fri 2 Jan 2026');
  });
});

describe('what a flag says', () => {
  const cases: readonly (readonly [evidence: Flag['evidence'], title: string, says: string])[] = [
    [
      {
        kind: 'over-limit',
        worst: { tripId: 't', on: day('2025-05-08'), comparison: OVER_PLATE },
        trips: [{ tripId: 't', on: day('2025-05-08'), comparison: OVER_PLATE }],
        attitude: null,
      },
      'Loaded over a rating',
      'Thu 8 May: the whole trailer, loaded: 15,540 lb where 14,000 lb are allowed on the plate, over by 1,540 lb. 1 trip on record went over it.',
    ],
    [
      {
        kind: 'tires-past-age',
        limitYears: 6,
        tires: [{ position: '1L', dateCode: '1519', madeFrom: day('2019-04-07'), years: 6, months: 1 }],
      },
      'Tires past 6 years',
      "Axle 1 left (1519: 6 y 1 mo). The limit of 6 years is the yard's own; no law sets one.",
    ],
    [
      {
        kind: 'tires-soft',
        tires: [{ position: 'spare', foundKpa: psi(50), wantedKpa: psi(80), carriesKg: null, carriedKg: null }],
      },
      'Tires too soft',
      'The spare 50 psi of 80 psi. A soft tire carries less than its sidewall says.',
    ],
    [
      {
        kind: 'tires-soft',
        tires: [{ position: '1L', foundKpa: psi(50), wantedKpa: psi(80), carriesKg: lb(2_600), carriedKg: lb(2_663) }],
      },
      'Tires too soft',
      'Axle 1 left 50 psi of 80 psi, good for 2,600 lb. A soft tire carries less than its sidewall says.',
    ],
    [
      {
        kind: 'tires-mismatched',
        axle: 2,
        mismatches: [{ trait: 'load-range', positions: ['2L', '2R'], marked: ['D', 'E'] }],
      },
      'Tires of axle 2 are no set',
      'Load range: axle 2 left D and axle 2 right E.',
    ],
    [
      {
        kind: 'worn-past-limit',
        quantity: 'lining-mm',
        limit: 1.5875,
        passesAtLimit: false,
        source: 'Appendix A to Part 396 of 49 CFR, 1.a(6)(c)',
        parts: [{ position: '1L', value: 1.27, on: day('2025-05-01') }],
      },
      'Brake lining worn out',
      'Axle 1 left 0.050 in; at or below 0.063 in fails (Appendix A to Part 396 of 49 CFR, 1.a(6)(c)).',
    ],
    [
      {
        kind: 'licence-line',
        towVehicle: 'the white truck',
        group: 'A',
        combinationKg: lb(26_600),
        thresholdKg: lb(26_001),
        jobIds: ['j1', 'j2'],
      },
      'With the white truck a commercial licence may be asked',
      '26,600 lb together on 2 booked jobs; the federal line stands at 26,001 lb. Uses, exemptions and states differ.',
    ],
    [
      {
        kind: 'outgrown',
        machineId: 'm1',
        machineKg: lb(9_920),
        payloadKg: lb(9_100),
        overKg: lb(820),
        replacedMachineId: null,
      },
      'Outgrown by the track loader',
      'The track loader weighs 9,920 lb, the trailer carries 9,100 lb: 820 lb too little.',
    ],
    [
      {
        kind: 'class-drift',
        from: day('2025-03-02'),
        to: day('2025-06-02'),
        share90th: 0.96,
        trend: { shareAMonth: 0.03, isClear: true },
        damage: [{ part: 'weld', onThis: 1.2, onNext: 0.8 }],
        weakest: {
          limit: { kind: 'plate', subject: null, limitN: lbf(14_000), origin: 'plate' },
          loadN: lbf(15_540),
          marginN: lbf(-1_540),
          measured: true,
          standing: 'over',
        },
        wantsMore: [],
        trips: 10,
        over90: 4,
        over100: 1,
        payloadKg: lb(10_100),
        ownClass: 'medium',
        looksLike: 'heavy',
        tripIds: [],
        machineId: 'm1',
      },
      'Used beyond its class',
      'Of the last 10 loads, 4 went over 90 % and 1 over all of its payload of 10,100 lb. Mostly the track loader. With the heaviest, the whole trailer, loaded: 15,540 lb where 14,000 lb are allowed on the plate, over by 1,540 lb.',
    ],
    [
      {
        kind: 'class-drift',
        from: day('2025-06-02'),
        to: day('2025-06-02'),
        share90th: 1.15,
        trend: null,
        damage: null,
        weakest: null,
        wantsMore: [],
        trips: 1,
        over90: 1,
        over100: 1,
        payloadKg: lb(10_100),
        ownClass: 'medium',
        looksLike: 'heavy',
        tripIds: [],
        machineId: null,
      },
      'Used beyond its class',
      'The only load so far was over its payload of 10,100 lb.',
    ],
    [
      { kind: 'lowered', on: day('2025-05-01'), positions: ['2R'], beforeKg: lb(10_100), nowKg: lb(8_680) },
      'Its new tires carry less',
      'Since Thu 1 May it carries 8,680 lb where it carried 10,100 lb: the tires at axle 2 right.',
    ],
    [{ kind: 'hold', holdId: 'h', reason: 'hub smoking' }, 'On hold', 'Hub smoking.'],
  ];

  test.each(cases)('$kind is told with its evidence and something to do', (evidence, title, says) => {
    const words = flagWords(
      {
        key: 'k',
        rule: 'on-hold',
        severity: 'stop',
        since: null,
        evidence,
        clears: [{ kind: 'lift-hold', holdId: 'h' }],
      },
      NAMES,
    );
    expect(words).toMatchObject({ title, says });
    expect(words.todo).not.toBe('');
  });
});

test('one missing fact that stops several sums is named once', () => {
  expect(unknownWords('balance-point', ['tongue', 'axle-check', 'tire-check'])).toBe(
    'Where the load sits on the deck is not known, so nobody can work out the weight on the tongue, whether the axles carry it and whether the tires carry it.',
  );
});
