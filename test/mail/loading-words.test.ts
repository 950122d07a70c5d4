import { expect, test } from 'vitest';
import { reasonWords, remedyWords } from '../../src/mail/words/fit-words.js';
import { flagWords } from '../../src/mail/words/flag-words.js';
import { parkingWords } from '../../src/mail/words/parking-words.js';
import { day } from '../../src/rules/calendar/civil-date.js';
import type { FitReason, FitRemedy } from '../../src/rules/fit/fit.js';
import type { Flag } from '../../src/rules/flags/flag.js';
import type { TieDownCheck } from '../../src/rules/load/tie-downs.js';
import { lbf } from '../../src/rules/units/force.js';
import { feet, inch } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';

const ASOF = day('2026-06-01');
const NAMES = { asOf: ASOF, checkKinds: new Map(), machines: new Map([['loader', 'the track loader']]) };

const STRAPS: TieDownCheck = {
  need: { workingLoadKg: lb(6_000), count: 4, because: 'heavy-machine' },
  count: 4,
  workingLoadKg: lb(4_000),
  unrated: 0,
  standing: 'short',
};
const TRIPS = [{ tripId: 'trip-1', endedOn: day('2026-05-20') }];

const REASONS: readonly [FitReason, string][] = [
  [
    { kind: 'too-wide', machineId: 'loader', machineM: inch(81), roomM: inch(80), between: 'fenders' },
    'The machine is 81 in wide; the fenders leave 80 in.',
  ],
  [
    { kind: 'too-long', machineId: 'loader', machineM: feet(17), roomM: feet(16), of: 'tilt', stands: true },
    'The machine is 17 ft long; the tilting part has 16 ft. Its wheels or tracks have room; the rest sticks out.',
  ],
  [
    {
      kind: 'ramp-rating',
      machineId: 'loader',
      machineKg: lb(8_000),
      ratingKg: lb(7_000),
      marginKg: lb(-1_000),
      standing: 'over',
    },
    'The machine weighs 8,000 lb, 1,000 lb more than the ramps carry.',
  ],
  [
    {
      kind: 'rear-lift',
      machineId: 'loader',
      machineKg: lb(8_000),
      liftN: lbf(2_967),
      support: 'none',
      supportLeastN: null,
      supportMostN: null,
    },
    'While the machine comes on, it pulls the hitch up with 2,967 lb. Nothing holds the tail up: block it first.',
  ],
  [
    { kind: 'hangs-up', machineId: 'loader', neededM: inch(5.65), clearanceM: inch(5), isMost: true },
    'Where ramp and deck meet the machine needs up to 5.7 in under it and has 5 in.',
  ],
  [
    { kind: 'tilt-stays-up', machineId: 'loader', shortM: inch(-9) },
    'Driven on as far as it goes, the machine stays 9 in behind the pivot: the deck would not lie down.',
  ],
  [
    { kind: 'tie-downs', tied: STRAPS },
    '4 tie-downs that count for 4,000 lb. Wanted: 4 that count for 6,000 lb; one that ends on the machine counts half (49 CFR 393.106 to 393.130).',
  ],
  [
    { kind: 'tie-downs-unsaid', need: { workingLoadKg: lb(2_000), count: 2, because: 'length-unknown' } },
    'What ties it down is not recorded. Wanted: 2 or more, if it is long, that count for 2,000 lb; one that ends on the machine counts half (49 CFR 393.106 to 393.130).',
  ],
  [
    { kind: 'unknown', lacks: 'deck-place', stops: 'climb-check' },
    'Where the deck lies along the trailer is not known, so nobody can work out what the hitch feels while it drives on.',
  ],
];

test.each(REASONS.map(([reason, says]) => [reason.kind, reason, says] as const))('reason %s', (_kind, reason, says) => {
  expect(reasonWords(reason, NAMES)).toBe(says);
});

