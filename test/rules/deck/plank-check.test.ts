import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StandingMachine } from '../../../src/rules/deck/contact-load.js';
import { checkPlank, type PlankedDeck, shareOf } from '../../../src/rules/deck/plank-check.js';
import { toLbf } from '../../../src/rules/units/force.js';
import { inch } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { toPsi } from '../../../src/rules/units/pressure.js';

const DECK: PlankedDeck = {
  material: 'pine',
  plankThicknessM: inch(1.5),
  plankWidthM: inch(7.25),
  crossmemberSpacingM: inch(16),
  wood: 'southern-pine',
  woodGrade: 'no-2',
  treated: true,
};

function wheels(pounds: number, more: Partial<StandingMachine> = {}): StandingMachine {
  return {
    massKg: lb(pounds),
    contact: 'tires',
    contactCount: 4,
    contactLengthM: inch(8),
    contactWidthM: inch(12),
    ...more,
  };
}

describe('a machine on southern pine', () => {
  test('W6 and W7: climbing wheels may press with 1,205 lb each, so 3,012 lb of machine is just inside', () => {
    // 1,205.03 lb a wheel, two of them carrying 80 % while climbing: 3,012.6 lb. From W7, whose F'b has C_D 1.25.
    const inside = checkPlank(DECK, wheels(3_012));
    expect(inside).toMatchObject({
      standing: 'inside',
      worst: { stance: 'climbing', boards: 1, origin: 'design-value' },
    });
    expect(toLbf(inside.worst?.allowedN ?? (0 as never))).toBeCloseTo(1_205, 0);
    expect(checkPlank(DECK, wheels(3_014))).toMatchObject({ standing: 'over', worst: { verified: true } });
  });

  test('P2: the stress is that of one board, though the tire is wider', () => {
    const found = checkPlank(DECK, wheels(3_750));
    expect(toPsi(found.worst?.bendingKpa ?? (0 as never))).toBeCloseTo(1_655, 0);
    expect(found.worst?.boards).toBe(1);
    const rotted = checkPlank(DECK, wheels(3_750), inch(0.3));
    expect(toPsi(rotted.worst?.bendingKpa ?? (0 as never))).toBeCloseTo(2_586, 0);
  });

  test('a machine whose even share passes the wood’s average breaking strength breaks it', () => {
    // Green shortleaf pine 51,000 kPa = 7,397 psi; S 2.71875 in³; 8 in patch on 16 in: 6,703 lb a wheel, 26,812 in all.
    expect(checkPlank(DECK, wheels(26_700)).standing).toBe('over');
    expect(checkPlank(DECK, wheels(26_900))).toMatchObject({ standing: 'breaks', worst: { origin: 'clear-wood' } });
  });

  test('a long track rests on many crossmembers: 10,000 lb on two 60 by 18 in tracks passes where wheels do not', () => {
    const tracks = wheels(10_000, {
      contact: 'rubber-tracks',
      contactCount: 2,
      contactLengthM: inch(60),
      contactWidthM: inch(18),
    });
    // At the crest, by hand: 5,000 lb on 30 in: 5,000/30 × 16²/8 = 5,333 lb·in on two boards, S 5.4375 in³: 981 psi.
    const found = checkPlank(DECK, tracks);
    expect(toPsi(found.worst?.bendingKpa ?? (0 as never))).toBeCloseTo(980.8, 1);
    expect(found.standing).toBe('inside');
    expect(checkPlank(DECK, wheels(10_000)).standing).toBe('over');
  });

  test('shear governs where crossmembers stand close', () => {
    // 6 in span, 5 in patch: bending 0.875 in per pound on 3,615 lb·in allows 4,131 lb; shear 175 × 1.25 × 0.97 psi on
    // 10.875 in² allows 1,538 lb.
    const close = checkPlank({ ...DECK, crossmemberSpacingM: inch(6) }, wheels(3_000, { contactLengthM: inch(5) }));
    expect(toLbf(close.worst?.allowedN ?? (0 as never))).toBeCloseTo(1_538.4, 0);
    expect(close.standing).toBe('inside');
    // Past shear alone: a bound, so it blocks nothing.
    const past = checkPlank({ ...DECK, crossmemberSpacingM: inch(6) }, wheels(4_000, { contactLengthM: inch(5) }));
    expect(past.standing).toBe('doubtful');
  });
});

