import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contactLoads, isLacking, type StandingMachine } from '../../../src/rules/deck/contact-load.js';
import {
  bendingStress,
  boardsUnder,
  momentAtMiddle,
  momentOffCentre,
  momentOverTwoSpans,
  sag,
  sectionModulus,
  shearStress,
  twoSpanShares,
} from '../../../src/rules/deck/plank-bending.js';
import { plateStress } from '../../../src/rules/deck/tread-plate.js';
import { lbf, newtons, toLbf } from '../../../src/rules/units/force.js';
import { inch, metres, toInch } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { kPa, psi, toPsi } from '../../../src/rules/units/pressure.js';

/** Pound-inches as newton-metres. */
const poundInches = (value: number) => lbf(value) * inch(1);
const on = (pounds: number, patchIn: number, spanIn: number) => ({
  loadN: lbf(pounds),
  patchM: inch(patchIn),
  spanM: inch(spanIn),
});

describe('a plank as a simple beam', () => {
  test.each([
    [0, 6_000],
    [8, 4_500],
    [24, 2_000],
  ])('P1 1,500 lb over %s in on a 16 in span: %s lb·in', (patch, moment) => {
    // Exact by hand.
    expect(momentAtMiddle(on(1_500, patch, 16))).toBeCloseTo(poundInches(moment), 9);
  });

  test('P2 the 8 in patch on one 1.5 × 7.25 board: 1,655 psi, and 2,586 psi once 0.3 in has rotted off', () => {
    const moment = momentAtMiddle(on(1_500, 8, 16));
    // Case rounded to 1 psi.
    expect(toPsi(bendingStress(moment, inch(7.25), inch(1.5), inch(0)))).toBeCloseTo(1_655, 0);
    expect(toPsi(bendingStress(moment, inch(7.25), inch(1.5), inch(0.3)))).toBeCloseTo(2_586, 0);
  });

  test('P3 2,000 lb over 9 in, centred at 8 in of 24: 8,666.7 lb·in, reactions 1,333.3 and 666.7 lb', () => {
    const found = momentOffCentre(on(2_000, 9, 24), inch(8));
    expect(Math.abs(found.momentNm / poundInches(1) - 8_666.7)).toBeLessThanOrEqual(0.05);
    expect(toLbf(found.leftN)).toBeCloseTo(1_333.3, 1);
    expect(toLbf(found.rightN)).toBeCloseTo(666.7, 1);
  });

  test('P4 3/16 plate, 12 in strip, 1,500 lb on 8 in, 16 in span: 64,000 psi, past yield', () => {
    expect(toPsi(plateStress(on(1_500, 8, 16), inch(12), inch(0.1875)))).toBeCloseTo(64_000, 4);
  });

  test('W6 section modulus 2.71875 in³ carries 3,615 lb·in at 1,329.7 psi', () => {
    const modulus = sectionModulus(inch(7.25), inch(1.5), inch(0));
    expect(modulus / inch(1) ** 3).toBeCloseTo(2.71875, 9);
    expect((modulus * psi(1_329.6875) * 1000) / poundInches(1)).toBeCloseTo(3_615.1, 1);
  });

  test.each([
    [0, 903.8],
    [8, 1_205.0],
  ])('W7 on a 16 in span, patch %s in: %s lb stress it to just that', (patch, pounds) => {
    const perPound = bendingStress(momentAtMiddle(on(1, patch, 16)), inch(7.25), inch(1.5), inch(0));
    expect(Math.abs(psi(1_329.6875) / perPound - pounds)).toBeLessThanOrEqual(0.05);
  });

  test('two equal spans: 0.2074 P L under the load at 0.432 L, 0.0962 P L over the support', () => {
    const found = momentOverTwoSpans(newtons(1), metres(1));
    // Printed to four places.
    expect(found.spanNm).toBeCloseTo(0.2074, 4);
    expect(found.supportNm).toBeCloseTo(-0.0962, 4);
    const places = Array.from({ length: 999 }, (_, i) => (i + 1) / 1000);
    const worst = places.reduce((most, at) => (twoSpanShares(at).under > twoSpanShares(most).under ? at : most));
    expect(worst).toBeCloseTo(0.432, 3);
    expect(Math.max(...places.map((at) => twoSpanShares(at).support))).toBeCloseTo(0.0962, 4);
  });

  test('shear and sag of 1,000 lb on one 2×8 over 16 in, by hand', () => {
    // 1.5 × 1,000 / 10.875 = 137.93 psi. P L³/(48 E I), E 1.26 million psi, I 2.0390625 in⁴: 0.033214 in.
    expect(toPsi(shearStress(lbf(1_000), inch(7.25), inch(1.5), inch(0)))).toBeCloseTo(137.931, 3);
    const found = sag(on(1_000, 0, 16), psi(1.26e6), inch(7.25), inch(1.5), inch(0));
    expect(toInch(found)).toBeCloseTo(0.033214, 6);
  });

  test('a patch off the span and a span of nothing are refused; a board rotted through bears nothing', () => {
    expect(() => momentOffCentre(on(100, 9, 24), inch(4))).toThrow(RangeError);
    expect(() => momentAtMiddle(on(100, 9, 0))).toThrow(RangeError);
    expect(bendingStress(1, inch(7.25), inch(1.5), inch(1.6))).toBe(kPa(Number.POSITIVE_INFINITY));
  });

  test.each([
    [12, 7.25, 1],
    [14.5, 7.25, 2],
    [14.4, 7.25, 1],
    [5, 7.25, 1],
    [18, 5.5, 3],
  ])('a contact %s in wide on %s in boards stands on %s', (contact, board, boards) => {
    expect(boardsUnder(inch(contact), inch(board))).toBe(boards);
  });

  test('the moment in the middle agrees with that off centre, put in the middle, and is the greatest', () => {
    const cases = fc.record({
      pounds: fc.double({ min: 1, max: 20_000, noNaN: true }),
      span: fc.double({ min: 6, max: 48, noNaN: true }),
      part: fc.double({ min: 0, max: 1, noNaN: true }),
      place: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, ({ pounds, span, part, place }) => {
        const load = on(pounds, part * span, span);
        const middle = momentAtMiddle(load);
        const half = (part * span) / 2;
        const centred = momentOffCentre(load, inch(span / 2));
        expect(centred.momentNm / middle).toBeCloseTo(1, 9);
        const elsewhere = momentOffCentre(load, inch(half + place * (span - 2 * half)));
        expect(elsewhere.momentNm).toBeLessThanOrEqual(middle * (1 + 1e-9));
        expect(elsewhere.leftN + elsewhere.rightN).toBeCloseTo(load.loadN, 6);
      }),
      { seed: 14, numRuns: 200 },
    );
  });
});

