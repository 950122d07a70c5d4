import { describe, expect, test } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { deckDates } from '../../../src/rules/deck/deck-outlook.js';
import { explain } from '../../../src/rules/explain/explain.js';
import { explainedFit } from '../../../src/rules/explain/explained-fit.js';
import { deckLifeOf } from '../../../src/rules/history/deck-life.js';
import { trailerOn } from '../../../src/rules/history/trailer-on.js';
import { inch } from '../../../src/rules/units/length.js';
import { kPa, toPsi } from '../../../src/rules/units/pressure.js';
import { build, item, load, tire, tires } from '../sample-facts.js';
import { done, facts, machine } from '../sample-trailer.js';

const TODAY = day('2025-09-01');
const DECK = {
  ...build().deck,
  material: 'pine' as const,
  wood: 'southern-pine' as const,
  woodGrade: 'no-2' as const,
  treated: true,
  plankThicknessM: inch(1.5),
  plankWidthM: inch(7.25),
  crossmemberSpacingM: inch(16),
};
const part = { ...tire('deck', {}, day('2020-09-01')), kind: 'deck' as const, position: null, tire: null };
const loader = machine('loader', 3_750, {
  contact: 'tires',
  contactCount: 4,
  contactLengthM: inch(8),
  contactWidthM: inch(12),
});
const some = facts({ builds: [build({ deck: DECK })], machines: [loader], parts: [...tires(2), part] });

describe('how a plank was worked out', () => {
  const input = {
    load: load({ cargo: [item('loader', 3_750, { machineId: 'loader', basis: 'stated' })] }),
    startsOn: TODAY,
    endsOn: TODAY,
    commercial: false,
    towVehicle: null,
    driver: null,
  };
  const working = explainedFit(some, input, TODAY).workings.find(({ of }) => of === 'plank');

  test('P2: 1,655 psi from the machine’s weight, the planks and the spacing, thickness mattering most', () => {
    expect(toPsi(kPa(Number(working?.value)))).toBeCloseTo(1_655, 0);
    expect(working?.inputs.map(({ name, basis }) => [name, basis])).toEqual([
      ['cargo', 'stated'],
      ['contact-load', 'assumed'],
      ['strength', 'published'],
      ['plank-thickness', 'stated'],
      ['span', 'stated'],
    ]);
    // Stress goes with 1/t²: 3 % of thickness moves it by 6 %, of weight by 3 %, of span by 4 %.
    expect(working?.inputs[working.mattersMost ?? -1]?.name).toBe('plank-thickness');
    expect((working?.inputs[0]?.sway ?? 0) / Number(working?.value)).toBeCloseTo(0.03, 6);
  });
});

describe('how the life of a deck was worked out', () => {
  test('the day is the forecast’s own, and the owner’s estimate moves it most', () => {
    const working = explain(some, TODAY).find(({ of }) => of === 'deck-life');
    const outlook = deckLifeOf(trailerOn(some, TODAY));
    expect(working?.value).toBe(outlook === null ? null : deckDates(outlook, TODAY).halfOn);
    expect(working?.inputs[working.mattersMost ?? -1]).toMatchObject({ name: 'life-scale', basis: 'assumed' });
  });

  test('soft boards leave nothing to explain', () => {
    const line = {
      code: 'sag',
      result: null,
      position: '3',
      measured: { quantity: 'board-sag-mm' as const, value: 15 },
    };
    const record = done('deck-probe', '2025-08-20', { outcome: 'fail', lines: [line] });
    expect(explain({ ...some, checkRecords: [record] }, TODAY).some(({ of }) => of === 'deck-life')).toBe(false);
  });
});
