import { describe, expect, test } from 'vitest';
import { type CivilDate, day } from '../../../src/rules/calendar/civil-date.js';
import { dayNumber, daysAfter } from '../../../src/rules/calendar/day-number.js';
import { type DeckNature, deckLifePrior } from '../../../src/rules/deck/deck-life-prior.js';
import { chanceOfNewDeck, deckDates, deckOutlook, decksEndingAfter } from '../../../src/rules/deck/deck-outlook.js';
import { pastDecks } from '../../../src/rules/deck/past-decks.js';
import type { DeckLife } from '../../../src/rules/facts/deck-life.js';
import expected from '../reference/r/deck-life.json' with { type: 'json' };

const PINE: DeckNature = { material: 'pine', wood: 'southern-pine', treated: true, stored: 'open' };
/** A median of 6.5 years in the open, as the R script has it. */
const POLICY = { decayIndex: null, deckLifeYears: 6.5 };
const LAID = day('2020-09-01');
const TODAY = day('2025-09-01');
const LIVES = [5.1, 5.8, 6.0, 6.2, 6.4, 6.9, 7.3, 8.0];

function deck(id: string, laidOn: CivilDate, years: number | null, more: Partial<DeckLife> = {}): DeckLife {
  const endedOn = years === null ? null : daysAfter(laidOn, Math.round(years * 365.25));
  return { partId: id, trailerId: `trailer-${id}`, laidOn, endedOn, wornOut: years !== null, ...PINE, ...more };
}

const WORN = LIVES.map((years, i) => deck(`worn-${i}`, day('2012-03-01'), years));
const own = { partId: 'own', laidOn: LAID, ...PINE };
const on = { asOf: TODAY, countedTo: TODAY };
const yearsTo = (date: CivilDate) => (dayNumber(date) - dayNumber(LAID)) / 365.25;

describe('the eight decks of a yard', () => {
  const outlook = deckOutlook(own, WORN, POLICY, on);
  if (outlook === null) throw new Error('wood has an outlook');

  test('forecast against R: 10, 50 and 90 % of decks that have lasted five years', () => {
    const fromR = expected.mixture.find(({ id }) => id === 'eight-decks')?.reached.map(({ age }) => age * 6.5) ?? [];
    const dates = deckDates(outlook, TODAY);
    const found = [dates.tenPercentOn, dates.halfOn, dates.ninetyPercentOn].map(yearsTo);
    // Lives and dates are rounded to whole days: within two of them.
    for (const [i, years] of found.entries()) expect(Math.abs(years - (fromR[i] ?? 0))).toBeLessThan(2 / 365);
  });

  test('Weibull for these decks alone, shape held by the prior, against R', () => {
    expect(outlook.yardFit?.shape).toBeCloseTo(expected.weibull.eight.shape, 2);
    expect(outlook.yardFit?.scaleYears).toBeCloseTo(expected.weibull.eight.scale, 2);
    expect(outlook.yardFit).toMatchObject({ wornOut: 8, decks: 8 });
    const lying = [deck('a', day('2021-09-01'), null), deck('b', LAID, null), deck('c', LAID, null)];
    const more = deckOutlook(own, [...WORN, ...lying], POLICY, on)?.yardFit;
    expect(more?.shape).toBeCloseTo(expected.weibull.withSurvivors.shape, 2);
    expect(more?.scaleYears).toBeCloseTo(expected.weibull.withSurvivors.scale, 2);
    expect(more).toMatchObject({ wornOut: 8, decks: 11 });
  });

  test('the chance of needing a deck before a date is that of one which lies today, and 0 before today', () => {
    const { halfOn } = deckDates(outlook, TODAY);
    expect(chanceOfNewDeck(outlook, TODAY, halfOn)).toBeCloseTo(0.5, 3);
    expect(chanceOfNewDeck(outlook, TODAY, day('2025-08-01'))).toBe(0);
    const later = day('2026-03-01');
    expect(deckDates(outlook, later).halfOn > halfOn).toBe(true);
  });
});

test('a deck counts once, whether the list has it or not', () => {
  const without = deckOutlook(own, WORN, POLICY, on);
  const within = deckOutlook(own, [...WORN, deck('own', LAID, null)], POLICY, on);
  expect(within?.wornOut).toBe(without?.wornOut);
  expect(within?.survivors).toBe(without?.survivors);
  for (const [i, { weight }] of (without?.mixture.components ?? []).entries()) {
    expect(within?.mixture.components[i]?.weight).toBeCloseTo(weight, 9);
  }
});

