import { describe, expect, test } from 'vitest';
import { clearanceWords } from '../../src/pages/words/clearance-words.js';
import { reasonWords, remedyWords, verdictSentence } from '../../src/pages/words/fit-words.js';
import { flagWords } from '../../src/pages/words/flag-words.js';
import { parkingWords } from '../../src/pages/words/parking-words.js';
import { day } from '../../src/rules/calendar/civil-date.js';
import type { FitReason } from '../../src/rules/fit/fit.js';
import type { Flag } from '../../src/rules/flags/flag.js';
import type { TieDownCheck } from '../../src/rules/load/tie-downs.js';
import { lbf } from '../../src/rules/units/force.js';
import { feet, inch } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';

const TODAY = day('2026-06-01');
const NAMES = { machines: new Map([['loader', 'Track loader']]), checkKinds: new Map<string, string>() };
const TRIPS = [{ tripId: 'trip-1', endedOn: day('2026-05-20') }];
const STRAPS: TieDownCheck = {
  need: { workingLoadKg: lb(6_000), count: 4, because: 'heavy-machine' },
  count: 4,
  workingLoadKg: lb(4_000),
  unrated: 2,
  standing: 'unrated',
};

const says = (reason: FitReason) => reasonWords(reason, NAMES, TODAY).says;

describe('reasons', () => {
  test('a lifted hitch says what a support takes', () => {
    const lift = {
      kind: 'rear-lift',
      machineId: 'loader',
      machineKg: lb(8_000),
      liftN: lbf(2_967),
      support: 'stabilizers',
      supportLeastN: lbf(7_417),
      supportMostN: lbf(8_000),
    } as const;
    expect(says(lift)).toBe(
      'With Track loader at the tail the hitch is pulled up with 2,967 lb. Set the stabilizers down first: they take 7,417 lb to 8,000 lb, by how the springs give and how firm the ground is.',
    );
    expect(says({ ...lift, support: 'deck-on-ground', supportLeastN: null, supportMostN: null })).toContain('pivot');
  });

  test('room, ramps, crest, tilt', () => {
    expect(
      says({ kind: 'too-wide', machineId: 'loader', machineM: inch(81), roomM: inch(80), between: 'fenders' }),
    ).toBe('Track loader is 81 in wide; there are 80 in between the fenders.');
    expect(
      says({ kind: 'too-long', machineId: 'loader', machineM: feet(17), roomM: feet(16), of: 'tilt', stands: null }),
    ).toBe(
      'Track loader is 17 ft long; the tilting part has 16 ft, 1 ft less. Whether its wheels or tracks have room is not known.',
    );
    expect(says({ kind: 'hangs-up', machineId: 'x', neededM: inch(5.65), clearanceM: inch(5), isMost: false })).toBe(
      'The machine has 5 in under its middle; where ramp and deck meet it needs 5.65 in.',
    );
    expect(says({ kind: 'tilt-stays-up', machineId: 'loader', shortM: inch(-9) })).toContain('9 in behind the pivot');
  });

  test('tie-downs: what they count for, what is wanted, what nobody rated', () => {
    expect(says({ kind: 'tie-downs', tied: STRAPS })).toBe(
      '4 tie-downs that count for 4,000 lb together; for 2 of them no limit is known. It needs at least 4, one near each corner, with working load limits that count for 6,000 lb, half its weight; one that ends on the machine counts half.',
    );
    expect(says({ kind: 'tie-downs-unsaid', need: STRAPS.need })).toMatch(
      /^What ties it down is not recorded\. It needs/,
    );
  });

  test('the head of the page names what stops it', () => {
    const fit = (reason: FitReason) =>
      verdictSentence({
        verdict: 'no-go',
        loadCheck: { comparisons: [] },
        reasons: [reason],
      } as unknown as Parameters<typeof verdictSentence>[0]);
    expect(
      fit({ kind: 'too-wide', machineId: 'loader', machineM: inch(81), roomM: inch(80), between: 'fenders' }),
    ).toBe('Not this trailer: the machine is too wide for it.');
    expect(fit({ kind: 'tilt-stays-up', machineId: 'loader', shortM: inch(-9) })).toBe(
      'Not this trailer: its deck would not lie down under the machine.',
    );
  });
});

