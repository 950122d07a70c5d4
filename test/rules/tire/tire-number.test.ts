import { describe, expect, test } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { parseTireNumber } from '../../../src/rules/tire/tire-number.js';
import reference from '../reference/tire-number-cases.json' with { type: 'json' };

const asOf = day('2025-06-01');
const published = (id: string) => {
  const found = reference.cases.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no published case ${id}`);
  return { text: found.input.text ?? '', expected: found.expected };
};

describe('a tire number is read in each of its forms', () => {
  test('13 symbols: plant, maker, date', () => {
    const { text, expected } = published('tin-full-13');
    expect(parseTireNumber(text, asOf)).toMatchObject({
      kind: 'read',
      form: 'present',
      plantCode: expected.plantCode,
      manufacturerCode: expected.manufacturerCode,
      date: { code: expected.dateCode, year: expected.year, week: expected.week },
      warnings: [],
    });
  });

  test.each(['tin-full-12', 'tin-full-old8'])('the old form, %s', (id) => {
    const { text, expected } = published(id);
    expect(parseTireNumber(text, asOf)).toMatchObject({
      kind: 'read',
      form: 'old',
      plantCode: expected.plantCode,
      date: { code: expected.dateCode, year: expected.year, week: expected.week },
      warnings: [],
    });
  });

  test('a retread, with its R and DOT set apart', () => {
    const retread = { kind: 'read', form: 'retread', plantCode: '9X9', date: { code: '2319' } };
    expect(parseTireNumber('9X92319', asOf)).toMatchObject(retread);
    expect(parseTireNumber('DOT-R 9x9 2319', asOf)).toMatchObject(retread);
    expect(parseTireNumber('DOT R 9X9-2319', asOf)).toMatchObject(retread);
  });

  test('a number that merely begins with R keeps it', () => {
    expect(parseTireNumber('R9AB1207', asOf)).toMatchObject({ form: 'old', plantCode: 'R9' });
  });

  test('a three-digit date is older than 25 years, whichever its decade', () => {
    const { text, expected } = published('tin-full-3digit');
    expect(parseTireNumber(text, asOf)).toEqual({
      kind: 'before-2000',
      plantCode: 'X9',
      dateDigits: expected.dateDigits,
      week: expected.week,
      yearCandidates: expected.yearCandidates,
    });
  });
});

describe('what is off the rule', () => {
  test('the old form after the day it lapsed is read, with a warning', () => {
    const { text } = published('tin-full-late12');
    expect(parseTireNumber(text, asOf)).toMatchObject({
      kind: 'read',
      date: { madeFrom: '2025-04-13' },
      warnings: ['old-form-lapsed'],
    });
    expect(parseTireNumber(text.replace('1525', '1425'), asOf)).toMatchObject({ kind: 'read', warnings: [] });
  });

  test('a date after the day of asking is refused', () => {
    expect(parseTireNumber(published('tin-full-future').text, asOf)).toMatchObject({
      kind: 'refused',
      reason: { kind: 'in-the-future' },
    });
  });

  test.each([...'GIOQSZ'])('%s never stands in a tire number', (symbol) => {
    expect(parseTireNumber(published('tin-full-g').text.replace('G', symbol), asOf)).toEqual({
      kind: 'refused',
      reason: { kind: 'symbol-not-allowed', symbol },
    });
  });

  test.each([...'ABCDEFHJKLMNPRTUVWXY0123456789'])('%s may stand in a tire number', (symbol) => {
    expect(parseTireNumber(`X9${symbol}BCDEF3618`, asOf)).toMatchObject({ kind: 'read' });
  });

  test.each([
    ['', 0],
    ['3618', 4],
    ['9X9ABCDEFA2319', 14],
  ])('"%s" has no form', (text, symbols) => {
    expect(parseTireNumber(text, asOf)).toEqual({ kind: 'refused', reason: { kind: 'no-such-form', symbols } });
  });

  test('a week that its year does not have is refused as such', () => {
    expect(parseTireNumber('9X9ABCDEF5320', asOf)).toMatchObject({ reason: { kind: 'no-such-week', year: 2020 } });
  });
});
