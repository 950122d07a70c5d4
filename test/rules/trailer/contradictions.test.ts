import { describe, expect, test } from 'vitest';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import { tireRating } from '../../../src/rules/tire/tire-capacity.js';
import { contradictions, plateHolds, tiresReach } from '../../../src/rules/trailer/contradictions.js';
import { lbf } from '../../../src/rules/units/force.js';
import { feet, inch } from '../../../src/rules/units/length.js';
import { kg, lb, toLb } from '../../../src/rules/units/mass.js';
import reference from '../reference/weights-and-ratings.json' with { type: 'json' };
import { axle, build, marks, tire, tires, unknownBuild } from '../sample-facts.js';

const cases = (prefix: string) => reference.cases.filter((one) => one.id.startsWith(prefix));
const kinds = (trailer: BuildSheet, wheels = strongTires()) => contradictions(trailer, wheels).map((one) => one.kind);

function strongTires() {
  return tires(2, { maxLoadSingleKg: lb(3_520) });
}

test('a sound build contradicts nothing, and neither does an unknown one', () => {
  expect(kinds(build())).toEqual([]);
  expect(kinds(unknownBuild(), [])).toEqual([]);
});

describe('the plate against the axles', () => {
  test('every published case of label and axle sum holds', () => {
    const [lawful] = cases('gvwr-gawr');
    expect(plateHolds(lb(14_000), lb(12_000), lb(2_100))).toBe(lawful?.expected.labelConsistent);
    expect(14_000 - 2_100).toBe(lawful?.expected.axleLoadAtGvwr);
    // The axle sum far above the plate is no contradiction either.
    expect(plateHolds(lb(9_990), lb(14_000), lb(0))).toBe(cases('gvwr-sum-over')[0]?.expected.labelConsistent);
    expect(plateHolds(lb(14_000), lb(12_000), lb(1_900))).toBe(false);
  });

  test('12,000 lb of axles under a 14,000 lb plate are lawful on a bumper pull, whose hitch may carry 15 %', () => {
    expect(kinds(build({ axles: [axle(1, 6_000), axle(2, 6_000)] }), [])).toEqual([]);
  });

  test('11,000 lb of axles are not, and what they carry with the hitch is said', () => {
    expect(contradictions(build({ axles: [axle(1, 5_500), axle(2, 5_500)] }), [])).toEqual([
      { kind: 'plate-above-axles', gvwrKg: lb(14_000), carriesKg: expect.closeTo(lb(13_100), 6) },
    ]);
  });

  test('a coupler that may carry only 1,000 lb gives no more than that', () => {
    const trailer = build({
      axles: [axle(1, 6_000), axle(2, 6_000)],
      hitch: { ...build().hitch, couplerTongueN: lbf(1_000) },
    });
    expect(contradictions(trailer, [])).toEqual([
      { kind: 'plate-above-axles', gvwrKg: lb(14_000), carriesKg: expect.closeTo(lb(13_000), 6) },
    ]);
  });

  test('a gooseneck carries more on its hitch', () => {
    const hitch = { ...build().hitch, kind: 'gooseneck' as const };
    expect(kinds(build({ axles: [axle(1, 5_500), axle(2, 5_500)], hitch }), [])).toEqual([]);
  });
});

