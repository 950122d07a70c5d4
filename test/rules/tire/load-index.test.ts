import { expect, test } from 'vitest';
import { loadIndexCapacity } from '../../../src/rules/tire/load-index.js';
import { kg, toLb } from '../../../src/rules/units/mass.js';
import reference from '../reference/load-index.json' with { type: 'json' };

test('every index of the published table carries what the table says', () => {
  const rows = Object.entries(reference.kg);
  expect(rows).toHaveLength(131);
  for (const [index, capacity] of rows) expect([index, loadIndexCapacity(Number(index))]).toEqual([index, capacity]);
});

test('index 100 is 1,764 lb and index 121 is 3,197 lb, to the pound the sidewall prints', () => {
  expect([100, 121].map((index) => Math.round(toLb(loadIndexCapacity(index) ?? kg(0))))).toEqual([1_764, 3_197]);
});

test('in pounds every index is what is printed beside it, rounded', () => {
  const rows = Object.entries(reference.lb);
  expect(rows).toHaveLength(131);
  for (const [index, pounds] of rows) {
    expect([index, Math.round(toLb(loadIndexCapacity(Number(index)) ?? kg(0)))]).toEqual([index, pounds]);
  }
});

test.each([49, 181, 0, -1, 100.5, Number.NaN])('index %s is outside the table, so nothing is known', (index) => {
  expect(loadIndexCapacity(index)).toBeNull();
});
