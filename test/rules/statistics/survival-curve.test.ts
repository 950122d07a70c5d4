import { describe, expect, it } from 'vitest';
import type { Lifetime } from '../../../src/rules/statistics/lifetime.js';
import { ageReachedOnCurve, survivalAt, survivalCurve } from '../../../src/rules/statistics/survival-curve.js';
import made from '../reference/r/survival.json' with { type: 'json' };

function lives(age: readonly number[], died: readonly number[], entry: readonly number[] = []): Lifetime[] {
  return age.map((each, place) => ({ age: each, died: died[place] === 1, watchedFrom: entry[place] ?? 0 }));
}

const curveOf = (id: string) => {
  const found = made.fits.find((each) => each.id === id);
  return survivalCurve(lives(found?.age ?? [], found?.died ?? []));
};

describe('the share alive without an assumed law', () => {
  it.each([...made.fits, ...made.truncated])('$id, step by step as R survfit has it', (expected) => {
    const curve = survivalCurve(lives(expected.age, expected.died, 'entry' in expected ? expected.entry : []));
    expect(curve.map(({ age, atRisk, died }) => ({ age, atRisk, died }))).toEqual(
      expected.curve.map(({ age, atRisk, died }) => ({ age, atRisk, died })),
    );
    for (const [place, step] of curve.entries()) {
      // Products of the same fractions in the same order: rounding only.
      expect(step.survival).toBeCloseTo(expected.curve[place]?.survival as number, 12);
      const error = expected.curve[place]?.standardError ?? null;
      if (error === null) expect(step.standardError).toBeNull();
      else expect(step.standardError).toBeCloseTo(error, 12);
    }
  });

  it.each(made.fits.filter(({ id }) => id !== 'V1'))('$id: quartiles as R gives them', ({ age, died, quartiles }) => {
    const curve = survivalCurve(lives(age, died));
    for (const [place, share] of [0.25, 0.5, 0.75].entries()) {
      const expected = quartiles[place] ?? null;
      const reached = ageReachedOnCurve(curve, share);
      if (expected === null) expect(reached).toBeNull();
      else expect(reached).toBeCloseTo(expected, 9);
    }
  });

  it('V1: the curve ends level at a half; the age is where it got there, 386, while R takes the middle to the last removal', () => {
    expect(made.fits.find(({ id }) => id === 'V1')?.quartiles).toEqual([289.5, (386 + 500) / 2, null]);
    expect(ageReachedOnCurve(curveOf('V1'), 0.25)).toBe(289.5);
    expect(ageReachedOnCurve(curveOf('V1'), 0.5)).toBe(386);
  });

  // The values themselves, as printed for these data (five or six figures).
  it('V2, V3 and V4 come to the printed shares', () => {
    const absorbers = curveOf('V2');
    expect([6700, 14300, 20100, 27490].map((miles) => survivalAt(absorbers, miles).toFixed(5))).toEqual([
      '0.97368',
      '0.82729',
      '0.71844',
      '0.28738',
    ]);
    const cages = curveOf('V3');
    expect([230, 423, 1009, 1510].map((hours) => survivalAt(cages, hours).toFixed(6))).toEqual([
      '0.999211',
      '0.997367',
      '0.991732',
      '0.944506',
    ]);
    const weeks = curveOf('V4');
    expect([6, 7, 10, 13, 16, 22, 23].map((week) => survivalAt(weeks, week).toFixed(6))).toEqual([
      '0.857143',
      '0.806723',
      '0.752941',
      '0.690196',
      '0.627451',
      '0.537815',
      '0.448179',
    ]);
    const errors = weeks.filter(({ age }) => [6, 13, 23].includes(age)).map((step) => step.standardError?.toFixed(5));
    expect(errors).toEqual(['0.07636', '0.10681', '0.13459']);
  });

  it('V1 and V7: a twentieth a failure down to a half; the last of five alone at risk brings it to nothing', () => {
    const halves = curveOf('V1');
    expect(halves.map((step) => step.survival.toFixed(2))).toEqual(
      Array.from({ length: 10 }, (_, place) => (0.95 - 0.05 * place).toFixed(2)),
    );
    expect(curveOf('V7').map((step) => step.survival.toFixed(1))).toEqual(['0.8', '0.6', '0.0']);
  });

  it('eight decks: the middle is 6.3 years, half of them between 5.9 and 7.1', () => {
    const curve = curveOf('decks');
    expect([0.25, 0.5, 0.75].map((share) => ageReachedOnCurve(curve, share)?.toFixed(2))).toEqual([
      '5.90',
      '6.30',
      '7.10',
    ]);
  });

  it('a curve that has not come down so far names no age, and before the first death all live', () => {
    const curve = curveOf('V3');
    expect(ageReachedOnCurve(curve, 0.5)).toBeNull();
    expect(survivalAt(curve, 100)).toBe(1);
    expect(survivalCurve([])).toEqual([]);
  });
});