describe('the tires against their axle', () => {
  test.each(cases('gawr-').map((one) => [one.id, one] as const))('%s', (_id, { input, expected }) => {
    const kind = input.kind === 'passenger' ? 'passenger' : input.kind === 'LT' ? 'LT' : 'ST';
    const one = tireRating(marks({ kind, maxLoadSingleKg: lb(input.ratingLb ?? 0) }), 'single')?.massKg ?? kg(0);
    const both = kg(one * (input.tires ?? 0));
    // The published sums are printed to a hundredth of a pound.
    expect(toLb(both)).toBeCloseTo(expected.sum ?? 0, 2);
    expect(tiresReach(both, lb(input.gawrLb ?? 0))).toBe(expected.ok);
  });

  test('two 3,420 lb tires on a 7,000 lb axle are said on each axle', () => {
    expect(contradictions(build(), tires(2))).toEqual(
      [1, 2].map((number) => ({ kind: 'tires-below-axle', axle: number, tiresKg: lb(6_840), gawrKg: lb(7_000) })),
    );
  });

  test('while one tire of the axle is unknown nothing is said of it', () => {
    expect(kinds(build({ axles: [axle(1, 7_000)] }), [tire('1L')])).not.toContain('tires-below-axle');
    expect(
      kinds(build({ axles: [axle(1, 7_000)] }), [tire('1L'), tire('1R', { maxLoadSingleKg: null })]),
    ).not.toContain('tires-below-axle');
  });

  test('dual wheels count four tires at the dual rating', () => {
    const trailer = build({ axles: [axle(1, 10_000, { wheelsPerSide: 2 }), axle(2, 10_000)] });
    const wheels = ['1LO', '1LI', '1RI', '1RO'].map((position) => tire(position, { maxLoadDualKg: lb(2_400) }));
    expect(contradictions(trailer, wheels)).toEqual([
      { kind: 'tires-below-axle', axle: 1, tiresKg: lb(9_600), gawrKg: lb(10_000) },
    ]);
  });
});

describe('parts weaker than what they carry', () => {
  const sound = build();

  test('an axle rated by its maker below what the plate promises', () => {
    expect(kinds(build({ axles: [axle(1, 7_000, { ratingKg: lb(6_000) }), axle(2, 7_000)] }))).toEqual([
      'axle-rating-below-gawr',
    ]);
  });

  test('a coupler or a chain below the plate', () => {
    const hitch = { ...sound.hitch, couplerRatingKg: lb(13_999), chainBreakKg: lb(13_999) };
    expect(kinds(build({ hitch }))).toEqual(['coupler-below-plate', 'chains-below-plate']);
    const equal = { ...sound.hitch, couplerRatingKg: lb(14_000), chainBreakKg: lb(14_000) };
    expect(kinds(build({ hitch: equal }))).toEqual([]);
  });

  test('a trailer empty above its plate', () => {
    expect(kinds(build({ empty: { massKg: lb(14_001), basis: 'weighed', tongueN: null } }))).toEqual([
      'empty-above-plate',
    ]);
  });

  test('7,000 lb axles on a 7,000 lb jack', () => {
    const jacks = (count: number, pounds: number) => build({ jacks: { ...sound.jacks, count, supportKg: lb(pounds) } });
    expect(kinds(jacks(1, 7_000))).toEqual(['jack-too-small']);
    expect(kinds(jacks(1, 10_000))).toEqual([]);
    expect(kinds(jacks(2, 7_000))).toEqual([]);
  });

  test('a single jack on a gooseneck', () => {
    const hitch = { ...sound.hitch, kind: 'gooseneck' as const };
    const jacks = { ...sound.jacks, count: 1 };
    expect(kinds(build({ hitch, jacks }))).toEqual(['single-jack-on-gooseneck']);
    expect(kinds(build({ hitch, jacks: { ...jacks, count: 2 } }))).toEqual([]);
    expect(kinds(build({ jacks }))).toEqual([]);
  });
});