describe('what one contact presses with', () => {
  const lift: StandingMachine = {
    massKg: lb(5_900),
    contact: 'small-wheels',
    contactCount: 4,
    contactLengthM: inch(3),
    contactWidthM: inch(5),
  };
  const pounds = (machine: StandingMachine) => {
    const found = contactLoads(machine);
    return isLacking(found) ? found : found.map((load) => [load.stance, Math.round(toLbf(load.loadN))]);
  };

  test('a 5,900 lb lift on four small wheels: 2,065 lb climbing (70 % on two), 1,770 parked (60 %)', () => {
    expect(pounds(lift)).toEqual([
      ['climbing', 2_065],
      ['parked', 1_770],
    ]);
  });

  test('a skid loader of 8,000 lb on tires: 80 % on two climbing, 70 % parked', () => {
    expect(pounds({ ...lift, massKg: lb(8_000), contact: 'tires' })).toEqual([
      ['climbing', 3_200],
      ['parked', 2_800],
    ]);
  });

  test('two tracks carry half each, on half their length as they tip over the crest; pads are only ever parked', () => {
    const tracked = {
      ...lift,
      massKg: lb(10_000),
      contact: 'rubber-tracks',
      contactCount: 2,
      contactLengthM: inch(60),
    } as const;
    const found = contactLoads(tracked);
    expect(pounds(tracked)).toEqual([
      ['climbing', 5_000],
      ['parked', 5_000],
    ]);
    expect(isLacking(found) ? [] : found.map((load) => Math.round(toInch(load.patchM ?? metres(0))))).toEqual([30, 60]);
    expect(pounds({ ...lift, contact: 'pads' })).toEqual([['parked', 1_770]]);
  });

  test('what is missing is named, and nothing is guessed', () => {
    expect(contactLoads({ ...lift, massKg: null, contact: null, contactCount: null })).toEqual([
      'machine-mass',
      'contact',
      'contact-count',
    ]);
  });

  test('never less than an even share, whatever stands on it', () => {
    const machines = fc.record({
      massKg: fc.integer({ min: 1, max: 20_000 }).map((pounds) => lb(pounds)),
      contact: fc.constantFrom('tires' as const, 'small-wheels' as const, 'pads' as const, 'steel-tracks' as const),
      contactCount: fc.integer({ min: 1, max: 16 }),
      contactLengthM: fc.constant(null),
      contactWidthM: fc.constant(null),
    });
    fc.assert(
      fc.property(machines, (machine) => {
        const found = contactLoads(machine);
        for (const load of isLacking(found) ? [] : found) expect(load.loadN).toBeGreaterThanOrEqual(load.leastN);
      }),
      { seed: 14, numRuns: 100 },
    );
  });
});