describe('what is not known', () => {
  test.each([
    ['deck-material', { material: null }],
    ['plank-thickness', { plankThicknessM: null }],
    ['plank-width', { plankWidthM: null }],
    ['crossmember-spacing', { crossmemberSpacingM: null }],
    ['deck-wood', { wood: null }],
  ] as const)('without %s nothing is said', (lack, without) => {
    expect(checkPlank({ ...DECK, ...without }, wheels(5_000))).toEqual({
      standing: 'unknown',
      lacks: [lack],
      worst: null,
    });
  });

  test('an unknown grade may be any: what the weakest carries is inside, what the strongest does not is over', () => {
    const deck = { ...DECK, woodGrade: null };
    // No. 3: 525 psi allows 684 lb a wheel, 1,710 lb of machine; Select: 1,950 × 0.85 allows 2,159 lb, 5,399 lb.
    expect(checkPlank(deck, wheels(1_650)).standing).toBe('inside');
    expect(checkPlank(deck, wheels(4_000))).toMatchObject({ standing: 'unknown', lacks: ['wood-grade'] });
    expect(checkPlank(deck, wheels(6_000)).standing).toBe('over');
  });

  test('a contact of unknown size is taken as a point on one board: inside stays inside, the rest is unknown', () => {
    const unsized = { contactLengthM: null, contactWidthM: null };
    expect(checkPlank(DECK, wheels(2_200, unsized)).standing).toBe('inside');
    expect(checkPlank(DECK, wheels(2_300, unsized))).toMatchObject({ standing: 'unknown', lacks: ['contact-size'] });
  });
});

describe('strengths nobody verified block nothing', () => {
  const oak = (wood: 'white-oak' | 'red-oak'): PlankedDeck => ({ ...DECK, material: 'oak', wood });

  test('oak has no design value here: a light machine is unknown, a heavier one doubtful', () => {
    expect(checkPlank(oak('white-oak'), wheels(3_000))).toMatchObject({
      standing: 'unknown',
      lacks: ['wood-strength'],
    });
    expect(checkPlank(oak('white-oak'), wheels(10_000))).toMatchObject({
      standing: 'doubtful',
      worst: { verified: false },
    });
  });

  test('white oak is broken by its verified clear wood; red oak, remembered only, stays doubtful', () => {
    expect(checkPlank(oak('white-oak'), wheels(27_000)).standing).toBe('breaks');
    expect(checkPlank(oak('red-oak'), wheels(40_000)).standing).toBe('doubtful');
  });

  test('treated Douglas-fir is judged by an unverified factor, untreated by a published one', () => {
    const fir: PlankedDeck = { ...DECK, wood: 'douglas-fir', woodGrade: 'no-2' };
    expect(checkPlank({ ...fir, treated: true }, wheels(5_000)).standing).toBe('doubtful');
    expect(checkPlank({ ...fir, treated: null }, wheels(5_000)).standing).toBe('doubtful');
    expect(checkPlank({ ...fir, treated: false }, wheels(5_000)).standing).toBe('over');
  });

  test('P4 tread plate past yield is doubtful: a strip is a bound', () => {
    const plate: PlankedDeck = { ...DECK, material: 'tread-plate', plankThicknessM: inch(0.1875), wood: null };
    const found = checkPlank(plate, wheels(3_750));
    expect(toPsi(found.worst?.bendingKpa ?? (0 as never))).toBeCloseTo(64_000, 3);
    expect(found).toMatchObject({ standing: 'doubtful', worst: { verified: false, origin: 'plate-yield' } });
    expect(checkPlank({ ...plate, plankThicknessM: inch(0.375) }, wheels(3_000)).standing).toBe('inside');
  });

  test('a wood without any published value is unknown', () => {
    expect(checkPlank({ ...DECK, material: 'other', wood: 'apitong' }, wheels(9_000))).toMatchObject({
      standing: 'unknown',
      lacks: ['wood-strength'],
    });
  });
});

test('a board rotted through bears next to nothing, in numbers that can be kept', () => {
  const found = checkPlank(DECK, wheels(3_000), inch(2));
  expect(found.standing).toBe('breaks');
  expect(JSON.parse(JSON.stringify(found))).toEqual(found);
});

test('heavier, wider apart, thinner or more rotten is never better', () => {
  const cases = fc.record({
    pounds: fc.integer({ min: 500, max: 20_000 }),
    spacing: fc.integer({ min: 8, max: 36 }),
    lost: fc.double({ min: 0, max: 0.7, noNaN: true }),
    more: fc.double({ min: 1, max: 2, noNaN: true }),
  });
  fc.assert(
    fc.property(cases, ({ pounds, spacing, lost, more }) => {
      const share = (lbs: number, spacingIn: number, lostIn: number) =>
        shareOf(checkPlank({ ...DECK, crossmemberSpacingM: inch(spacingIn) }, wheels(lbs), inch(lostIn)));
      const before = share(pounds, spacing, lost) * (1 - 1e-9);
      // `breaks` is told against the breaking strength, a larger number, so shares are compared below it only.
      if (pounds * more > 20_000 || lost > 0.4 || spacing * more > 24) return;
      expect(share(pounds * more, spacing, lost)).toBeGreaterThanOrEqual(before);
      expect(share(pounds, spacing * more, lost)).toBeGreaterThanOrEqual(before);
      expect(share(pounds, spacing, Math.min(0.4, lost * more))).toBeGreaterThanOrEqual(before);
    }),
    { seed: 14, numRuns: 200 },
  );
});
