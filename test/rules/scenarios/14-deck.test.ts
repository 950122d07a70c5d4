import { describe, expect, test } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { type CivilDate, day } from '../../../src/rules/calendar/civil-date.js';
import { dayNumber, daysAfter } from '../../../src/rules/calendar/day-number.js';
import { afterYears, chanceOfNewDeck, type DeckOutlook, deckDates } from '../../../src/rules/deck/deck-outlook.js';
import type { CheckedLine } from '../../../src/rules/facts/check.js';
import type { DeckLife } from '../../../src/rules/facts/deck-life.js';
import type { Part } from '../../../src/rules/facts/part.js';
import { DEFAULT_POLICY } from '../../../src/rules/facts/yard-policy.js';
import { fit } from '../../../src/rules/fit/fit.js';
import { inch } from '../../../src/rules/units/length.js';
import { build, item, load, tire, tires } from '../sample-facts.js';
import { done, facts, job, kind, machine } from '../sample-trailer.js';

/** The yard's replaced decks, years. */
const LASTED = [5.1, 5.8, 6.0, 6.2, 6.4, 6.9, 7.3, 8.0];
const TODAY = day('2025-09-01');
const LAID = day('2020-09-01');

function life(id: string, laidOn: CivilDate, years: number | null): DeckLife {
  return {
    partId: id,
    trailerId: `trailer-of-${id}`,
    laidOn,
    endedOn: years === null ? null : daysAfter(laidOn, Math.round(years * 365.25)),
    wornOut: years !== null,
    material: 'pine',
    wood: 'southern-pine',
    treated: true,
    stored: 'open',
  };
}

const REPLACED = LASTED.map((years, i) => life(`replaced-${i}`, day('2014-05-01'), years));
const STILL_IN_USE = [life('lying-1', day('2021-04-01'), null), life('lying-2', day('2022-06-01'), null)];

const deckPart: Part = { ...tire('deck', {}, LAID), id: 'deck-1', kind: 'deck', position: null, tire: null };

const pine = {
  ...build().deck,
  material: 'pine' as const,
  wood: 'southern-pine' as const,
  woodGrade: 'no-2' as const,
  treated: true,
  boardCount: 11,
  plankThicknessM: inch(1.5),
  plankWidthM: inch(7.25),
  crossmemberSpacingM: inch(16),
};

const yard = facts({
  builds: [build({ deck: pine })],
  parts: [...tires(2), deckPart],
  decks: [...REPLACED, ...STILL_IN_USE, life('deck-1', LAID, null)],
  trailer: { ...facts().trailer, stored: 'open' },
  policy: { ...DEFAULT_POLICY, deckLifeYears: 6 },
});

/** The scenario gives 0.2 year. */
function within(date: CivilDate, expected: string): void {
  expect(Math.abs(dayNumber(date) - dayNumber(day(expected)))).toBeLessThanOrEqual(0.2 * 365.25);
}

function outlookOf(assessed: ReturnType<typeof assess>): DeckOutlook {
  const { outlook } = assessed.deckLife;
  if (outlook === null) throw new Error('a wooden deck with a day of laying has an outlook');
  return outlook;
}

describe('14: when will a deck laid on 1 Sept 2020 want replacing, asked on 1 Sept 2025', () => {
  const outlook = outlookOf(assess(yard, TODAY));

  test('what past decks did: 6.3 years in the middle, half of them 5.9 to 7.1, so Dec 2026, late July 2026 to early Oct 2027', () => {
    const { past } = outlook;
    // Lives end on whole days: within one of them.
    expect(past?.medianYears).toBeCloseTo(6.3, 2);
    expect(past?.lowerYears).toBeCloseTo(5.9, 2);
    expect(past?.upperYears).toBeCloseTo(7.1, 2);
    expect(afterYears(LAID, past?.medianYears ?? 0).slice(0, 7)).toBe('2026-12');
    within(afterYears(LAID, past?.medianYears ?? 0), '2026-12-19');
    within(afterYears(LAID, past?.lowerYears ?? 0), '2026-07-26');
    within(afterYears(LAID, past?.upperYears ?? 0), '2027-10-07');
  });

  test('it rests on eight decks and leaves out the three still in use', () => {
    expect(outlook.past).toMatchObject({ decks: 8, stillInUse: 3 });
  });

  test('the Weibull statement counts survivors too, says r and n, and is given that the deck has lasted until today', () => {
    expect(outlook).toMatchObject({ wornOut: 8, survivors: 3 });
    expect(outlook.yardFit).toMatchObject({ wornOut: 8, decks: 11 });
    const { tenPercentOn, halfOn, ninetyPercentOn } = deckDates(outlook, TODAY);
    expect(tenPercentOn > TODAY && tenPercentOn < halfOn && halfOn < ninetyPercentOn).toBe(true);
    // The middle of a law over the middle of eight lives: it stays near, half a year being the spread of so few decks.
    expect(Math.abs(dayNumber(halfOn) - dayNumber(day('2026-12-19')))).toBeLessThan(0.5 * 365.25);
    expect(chanceOfNewDeck(outlook, TODAY, halfOn)).toBeCloseTo(0.5, 2);
  });

  test('no soft boards: nothing is flagged of the deck', () => {
    expect(assess(yard, TODAY).flags.filter(({ rule }) => rule === 'soft-deck' || rule === 'deck-plank')).toEqual([]);
  });
});