test('remedies', () => {
  expect(remedyWords({ kind: 'tie-down', count: 1, workingLoadKg: lb(2_000) }, NAMES)).toBe(
    'Tie it down with 1 more tie-down and 2,000 lb more of counted working load; one that ends on the machine counts half its limit.',
  );
  expect(remedyWords({ kind: 'fold-in', machineId: 'loader', lengthM: feet(16) }, NAMES)).toBe(
    'Fold in what sticks out of Track loader, or measure it as hauled: no more than 16 ft.',
  );
});

test('where to park it: the place, what is left, and between where', () => {
  const parking = {
    machineId: 'loader',
    balancePointM: inch(156.35),
    frontM: inch(96.35),
    inside: { fromM: inch(149.6), toM: inch(161.25) },
    tightest: { kind: 'tongue-share-low' as const, subject: null, shareLeft: 0.2 },
    deckKnown: true,
  };
  expect(parkingWords(parking, 'Track loader').says).toBe(
    'Track loader stands best with its balance point 156.5 in behind the coupler, its front 96.5 in behind it. 20 % is left of the tightest limit there, the least that should rest on the tongue. Every limit that depends on the place holds from 150 in to 161 in.',
  );
  const past = { ...parking, inside: null, tightest: { kind: 'axle' as const, subject: '2', shareLeft: -0.04 } };
  expect(parkingWords(past, 'Track loader').says).toContain('Even there axle 2 is passed by 4 %.');
  expect(parkingWords({ ...parking, deckKnown: false }, 'It').from).toContain('Where the deck lies is not recorded');
});

describe('flags', () => {
  const words = (evidence: Flag['evidence'], clears: Flag['clears'] = [{ kind: 'rear-support' }]) => {
    const flag: Flag = { key: 'k', rule: 'too-wide', severity: 'limit', since: null, evidence, clears };
    return { ...flagWords(flag, NAMES, TODAY), clears: clearanceWords(flag, NAMES) };
  };

  test('a jack under the tongue weight', () => {
    const check = {
      loadN: lbf(292),
      isLeast: false,
      count: 1,
      liftN: lbf(250),
      supportN: null,
      short: 'lift',
    } as const;
    expect(words({ kind: 'jack-load', when: 'empty', check, trips: [] })).toMatchObject({
      title: 'Jack too small for the trailer',
      evidence: 'Unhitched and empty, 292 lb would stand on the jack; 1 jack lifts 250 lb.',
    });
    expect(
      words({ kind: 'jack-load', when: 'loaded', check: { ...check, isLeast: true }, trips: TRIPS }).evidence,
    ).toBe('Unhitched as loaded on 1 recent trip, at least 292 lb would stand on the jack; 1 jack lifts 250 lb.');
  });

  test('nothing under the tail, and what clears it', () => {
    const told = words({
      kind: 'rear-lift',
      machineId: 'loader',
      machineKg: lb(8_000),
      liftN: lbf(2_967),
      trips: TRIPS,
    });
    expect(told.evidence).toBe(
      'Track loader, 8,000 lb, pulls the hitch up with 2,967 lb while it stands at the tail. Driven on for 1 recent trip.',
    );
    expect(told.clears).toBe('Clears when stabilizers or a knee brace under the tail are recorded on the build sheet.');
  });

  test('ramps, width, length, tie-downs', () => {
    expect(
      words({
        kind: 'over-ramp',
        machineId: 'loader',
        machineKg: lb(8_000),
        ratingKg: lb(7_000),
        overKg: lb(1_000),
        trips: TRIPS,
      }).evidence,
    ).toContain('the ramps carry 7,000 lb together, 1,000 lb less');
    expect(
      words({
        kind: 'too-long',
        machineId: 'loader',
        machineM: feet(17),
        roomM: feet(16),
        of: 'tilt',
        stands: false,
        trips: TRIPS,
      }).title,
    ).toBe('Machine too long for the tilt');
    expect(words({ kind: 'tie-downs-short', on: day('2026-05-20'), tied: STRAPS, trips: TRIPS }).evidence).toMatch(
      /^On Wed 20 May 2026: 4 tie-downs that count for 4,000 lb together;/,
    );
  });
});