test('the order in which decks are handed over changes nothing, to the last digit', () => {
  expect(deckOutlook(own, WORN.toReversed(), POLICY, on)).toEqual(deckOutlook(own, WORN, POLICY, on));
});

test('decks sold or taken off for another reason say that they lasted, never that they wore out', () => {
  const sold = deck('sold', day('2015-01-01'), 9, { wornOut: false });
  const before = deckOutlook(own, WORN, POLICY, on);
  const after = deckOutlook(own, [...WORN, sold], POLICY, on);
  if (before === null || after === null) throw new Error('wood has an outlook');
  expect(after.wornOut).toBe(8);
  expect(after.survivors).toBe(before.survivors + 1);
  expect(deckDates(after, TODAY).halfOn > deckDates(before, TODAY).halfOn).toBe(true);
  expect(after.past).toMatchObject({ decks: 8, stillInUse: 0 });
});

test('nothing known of a day to come is used: a deck that ends next month still lies today', () => {
  const ending = deck('ending', day('2019-09-15'), 6.05);
  const outlook = deckOutlook(own, [...WORN, ending], POLICY, on);
  expect(outlook?.wornOut).toBe(8);
  expect(decksEndingAfter([...WORN, ending], TODAY)).toEqual([ending.endedOn]);
  expect(decksEndingAfter(WORN, TODAY)).toEqual([]);
});

test('decks of unlike wood are counted by their own expected life, and left out of what decks like it did', () => {
  const oak = LIVES.map((years, i) =>
    deck(`oak-${i}`, day('2005-01-01'), years, { material: 'oak', wood: 'white-oak', treated: false }),
  );
  const outlook = deckOutlook(own, oak, { decayIndex: 50, deckLifeYears: null }, on);
  expect(outlook?.wornOut).toBe(8);
  expect(outlook?.past).toBeNull();
  expect(outlook?.yardFit).toBeNull();
});

describe('the owner’s estimate', () => {
  test.each([
    // By hand from the stated factors: years by wood, 50 / index, treated × 1.3, cover × 1.5.
    [{ ...PINE }, 50, 6.5],
    [{ ...PINE, treated: false }, 50, 5],
    [{ ...PINE, stored: 'cover' }, 50, 9.75],
    [{ ...PINE }, 100, 3.25],
    [{ ...PINE }, 250, 3.25],
    [{ ...PINE }, 8, 16.25],
    [{ material: 'oak', wood: 'white-oak', treated: false, stored: 'open' }, 50, 10],
    [{ material: 'oak', wood: 'red-oak', treated: false, stored: 'open' }, 50, 5],
  ] as const)('%o at index %s: %s years', (nature, decayIndex, years) => {
    const prior = deckLifePrior(nature, { decayIndex, deckLifeYears: null });
    expect(prior?.medianYears).toBeCloseTo(years, 9);
    expect(prior?.basis).toBe('reckoned');
  });

  test('a yard’s own years beat it, but for the roof', () => {
    expect(deckLifePrior({ ...PINE, stored: 'cover' }, { decayIndex: 90, deckLifeYears: 8 })).toMatchObject({
      medianYears: 12,
      basis: 'setting',
    });
  });

  test('what nobody said is named, and steel does not rot', () => {
    const nobody = { material: 'pine', wood: null, treated: null, stored: null } as const;
    expect(deckLifePrior(nobody, { decayIndex: null, deckLifeYears: null })?.assumed).toEqual([
      'deck-wood',
      'treated',
      'stored',
      'decay-index',
    ]);
    expect(deckLifePrior({ ...PINE, material: 'tread-plate' }, POLICY)).toBeNull();
    expect(deckOutlook({ ...own, material: 'tread-plate' }, WORN, POLICY, on)).toBeNull();
  });
});

describe('past decks as they are', () => {
  test('median 6.3 years, halves 5.9 and 7.1', () => {
    const found = pastDecks(LIVES);
    expect(found?.medianYears).toBeCloseTo(6.3, 12);
    expect(found?.lowerYears).toBeCloseTo(5.9, 12);
    expect(found?.upperYears).toBeCloseTo(7.1, 12);
  });

  test('an odd number leaves its middle out of both halves; below four decks there are no halves', () => {
    expect(pastDecks([5, 1, 4, 2, 3])).toEqual({ decks: 5, medianYears: 3, lowerYears: 1.5, upperYears: 4.5 });
    expect(pastDecks([4, 6, 5])).toEqual({ decks: 3, medianYears: 5, lowerYears: null, upperYears: null });
    expect(pastDecks([])).toBeNull();
  });
});
