import { describe, expect, test } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { buildOn } from '../../../src/rules/facts/build-on.js';
import { partsOn } from '../../../src/rules/facts/parts-on.js';
import { build, tire } from '../sample-facts.js';

describe('the build of a day', () => {
  const first = build({ id: 'a', effectiveFrom: day('2021-03-01') });
  const second = build({ id: 'b', effectiveFrom: day('2023-06-15') });

  test('is the version in force on it, whatever the order of the list', () => {
    for (const builds of [
      [first, second],
      [second, first],
    ]) {
      expect(buildOn(builds, day('2023-06-14'))?.id).toBe('a');
      expect(buildOn(builds, day('2023-06-15'))?.id).toBe('b');
    }
  });

  test('before the first version is the first', () => {
    expect(buildOn([second, first], day('2019-01-01'))?.id).toBe('a');
  });

  test('of two from one day is the same one in either order', () => {
    const again = build({ id: 'c', effectiveFrom: day('2023-06-15') });
    expect([buildOn([second, again], day('2024-01-01'))?.id, buildOn([again, second], day('2024-01-01'))?.id]).toEqual([
      'c',
      'c',
    ]);
  });

  test('is none when nobody entered one', () => {
    expect(buildOn([], day('2024-01-01'))).toBeNull();
  });
});

describe('the tires of a day', () => {
  const old = { ...tire('1L', {}, day('2020-05-01')), id: 'old', removedOn: day('2024-05-01') };
  const fresh = { ...tire('1L', {}, day('2024-05-01')), id: 'fresh' };
  const always = { ...tire('1R'), id: 'always' };
  const on = (date: string) => partsOn([old, fresh, always], 'tire', day(date)).map((part) => part.id);

  test('on the day of a change only the new one is on', () => {
    expect([on('2020-04-30'), on('2024-04-30'), on('2024-05-01')]).toEqual([
      ['always'],
      ['old', 'always'],
      ['fresh', 'always'],
    ]);
  });

  test('other parts are not tires', () => {
    expect(partsOn([{ ...always, kind: 'deck' }], 'tire', day('2024-05-01'))).toEqual([]);
  });
});
