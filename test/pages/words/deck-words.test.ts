import { describe, expect, test } from 'vitest';
import { deckLifeWords } from '../../../src/pages/words/deck-life-words.js';
import { boardNames, boardsOf, deckLackWords, stressFrom, stressWords } from '../../../src/pages/words/deck-words.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { daysAfter } from '../../../src/rules/calendar/day-number.js';
import { deckOutlook } from '../../../src/rules/deck/deck-outlook.js';
import { checkPlank } from '../../../src/rules/deck/plank-check.js';
import { inch, metres } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';

const TODAY = day('2025-09-01');
const PINE = { material: 'pine', wood: 'southern-pine', treated: true, stored: 'open' } as const;
const SOUND = { soft: [], marked: [], lostM: metres(0) };

describe('the life of a deck, told', () => {
  const worn = [5.1, 5.8, 6.0, 6.2, 6.4, 6.9, 7.3, 8.0].map((years, i) => ({
    ...PINE,
    partId: `deck-${i}`,
    trailerId: `trailer-${i}`,
    laidOn: day('2014-05-01'),
    endedOn: daysAfter(day('2014-05-01'), Math.round(years * 365.25)),
    wornOut: true,
  }));
  const outlook = deckOutlook(
    { ...PINE, partId: 'own', laidOn: day('2020-09-01') },
    worn,
    { decayIndex: null, deckLifeYears: null },
    { asOf: TODAY, countedTo: TODAY },
  );

  test('both statements, what each rests on and what it leaves out or includes', () => {
    const told = deckLifeWords({ outlook, probed: SOUND }, TODAY).join('\n');
    expect(told).toContain('8 decks like it wore out, at 6.3 years in the middle');
    expect(told).toContain('half of them between 5.9 and 7.1');
    expect(told).toContain('leaves out 0 decks still in use');
    expect(told).toContain('survivors included: 8 worn out of 8');
    expect(told).toContain('8 worn-out decks of 9 decks');
    expect(told).toContain('a proposal, no source');
    expect(told).not.toMatch(/NaN|undefined|null/);
  });

  test('soft boards silence the forecast', () => {
    const soft = [{ board: '3', on: TODAY, depthM: inch(0.6), kind: 'sinks' as const }];
    const [only, ...more] = deckLifeWords({ outlook, probed: { ...SOUND, soft } }, TODAY);
    expect(only).toContain('Probing beats any forecast: board 3 sinks 0.6 in.');
    expect(more).toEqual([]);
  });

  test('nothing known, nothing said', () => {
    expect(deckLifeWords({ outlook: null, probed: SOUND }, TODAY)).toEqual([]);
  });
});

test('a stressed plank says load, boards, stress, source and doubt', () => {
  const { worst } = checkPlank(
    {
      ...PINE,
      woodGrade: 'no-2',
      plankThicknessM: inch(1.5),
      plankWidthM: inch(7.25),
      crossmemberSpacingM: inch(16),
    },
    { massKg: lb(3_750), contact: 'tires', contactCount: 4, contactLengthM: inch(8), contactWidthM: inch(12) },
  );
  if (worst === null) throw new Error('all of it is known');
  expect(stressWords(worst)).toBe(
    '1,500 lb from one wheel, track or pad on one board while it drives on or off; that board is good for 1,205 lb',
  );
  expect(stressFrom(worst)).toContain('1,655 psi against 1,330 psi, the published design value');
  expect(stressFrom({ ...worst, verified: false })).toContain('stops no trip');
});

test('boards are called by their numbers where they have them', () => {
  expect(boardNames(['3', '7'])).toBe('boards 3 and 7');
  expect(boardNames([null, '7'])).toBe('2 boards');
  expect(boardsOf([1, 2], 11)).toBe('2 of 11 boards');
  expect(deckLackWords(['deck-wood', 'crossmember-spacing'])).toBe(
    'the wood of the deck and how far apart the crossmembers are',
  );
});