describe('what the law would ask about', () => {
  const light = (more: Partial<BuildSheet>) =>
    build({ plate: { gvwrKg: lb(3_000), coldPressureKpa: null }, empty: unknownBuild().empty, ...more });
  const unbraked = [axle(1, 7_000, { brakes: 'electric' }), axle(2, 7_000, { brakes: 'none' })];

  test('axles without brakes over 3,000 lb (49 CFR 393.42)', () => {
    expect(contradictions(build({ axles: unbraked }), strongTires())).toEqual([
      { kind: 'unbraked-axles', axles: [2], gvwrKg: lb(14_000) },
    ]);
    expect(kinds(light({ axles: unbraked }), [])).toEqual([]);
    expect(kinds(build({ axles: [axle(1, 7_000), axle(2, 7_000)] }))).toEqual([]);
  });

  test('brakes without a breakaway (49 CFR 393.43)', () => {
    const hitch = (breakaway: boolean | null) => ({ ...build().hitch, breakaway });
    const braked = [1, 2].map((number) => axle(number, 7_000, { brakes: 'electric' }));
    expect(kinds(build({ axles: braked, hitch: hitch(false) }))).toEqual(['brakes-without-breakaway']);
    expect([kinds(build({ axles: braked, hitch: hitch(null) })), kinds(build({ hitch: hitch(false) }))]).toEqual([
      [],
      [],
    ]);
  });

  test('tires made for 55 mph or less (49 CFR 393.75(f))', () => {
    const symbol = (front: string, rear: string) =>
      contradictions(build(), [
        ...strongTires()
          .slice(0, 2)
          .map((part) => ({ ...part, tire: marks({ maxLoadSingleKg: lb(3_520), speedSymbol: front }) })),
        ...strongTires()
          .slice(2)
          .map((part) => ({ ...part, tire: marks({ maxLoadSingleKg: lb(3_520), speedSymbol: rear }) })),
      ]);
    // F is 80 km/h, 50 mph; G is 90, 56 mph; L, usual on trailers, 120.
    expect(symbol('L', 'F')).toEqual([{ kind: 'speed-restricted-tires', positions: ['2L', '2R'], speed: 80 }]);
    expect([symbol('L', 'G'), symbol('L', '?')]).toEqual([[], []]);
  });

  test('a deck over 102 in wide (23 CFR 658.15)', () => {
    const deck = (wide: number) => kinds(build({ deck: { ...unknownBuild().deck, widthM: inch(wide) } }));
    expect([deck(102), deck(102.5)]).toEqual([[], ['wider-than-law']]);
  });

  // Class 2 of light couplings, 2,001 to 3,500 lb, asks 3,500 lb of each chain (Maryland COMAR 11.13.08.10).
  test('chains below the class of coupling that a light plate asks for', () => {
    const hitch = (pounds: number) => ({ ...build().hitch, chainBreakKg: lb(pounds) });
    expect(contradictions(light({ hitch: hitch(3_400) }), [])).toEqual([
      { kind: 'chains-below-plate', chainBreakKg: lb(3_400), neededKg: lb(3_500), gvwrKg: lb(3_000) },
    ]);
    expect(kinds(light({ hitch: hitch(3_500) }), [])).toEqual([]);
  });
});

describe('how it is built', () => {
  const unknown = unknownBuild();

  test('slide-out ramps want stabilizers', () => {
    const rear = (ramps: BuildSheet['rear']['ramps'], stabilizers: boolean | null) =>
      kinds(build({ rear: { ...unknown.rear, ramps, stabilizers } }));
    expect(rear('slide-out-rear', false)).toEqual(['slide-ramps-without-stabilizers']);
    expect(rear('slide-out-side', false)).toEqual(['slide-ramps-without-stabilizers']);
    expect([rear('slide-out-rear', true), rear('slide-out-rear', null), rear('stand-up', false)]).toEqual([[], [], []]);
  });

  test('a tongue that ends part-way does not go with a C-channel frame', () => {
    const frame = (section: BuildSheet['frame']['section']) =>
      kinds(build({ frame: { ...unknown.frame, section, tongue: 'part-way' } }));
    expect([frame('c-channel'), frame('tube')]).toEqual([['part-way-tongue-on-channel'], []]);
  });

  test('a frame under 5 in is too shallow', () => {
    const frame = (depth: number) => kinds(build({ frame: { ...unknown.frame, depthM: inch(depth) } }));
    expect([frame(4), frame(5)]).toEqual([['frame-too-shallow'], []]);
  });

  test('a gravity tilt of more than 26 ft does not tilt well', () => {
    const deck = (body: BuildSheet['body'], length: number) =>
      kinds(build({ body, deck: { ...unknown.deck, lengthM: feet(length) } }));
    expect(deck('gravity-tilt', 27)).toEqual(['gravity-tilt-too-long']);
    expect([deck('gravity-tilt', 26), deck('full-powered-tilt', 30)]).toEqual([[], []]);
  });
});