const REMEDIES: readonly [FitRemedy, string][] = [
  [
    { kind: 'fold-in', machineId: 'loader', lengthM: feet(16) },
    'Fold in what sticks out of the machine, or measure it as hauled: no more than 16 ft.',
  ],
  [{ kind: 'prop-tail' }, 'Block or prop the tail before the machine drives on.'],
  [
    { kind: 'tie-down', count: 1, workingLoadKg: lb(2_000) },
    'Tie it down with 1 more tie-down and 2,000 lb more of counted working load.',
  ],
  [{ kind: 'tie-down', count: 2, workingLoadKg: lb(0) }, 'Tie it down with 2 more tie-downs.'],
];

test.each(REMEDIES)('remedy %o', (remedy, says) => {
  expect(remedyWords(remedy, NAMES)).toBe(says);
});

const FLAGS: readonly [Flag['evidence'], string, string][] = [
  [
    {
      kind: 'jack-load',
      when: 'loaded',
      check: { loadN: lbf(1_770), isLeast: false, count: 1, liftN: lbf(1_700), supportN: null, short: 'lift' },
      trips: TRIPS,
    },
    'Jack too small',
    'Unhitched as it was loaded, 1,770 lb would stand on the jack; it lifts 1,700 lb.',
  ],
  [
    {
      kind: 'over-ramp',
      machineId: 'loader',
      machineKg: lb(8_000),
      ratingKg: lb(7_000),
      overKg: lb(1_000),
      trips: TRIPS,
    },
    'Heavier than the ramps carry',
    'The track loader weighs 8,000 lb, 1,000 lb more than the ramps carry.',
  ],
  [
    { kind: 'rear-lift', machineId: 'gone', machineKg: lb(8_000), liftN: lbf(2_967), trips: TRIPS },
    'Nothing holds the tail while it loads',
    'The machine pulls the hitch up with 2,967 lb while it stands at the tail.',
  ],
  [
    { kind: 'too-wide', machineId: 'loader', machineM: inch(81), roomM: inch(80), between: 'deck-edges', trips: TRIPS },
    'Machine too wide',
    'The track loader is 81 in wide; the deck has 80 in.',
  ],
  [
    {
      kind: 'too-long',
      machineId: 'loader',
      machineM: feet(23),
      roomM: feet(20),
      of: 'deck',
      stands: false,
      trips: TRIPS,
    },
    'Machine too long for the deck',
    'The track loader is 23 ft long; the deck has 20 ft. Not even its wheels or tracks have room.',
  ],
  [
    { kind: 'tie-downs-short', on: day('2026-05-20'), tied: STRAPS, trips: TRIPS },
    'Tied down with too little',
    'Wed 20 May: 4 tie-downs that count for 4,000 lb. Wanted: 4 that count for 6,000 lb; one that ends on the machine counts half (49 CFR 393.106 to 393.130). 1 trip like it.',
  ],
];

test.each(FLAGS.map(([evidence, title, says]) => [evidence.kind, evidence, title, says] as const))(
  'flag %s',
  (_kind, evidence, title, says) => {
    const flag: Flag = {
      key: 'k',
      rule: 'too-wide',
      severity: 'limit',
      since: null,
      evidence,
      clears: [{ kind: 'rear-support' }],
    };
    expect(flagWords(flag, NAMES)).toMatchObject({ title, says });
  },
);

test('where to park it', () => {
  const parking = {
    machineId: 'loader',
    balancePointM: inch(156.35),
    frontM: null,
    inside: { fromM: inch(149.6), toM: inch(161.4) },
    tightest: { kind: 'tongue-share-low' as const, subject: null, shareLeft: 0.2 },
    deckKnown: true,
  };
  expect(parkingWords(parking)).toBe(
    'balance point 156.5 in behind the coupler; 150 in to 161 in keeps every limit that depends on it',
  );
  expect(parkingWords({ ...parking, inside: null })).toBe(
    'balance point 156.5 in behind the coupler, though no place keeps every limit',
  );
});
