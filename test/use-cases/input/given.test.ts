import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { PLAUSIBLE_BUILD } from '../../../src/rules/facts/plausible.js';
import { lb } from '../../../src/rules/units/mass.js';
import { psi } from '../../../src/rules/units/pressure.js';
import { readBuildSheet } from '../../../src/use-cases/input/build-sheet-input.js';
import { Given } from '../../../src/use-cases/input/given.js';
import { readReading } from '../../../src/use-cases/input/reading-input.js';
import { readTrip } from '../../../src/use-cases/input/trip-input.js';
import { aBuild, TODAY } from '../../support/trailers.js';

const problemsOf = (input: unknown, read: (given: Given) => unknown) => {
  const given = Given.from(input);
  read(given);
  return given.problems;
};

describe('what a door hands in', () => {
  it('a sane build is taken as it is, and what was left out is unknown', () => {
    const given = Given.from(aBuild({ plate: null }));
    const build = readBuildSheet(given);
    expect(given.problems).toEqual([]);
    expect(build.plate.gvwrKg).toBeNull();
    expect(build.deck.tiltLengthM).toBeNull();
    expect(build.axles.map((axle) => axle.number)).toEqual([1, 2]);
  });

  it('a trailer of which nothing is known can be entered', () => {
    expect(problemsOf({}, readBuildSheet)).toEqual([]);
  });

  it('a plate far above the road limit is refused in pounds and kilograms', () => {
    const problems = problemsOf({ plate: { gvwrKg: lb(140_000) } }, readBuildSheet);
    expect(problems).toEqual([
      {
        field: 'plate.gvwrKg',
        message: "Enter the plate's GVWR as a number, 500 to 80,000 lb (227 to 36,287 kg).",
      },
    ]);
  });

  it('a number written as text is refused, not guessed at', () => {
    expect(problemsOf({ plate: { gvwrKg: '6350' } }, readBuildSheet).map((one) => one.field)).toEqual(['plate.gvwrKg']);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, -1, {}, [], true])('a plate of %o is refused', (gvwrKg) => {
    expect(problemsOf({ plate: { gvwrKg } }, readBuildSheet).map((one) => one.field)).toEqual(['plate.gvwrKg']);
  });

  it('150 psi, the end of the range, is inside it', () => {
    expect(problemsOf({ plate: { coldPressureKpa: psi(150) } }, readBuildSheet)).toEqual([]);
    expect(PLAUSIBLE_BUILD.plateColdPressure.high).toBe(psi(150));
  });

  it('a misspelt field is named, so that nobody believes they gave it', () => {
    const problems = problemsOf({ plate: { gvwrLb: 14_000 } }, readBuildSheet);
    expect(problems).toEqual([
      {
        field: 'plate.gvwrLb',
        message: 'There is no field of this name. Leave it out, or use one of: gvwrKg, coldPressureKpa.',
      },
    ]);
  });

  it('every problem is named at once', () => {
    const fields = problemsOf(
      { plate: { gvwrKg: 0 }, empty: { massKg: 2_000, basis: 'felt' }, axles: [{ number: 2 }, {}], deck: 7 },
      readBuildSheet,
    ).map((one) => one.field);
    expect(fields.sort()).toEqual(['axles[0].number', 'deck', 'empty.basis', 'plate.gvwrKg']);
  });

  it('a weight must say how it is known', () => {
    expect(problemsOf({ empty: { massKg: 2_000 } }, readBuildSheet)).toEqual([
      { field: 'empty.basis', message: 'Say how the empty weight is known: weighed, stated, assumed.' },
    ]);
  });

  it('axles out of order are refused', () => {
    const axles = [{ fromCouplerM: 5 }, { fromCouplerM: 4 }];
    expect(problemsOf({ axles }, readBuildSheet).map((one) => one.field)).toEqual(['axles[1].fromCouplerM']);
  });

  it('a trip cannot end before it starts, nor tomorrow', () => {
    const trip = (startedOn: string, endedOn: string) =>
      problemsOf({ startedOn, endedOn }, (given) => readTrip(given, TODAY)).map((one) => one.message);
    expect(trip('2025-06-10', '2025-06-09')).toEqual(['Enter the day the trip ended on or after the day it started.']);
    expect(trip('2025-06-10', '2025-06-17')).toEqual(['Enter the day the trip ended on or before today.']);
    expect(trip('2025-02-29', '2025-03-01')).toEqual([
      'Enter the day the trip started as a day that exists, written YYYY-MM-DD.',
    ]);
  });

  it('4,000 miles in one day has a slipped digit', () => {
    const distanceKm = 4_000 * 1.609344;
    const one = { startedOn: '2025-06-10', endedOn: '2025-06-10', distanceKm };
    expect(problemsOf(one, (given) => readTrip(given, TODAY)).map((problem) => problem.field)).toEqual(['distanceKm']);
    expect(problemsOf({ ...one, startedOn: '2025-06-06' }, (given) => readTrip(given, TODAY))).toEqual([]);
  });

  it('a meter that rolled over must say where', () => {
    const fields = (input: object) =>
      problemsOf({ takenOn: '2025-06-10', shownKm: 12, ...input }, (given) =>
        readReading(given, day('2025-06-16')),
      ).map((one) => one.field);
    expect(fields({ kind: 'rolled-over' })).toEqual(['meterSpanKm']);
    expect(fields({ kind: 'rolled-over', meterSpanKm: 160_934.4 })).toEqual([]);
    expect(fields({ meterSpanKm: 160_934.4 })).toEqual(['meterSpanKm']);
    expect(fields({ kind: 'rolled-over', meterSpanKm: 160_934.4, shownKm: 170_000 })).toEqual(['shownKm']);
  });

  it('a text is trimmed, and one with a zero byte is refused', () => {
    const given = Given.from({ name: '  T-07 ', bad: 'a\u0000b', long: 'x'.repeat(25), blank: '   ' });
    expect(given.text('name', 'the name', 24)).toBe('T-07');
    expect(given.text('blank', 'the blank', 24)).toBeNull();
    expect(given.text('bad', 'the mark', 24)).toBeNull();
    expect(given.text('long', 'the mark', 24)).toBeNull();
    expect(given.problems.map((one) => one.field)).toEqual(['bad', 'long']);
  });
});