describe('14: another unit, 2 of 11 boards sink over half an inch, booked with a 5,900 lb lift on small wheels', () => {
  const lift = machine('lift', 5_900, {
    contact: 'small-wheels',
    contactCount: 4,
    contactLengthM: inch(3),
    contactWidthM: inch(5),
  });
  const lifted = load({ cargo: [item('lift', 5_900, { machineId: lift.id })] });
  const sinks = (board: string, mm: number): CheckedLine => ({
    code: 'probe',
    result: null,
    position: board,
    measured: { quantity: 'board-sag-mm', value: mm },
  });
  const probing = done('deck-probe', '2025-08-20', {
    outcome: 'fail',
    lines: [sinks('3', 15), sinks('4', 3), sinks('7', 14), sinks('8', 8)],
  });
  const unit = {
    ...yard,
    machines: [lift],
    jobs: [job('2025-09-04', { machineId: lift.id, load: lifted })],
    checkKinds: [kind('deck-probe', [{ kind: 'months', every: 1, toMonthEnd: false }])],
    checkRecords: [probing],
  };
  const ask = (cargo: typeof lifted) =>
    fit(
      unit,
      {
        load: cargo,
        startsOn: day('2025-09-04'),
        endsOn: day('2025-09-04'),
        commercial: false,
        towVehicle: null,
        driver: null,
      },
      TODAY,
    );

  test('it is stopped now, with boards and job named, and the forecast ignored', () => {
    const assessed = assess(unit, TODAY);
    expect(assessed.readiness).toBe('down');
    expect(assessed.flags.find(({ rule }) => rule === 'soft-deck')).toMatchObject({
      severity: 'stop',
      since: '2025-08-20',
      evidence: {
        boards: [{ board: '3' }, { board: '7' }],
        boardCount: 11,
        jobIds: ['job-2025-09-04'],
        machineIds: ['lift'],
      },
      clears: [{ kind: 'replace-boards', boards: ['3', '7'] }],
    });
    expect(assessed.deckLife.probed.soft.map(({ board }) => board)).toEqual(['3', '7']);
    expect(assessed.deckLife.probed.marked.map(({ board }) => board)).toEqual(['8']);
  });

  test('the job does not go until the boards are replaced', () => {
    const answer = ask(lifted);
    expect(answer.verdict).toBe('no-go');
    expect(answer.reasons.find((reason) => reason.kind === 'soft-deck')).toMatchObject({ boardCount: 11 });
    expect(answer.remedies).toContainEqual({ kind: 'replace-boards', boards: ['3', '7'] });
  });

  test('without the lift the boards are still a limit, and no stop', () => {
    const free = { ...unit, jobs: [] };
    expect(assess(free, TODAY).flags.find(({ rule }) => rule === 'soft-deck')?.severity).toBe('limit');
  });

  test('a new deck, or a probing passed since, clears it', () => {
    const mended = { ...unit, checkRecords: [probing, done('deck-probe', '2025-08-30')] };
    const relaid = { ...unit, parts: [...tires(2), { ...deckPart, fittedOn: day('2025-08-25') }] };
    for (const better of [mended, relaid]) {
      expect(assess(better, TODAY).flags.some(({ rule }) => rule === 'soft-deck')).toBe(false);
    }
  });
});
