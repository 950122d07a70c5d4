import { describe, expect, test } from 'vitest';
import { type CivilDate, day } from '../../../src/rules/calendar/civil-date.js';
import type { CheckedLine, CheckRecord, MeasuredQuantity } from '../../../src/rules/facts/check.js';
import type { Part } from '../../../src/rules/facts/part.js';
import { trailerOn } from '../../../src/rules/history/trailer-on.js';
import { probedDeck } from '../../../src/rules/inspection/soft-boards.js';
import { tire } from '../sample-facts.js';
import { done, facts } from '../sample-trailer.js';

const TODAY = day('2026-05-04');

function found(
  board: string | null,
  mm: number,
  quantity: MeasuredQuantity = 'board-sag-mm',
  code = 'sag',
): CheckedLine {
  return { code, result: null, position: board, measured: { quantity, value: mm } };
}

function probed(records: readonly CheckRecord[], laidOn: CivilDate | null = null) {
  const deck: Part = { ...tire('deck', {}, laidOn), kind: 'deck', position: null, tire: null };
  return probedDeck(trailerOn(facts({ checkRecords: records, parts: [deck] }), TODAY));
}

const boards = (list: readonly { readonly board: string | null }[]) => list.map(({ board }) => board);

describe('what probing says of a deck', () => {
  // A quarter of an inch is 6.35 mm, half 12.7 mm: common practice.
  test('just half an inch is marked, more is soft; just a quarter is sound, more is marked', () => {
    const seen = probed([
      done('deck-probe', '2026-05-01', {
        outcome: 'fail',
        lines: [found('1', 6.35), found('2', 6.4), found('3', 12.7), found('4', 12.8)],
      }),
    ]);
    expect(boards(seen.soft)).toEqual(['4']);
    expect(boards(seen.marked)).toEqual(['3', '2']);
  });

  test('a board counts once, by its worst; the deepest probe is taken as rotted off', () => {
    const lines = [found('1', 14), found('1', 20, 'probe-depth-mm', 'probe'), found('2', 13)];
    const seen = probed([done('deck-probe', '2026-05-01', { outcome: 'fail', lines })]);
    expect(seen.soft.map(({ board, kind }) => [board, kind])).toEqual([
      ['1', 'probe'],
      ['2', 'sinks'],
    ]);
    expect(seen.lostM).toBeCloseTo(0.02, 12);
  });

  test('a later look at the same board stands, and a pass of another check clears nothing', () => {
    const bad = done('deck-probe', '2026-05-01', { outcome: 'fail', lines: [found('1', 20)] });
    const better = done('deck-probe', '2026-05-02', { outcome: 'fail', lines: [found('1', 3)] });
    expect(probed([bad, better]).soft).toEqual([]);
    expect(boards(probed([bad, done('tires', '2026-05-02')]).soft)).toEqual(['1']);
    expect(probed([bad, done('deck-probe', '2026-05-02')]).soft).toEqual([]);
  });

  test('a pass that itself measured a soft board keeps what it measured', () => {
    const passed = done('deck-probe', '2026-05-01', { lines: [found('6', 15)] });
    expect(boards(probed([passed]).soft)).toEqual(['6']);
  });

  test('what was found before the deck was laid, or on that day, is of the old one', () => {
    const record = done('deck-probe', '2026-05-01', { outcome: 'fail', lines: [found('1', 20)] });
    expect(probed([record], day('2026-05-01')).soft).toEqual([]);
    expect(boards(probed([record], day('2026-04-30')).soft)).toEqual(['1']);
  });

  test('nothing measured, nothing found', () => {
    expect(probed([])).toEqual({ soft: [], marked: [], lostM: 0 });
  });
});
