import type { Axle, BuildSheet } from '../../src/rules/facts/build-sheet.js';
import type { BearingNumbers } from '../../src/rules/facts/part.js';
import type { Trailer } from '../../src/rules/facts/trailer.js';
import { lbf } from '../../src/rules/units/force.js';
import { feet, inch } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';
import { psi } from '../../src/rules/units/pressure.js';
import {
  type DemoTire,
  ST_205_75R15_D,
  ST_225_75R15_E,
  ST_235_80R16_E,
  ST_235_80R16_E_OLD,
  TRUCK_215_75R17_5_H,
} from './tires.js';

/**
 * Twelve trailers, so chosen that every body, suspension, deck, ramp, fender, hitch, frame and brake of a build sheet
 * stands in the demo yard at least once (a test counts them). Figures are of the usual kind for their class
 * (common practice, no source), not of any one model. VINs are left unknown: an invented one could be somebody's.
 */
export interface DemoTrailer {
  readonly trailer: Pick<Trailer, 'yardNumber' | 'name' | 'stored'> & { readonly boughtYearsAgo: number };
  readonly build: Omit<BuildSheet, 'id' | 'effectiveFrom'>;
  readonly tire: DemoTire;
  /** How old the tires are, in weeks, today; the spare may be older. */
  readonly tireWeeks: number;
  readonly spareWeeks: number | null;
  /** On the cones of every hub; null where nobody has looked. */
  readonly bearings: BearingNumbers | null;
  /** Decks before the one that lies now, oldest first: how old each became, and why it came off. */
  readonly formerDecks: readonly {
    readonly monthsOld: number;
    readonly removedFor: 'worn-out' | 'damaged' | 'precaution';
  }[];
}

export const DEMO_TRAILERS: readonly DemoTrailer[] = [
  {
    trailer: { yardNumber: 'T-01', name: 'the short white one', stored: 'cover', boughtYearsAgo: 3 },
    tire: ST_225_75R15_E,
    tireWeeks: 120,
    spareWeeks: 120,
    bearings: { inner: '25580', outer: 'LM67048' },
    formerDecks: [],
    build: {
      body: 'fixed-deck',
      plate: plate(9_990, 80),
      empty: empty(2_720, 'weighed', 310),
      axles: axles(2, 5_200, 158, 34, {
        brakes: 'electric',
        lubricant: 'grease',
        springLbPerIn: 2_900,
        trackIn: 90,
      }),
      suspension: 'eye-to-eye-spring',
      hitch: bumperPull(12_500, 1_250, 15_000, 18.5),
      deck: deck('pine', 16, 82, 25, 52, {
        plank: 1.5,
        spacing: 16,
        count: 11,
        wood: 'southern-pine',
        grade: 'no-1',
        treated: true,
      }),
      frame: { section: 'c-channel', depthM: inch(5), tongue: 'wrapped-to-axles', bedDepthM: null },
      rear: {
        dovetailM: feet(2),
        ramps: 'slide-out-rear',
        rampLengthM: feet(5.5),
        rampRatingKg: lb(11_000),
        stabilizers: true,
      },
      fenders: { kind: 'teardrop', clearWidthM: inch(80) },
      jacks: jacks(1, 5_000, 7_000, 22),
      wheels: { boltPattern: '6 on 5.5 in', nutTorqueNm: 149 },
    },
  },
  {
    trailer: { yardNumber: 'T-02', name: 'the long black one', stored: 'open', boughtYearsAgo: 4 },
    tire: ST_235_80R16_E,
    tireWeeks: 96,
    spareWeeks: 200,
    bearings: { inner: '25580', outer: '14125A' },
    formerDecks: [],
    build: {
      body: 'fixed-deck',
      plate: plate(14_000, 80),
      empty: empty(3_720, 'weighed', 470),
      axles: axles(2, 7_000, 190, 35, {
        brakes: 'electric',
        lubricant: 'grease',
        springLbPerIn: 4_100,
        trackIn: 92,
      }),
      suspension: 'slipper-spring',
      hitch: bumperPull(21_000, 2_000, 21_000, 20),
      deck: deck('oak', 20, 82, 27, 56, {
        plank: 1.75,
        spacing: 16,
        count: 11,
        wood: 'white-oak',
        grade: 'no-1',
        treated: false,
      }),
      frame: { section: 'c-channel', depthM: inch(6), tongue: 'wrapped-to-axles', bedDepthM: null },
      rear: {
        dovetailM: feet(2),
        ramps: 'slide-out-side',
        rampLengthM: feet(6),
        rampRatingKg: lb(16_000),
        stabilizers: true,
      },
      fenders: { kind: 'double-broke', clearWidthM: inch(82) },
      jacks: jacks(1, 10_000, 12_000, 24),
      wheels: { boltPattern: '8 on 6.5 in', nutTorqueNm: 163 },
    },
  },
  {
    trailer: { yardNumber: 'T-03', name: 'the gravity tilt', stored: 'open', boughtYearsAgo: 5 },
    tire: ST_235_80R16_E,
    tireWeeks: 210,
    spareWeeks: 210,
    bearings: { inner: '25580', outer: '14125A' },
    formerDecks: [],
    build: {
      body: 'gravity-tilt',
      plate: plate(14_000, 80),
      empty: empty(4_050, 'weighed', 520),
      axles: axles(2, 7_000, 196, 36, {
        brakes: 'electric',
        lubricant: 'grease',
        springLbPerIn: 2_400,
        trackIn: 92,
      }),
      suspension: 'torsion',
      hitch: bumperPull(21_000, 2_000, 21_000, 20),
      deck: {
        ...deck('pine', 20, 82, 28, 58, {
          plank: 1.5,
          spacing: 16,
          count: 11,
          wood: 'southern-pine',
          grade: 'no-2',
          treated: true,
        }),
        tiltLengthM: feet(16),
        tiltDrive: 'damping-cylinder',
        pivotFromCouplerM: inch(196),
      },
      frame: { section: 'c-channel', depthM: inch(6), tongue: 'wrapped-to-axles', bedDepthM: inch(6) },
      rear: { dovetailM: null, ramps: 'none', rampLengthM: null, rampRatingKg: null, stabilizers: false },
      fenders: { kind: 'double-broke', clearWidthM: inch(82) },
      jacks: jacks(1, 10_000, 12_000, 24),
      wheels: { boltPattern: '8 on 6.5 in', nutTorqueNm: 163 },
    },
  },
  {
    trailer: { yardNumber: 'T-04', name: 'the powered tilt, rubber deck', stored: 'cover', boughtYearsAgo: 2 },
    tire: TRUCK_215_75R17_5_H,
    tireWeeks: 70,
    spareWeeks: 70,
    bearings: { inner: '25580', outer: '02475' },
    formerDecks: [],
    build: {
      body: 'powered-gravity-tilt',
      plate: plate(15_400, 125),
      empty: empty(4_480, 'stated', 600),
      axles: axles(2, 8_000, 200, 36, {
        brakes: 'electric',
        lubricant: 'oil',
        springLbPerIn: null,
        trackIn: 93,
      }),
      suspension: 'slipper-spring',
      hitch: bumperPull(25_000, 2_500, 25_000, 21),
      deck: {
        ...deck('rubber-faced', 22, 82, 29, 60, {
          plank: 2,
          spacing: 12,
          count: 11,
          wood: 'southern-pine',
          grade: 'no-1',
          treated: true,
        }),
        tiltLengthM: feet(18),
        tiltDrive: 'power-unit',
        pivotFromCouplerM: inch(205),
      },
      frame: { section: 'tube', depthM: inch(6), tongue: 'wrapped-to-axles', bedDepthM: inch(6) },
      rear: { dovetailM: null, ramps: 'none', rampLengthM: null, rampRatingKg: null, stabilizers: false },
      fenders: { kind: 'drive-over', clearWidthM: inch(82) },
      jacks: jacks(1, 12_000, 14_000, 24),
      wheels: { boltPattern: '8 on 275 mm', nutTorqueNm: 610 },
    },
  },
  {
    trailer: { yardNumber: 'T-05', name: 'the full tilt gooseneck', stored: 'open', boughtYearsAgo: 3 },
    tire: TRUCK_215_75R17_5_H,
    tireWeeks: 130,
    spareWeeks: 130,
    bearings: { inner: '25580', outer: '02475' },
    formerDecks: [],
    build: {
      body: 'full-powered-tilt',
      plate: plate(20_000, 125),
      empty: empty(6_150, 'weighed', 1_150),
      axles: axles(2, 8_000, 268, 40, {
        brakes: 'hydraulic',
        lubricant: 'oil',
        springLbPerIn: null,
        trackIn: 94,
      }),
      suspension: 'torsion',
      hitch: gooseneck(30_000, 6_000, 30_000, 42),
      deck: {
        ...deck('tread-plate', 24, 82, 31, 92, { plank: 0.3125, spacing: 12 }),
        tiltLengthM: feet(24),
        tiltDrive: 'power-unit',
        pivotFromCouplerM: inch(272),
      },
      frame: { section: 'i-beam', depthM: inch(8), tongue: 'integral', bedDepthM: inch(8) },
      rear: { dovetailM: null, ramps: 'none', rampLengthM: null, rampRatingKg: null, stabilizers: false },
      fenders: { kind: 'drive-over', clearWidthM: inch(83) },
      jacks: jacks(2, 10_000, 12_000, 30),
      wheels: { boltPattern: '8 on 275 mm', nutTorqueNm: 610 },
    },
  },
  {
    trailer: { yardNumber: 'T-06', name: 'the dual gooseneck', stored: 'open', boughtYearsAgo: 6 },
    tire: ST_235_80R16_E,
    tireWeeks: 150,
    spareWeeks: 260,
    bearings: null,
    formerDecks: [{ monthsOld: 61, removedFor: 'worn-out' }],
    build: {
      body: 'deck-over',
      plate: plate(23_900, 80),
      empty: empty(7_900, 'weighed', 1_600),
      axles: axles(2, 10_000, 300, 48, {
        brakes: 'electric',
        lubricant: 'oil',
        springLbPerIn: 5_200,
        trackIn: 75,
        wheelsPerSide: 2,
      }),
      suspension: 'slipper-spring',
      hitch: gooseneck(30_000, 7_500, 30_000, 44),
      deck: deck('oak', 30, 102, 36, 96, {
        plank: 1.75,
        spacing: 16,
        count: 14,
        wood: 'white-oak',
        grade: 'no-1',
        treated: false,
      }),
      frame: { section: 'i-beam', depthM: inch(12), tongue: 'integral', bedDepthM: null },
      rear: {
        dovetailM: feet(5),
        ramps: 'stand-up',
        rampLengthM: feet(6),
        rampRatingKg: lb(20_000),
        stabilizers: true,
      },
      fenders: { kind: 'none', clearWidthM: null },
      jacks: jacks(2, 12_000, 14_000, 30),
      wheels: { boltPattern: '8 on 6.5 in', nutTorqueNm: 163 },
    },
  },
  {
    // Outgrown: its skid steer was replaced by a track loader that it cannot lawfully carry with its attachments.
    trailer: { yardNumber: 'T-07', name: 'the skid steer trailer', stored: 'open', boughtYearsAgo: 5 },
    tire: ST_235_80R16_E,
    tireWeeks: 180,
    spareWeeks: 180,
    bearings: { inner: '25580', outer: '14125A' },
    formerDecks: [{ monthsOld: 41, removedFor: 'worn-out' }],
    build: {
      body: 'fixed-deck',
      plate: plate(14_000, 80),
      empty: empty(3_900, 'weighed', 480),
      axles: axles(2, 7_000, 192, 35, {
        brakes: 'electric',
        lubricant: 'grease',
        springLbPerIn: 4_000,
        trackIn: 92,
      }),
      suspension: 'eye-to-eye-spring',
      hitch: bumperPull(21_000, 2_000, 21_000, 20),
      deck: deck('pine', 20, 82, 27, 56, {
        plank: 1.5,
        spacing: 16,
        count: 11,
        wood: 'southern-pine',
        grade: 'no-2',
        treated: true,
      }),
      frame: { section: 'c-channel', depthM: inch(6), tongue: 'wrapped-to-axles', bedDepthM: null },
      rear: {
        dovetailM: feet(2),
        ramps: 'stand-up',
        rampLengthM: feet(5),
        rampRatingKg: lb(14_000),
        stabilizers: false,
      },
      fenders: { kind: 'double-broke', clearWidthM: inch(82) },
      jacks: jacks(1, 10_000, 12_000, 24),
      wheels: { boltPattern: '8 on 6.5 in', nutTorqueNm: 163 },
    },
  },
  {
    trailer: { yardNumber: 'T-08', name: 'the pintle deck-over', stored: 'open', boughtYearsAgo: 7 },
    tire: TRUCK_215_75R17_5_H,
    tireWeeks: 160,
    spareWeeks: null,
    bearings: null,
    formerDecks: [{ monthsOld: 55, removedFor: 'damaged' }],
    build: {
      body: 'deck-over',
      plate: plate(24_000, 125),
      empty: empty(7_250, 'weighed', 980),
      axles: axles(3, 8_000, 230, 38, {
        brakes: 'hydraulic',
        lubricant: 'oil',
        springLbPerIn: 5_600,
        trackIn: 78,
      }),
      suspension: 'slipper-spring',
      hitch: {
        kind: 'pintle',
        couplerRatingKg: lb(40_000),
        couplerTongueN: lbf(6_000),
        ballSizeM: null,
        heightAdjustable: true,
        levelHeightM: inch(26),
        chainBreakKg: lb(26_000),
        breakaway: true,
      },
      deck: deck('other', 25, 102, 35, 62, {
        plank: 1.75,
        spacing: 16,
        count: 14,
        wood: 'apitong',
        grade: null,
        treated: false,
      }),
      frame: { section: 'i-beam', depthM: inch(10), tongue: 'integral', bedDepthM: null },
      rear: {
        dovetailM: feet(5),
        ramps: 'stand-up-knee-brace',
        rampLengthM: feet(6),
        rampRatingKg: lb(24_000),
        stabilizers: true,
      },
      fenders: { kind: 'none', clearWidthM: null },
      jacks: jacks(1, 12_000, 20_000, 28),
      wheels: { boltPattern: '8 on 275 mm', nutTorqueNm: 610 },
    },
  },
  {
    // Too light a frame for equipment, and the yard never found out where its axle sits.
    trailer: { yardNumber: 'T-09', name: 'the little utility', stored: 'cover', boughtYearsAgo: 8 },
    tire: ST_205_75R15_D,
    tireWeeks: 240,
    spareWeeks: null,
    bearings: { inner: 'L68149', outer: 'L44649' },
    formerDecks: [],
    build: {
      body: 'fixed-deck',
      plate: plate(2_990, 65),
      empty: empty(980, 'stated', null),
      axles: [
        {
          number: 1,
          gawrKg: lb(3_500),
          ratingKg: lb(3_500),
          fromCouplerM: null,
          springRateNPerM: null,
          trackM: null,
          brakes: 'none',
          lubricant: 'grease',
          wheelsPerSide: 1,
        },
      ],
      suspension: 'eye-to-eye-spring',
      hitch: { ...bumperPull(5_000, null, 5_000, null), ballSizeM: inch(2), breakaway: false },
      deck: deck('pine', 12, 76, 20, 40, {
        plank: 1.5,
        spacing: 24,
        count: null,
        wood: null,
        grade: null,
        treated: null,
      }),
      frame: { section: 'tube', depthM: inch(3), tongue: 'part-way', bedDepthM: null },
      rear: { dovetailM: null, ramps: 'stand-up', rampLengthM: feet(4), rampRatingKg: null, stabilizers: false },
      fenders: { kind: 'teardrop', clearWidthM: inch(76) },
      jacks: jacks(1, 2_000, 2_000, null),
      wheels: { boltPattern: '5 on 4.5 in', nutTorqueNm: 136 },
    },
  },
  {
    // Rubber past its age with tread to spare.
    trailer: { yardNumber: 'T-10', name: 'the old medium', stored: 'open', boughtYearsAgo: 9 },
    tire: ST_235_80R16_E_OLD,
    tireWeeks: 330,
    spareWeeks: 480,
    bearings: { inner: '25580', outer: '15123' },
    formerDecks: [{ monthsOld: 58, removedFor: 'worn-out' }],
    build: {
      body: 'fixed-deck',
      plate: plate(12_000, 80),
      empty: empty(3_450, 'weighed', 430),
      axles: axles(2, 6_000, 186, 35, {
        brakes: 'electric',
        lubricant: 'grease',
        springLbPerIn: null,
        trackIn: 92,
      }),
      suspension: 'slipper-spring',
      hitch: bumperPull(15_000, 1_500, 15_000, 19),
      deck: deck('pine', 18, 82, 26, 54, {
        plank: 1.5,
        spacing: 16,
        count: 11,
        wood: 'southern-pine',
        grade: null,
        treated: false,
      }),
      frame: { section: 'c-channel', depthM: inch(6), tongue: 'part-way', bedDepthM: null },
      rear: {
        dovetailM: feet(2),
        ramps: 'slide-out-rear',
        rampLengthM: feet(5),
        rampRatingKg: null,
        stabilizers: false,
      },
      fenders: { kind: 'double-broke', clearWidthM: inch(81) },
      jacks: jacks(1, 7_000, 7_000, 22),
      wheels: { boltPattern: '6 on 5.5 in', nutTorqueNm: 149 },
    },
  },
  {
    trailer: { yardNumber: 'T-11', name: 'the surge brake tilt', stored: 'open', boughtYearsAgo: 4 },
    tire: ST_225_75R15_E,
    tireWeeks: 100,
    spareWeeks: 100,
    bearings: { inner: '25580', outer: 'LM67048' },
    formerDecks: [],
    build: {
      body: 'gravity-tilt',
      plate: plate(9_990, 80),
      empty: empty(3_060, 'weighed', 350),
      axles: axles(2, 5_200, 170, 34, {
        brakes: 'surge',
        lubricant: 'grease',
        springLbPerIn: 2_900,
        trackIn: 89,
      }),
      suspension: 'slipper-spring',
      hitch: bumperPull(12_500, 1_250, 15_000, 19),
      deck: {
        ...deck('rubber-faced', 18, 80, 24, 54, {
          plank: 1.5,
          spacing: 16,
          count: 11,
          wood: 'southern-pine',
          grade: 'no-1',
          treated: true,
        }),
        tiltLengthM: feet(16),
        tiltDrive: 'damping-cylinder',
        pivotFromCouplerM: inch(170),
      },
      frame: { section: 'c-channel', depthM: inch(5), tongue: 'wrapped-to-axles', bedDepthM: inch(5) },
      rear: { dovetailM: null, ramps: 'none', rampLengthM: null, rampRatingKg: null, stabilizers: false },
      fenders: { kind: 'teardrop', clearWidthM: inch(80) },
      jacks: jacks(1, 5_000, 7_000, 22),
      wheels: { boltPattern: '6 on 5.5 in', nutTorqueNm: 149 },
    },
  },
  {
    trailer: { yardNumber: 'T-12', name: 'the hire medium', stored: 'open', boughtYearsAgo: 2 },
    tire: ST_235_80R16_E,
    tireWeeks: 88,
    spareWeeks: 88,
    bearings: { inner: '25580', outer: '14125A' },
    formerDecks: [{ monthsOld: 17, removedFor: 'precaution' }],
    build: {
      body: 'fixed-deck',
      plate: plate(14_000, 80),
      empty: empty(3_800, 'weighed', 490),
      axles: axles(2, 7_000, 192, 35, {
        brakes: 'electric',
        lubricant: 'grease',
        springLbPerIn: 4_100,
        trackIn: 92,
      }),
      suspension: 'slipper-spring',
      hitch: bumperPull(21_000, 2_000, 21_000, 20),
      deck: deck('oak', 20, 82, 27, 56, {
        plank: 1.75,
        spacing: 16,
        count: 11,
        wood: 'red-oak',
        grade: 'no-1',
        treated: false,
      }),
      frame: { section: 'c-channel', depthM: inch(6), tongue: 'wrapped-to-axles', bedDepthM: null },
      rear: {
        dovetailM: feet(2),
        ramps: 'stand-up-knee-brace',
        rampLengthM: feet(5),
        rampRatingKg: lb(14_000),
        stabilizers: false,
      },
      fenders: { kind: 'drive-over', clearWidthM: inch(82) },
      jacks: jacks(1, 10_000, 12_000, 24),
      wheels: { boltPattern: '8 on 6.5 in', nutTorqueNm: 163 },
    },
  },
];

function plate(gvwrLb: number, coldPsi: number): BuildSheet['plate'] {
  return { gvwrKg: lb(gvwrLb), coldPressureKpa: psi(coldPsi) };
}

function empty(weightLb: number, basis: 'weighed' | 'stated', tongueLb: number | null): BuildSheet['empty'] {
  return { massKg: lb(weightLb), basis, tongueN: tongueLb === null ? null : lbf(tongueLb) };
}

interface RunningGear extends Pick<Axle, 'brakes' | 'lubricant'> {
  /** Of one axle, both springs together, as deflection at the rating suggests; null where nobody knows. */
  readonly springLbPerIn: number | null;
  readonly trackIn: number;
  readonly wheelsPerSide?: Axle['wheelsPerSide'];
}

/** Axles of one rating, evenly spread about a middle measured from the coupler. */
function axles(
  count: number,
  ratingLb: number,
  middleIn: number,
  spreadIn: number,
  { brakes, lubricant, springLbPerIn, trackIn, wheelsPerSide = 1 }: RunningGear,
): readonly Axle[] {
  return Array.from({ length: count }, (_, index) => ({
    number: index + 1,
    gawrKg: lb(ratingLb),
    ratingKg: lb(ratingLb),
    fromCouplerM: inch(middleIn + (index - (count - 1) / 2) * spreadIn),
    springRateNPerM: springLbPerIn === null ? null : lbf(springLbPerIn) / inch(1),
    trackM: inch(trackIn),
    brakes,
    lubricant,
    wheelsPerSide,
  }));
}

function bumperPull(
  couplerLb: number,
  tongueLb: number | null,
  chainLb: number,
  levelIn: number | null,
): BuildSheet['hitch'] {
  return {
    kind: 'bumper-pull',
    couplerRatingKg: lb(couplerLb),
    couplerTongueN: tongueLb === null ? null : lbf(tongueLb),
    ballSizeM: inch(2.3125),
    heightAdjustable: true,
    levelHeightM: levelIn === null ? null : inch(levelIn),
    chainBreakKg: lb(chainLb),
    breakaway: true,
  };
}

function gooseneck(couplerLb: number, tongueLb: number, chainLb: number, levelIn: number): BuildSheet['hitch'] {
  return { ...bumperPull(couplerLb, tongueLb, chainLb, levelIn), kind: 'gooseneck' };
}

/** Thickness and spacing in inches. Of a plate only these two. */
interface Boards {
  readonly plank: number;
  readonly spacing: number;
  readonly count?: number | null;
  readonly wood?: BuildSheet['deck']['wood'];
  readonly grade?: BuildSheet['deck']['woodGrade'];
  readonly treated?: boolean | null;
}

function deck(
  material: BuildSheet['deck']['material'],
  lengthFt: number,
  widthIn: number,
  heightIn: number,
  frontIn: number,
  boards: Boards,
): BuildSheet['deck'] {
  return {
    material,
    lengthM: feet(lengthFt),
    widthM: inch(widthIn),
    heightM: inch(heightIn),
    tiltLengthM: null,
    tiltDrive: null,
    pivotFromCouplerM: null,
    frontFromCouplerM: inch(frontIn),
    plankThicknessM: inch(boards.plank),
    plankWidthM: inch(7.25),
    crossmemberSpacingM: inch(boards.spacing),
    boardCount: boards.count ?? null,
    wood: boards.wood ?? null,
    woodGrade: boards.grade ?? null,
    treated: boards.treated ?? null,
  };
}

function jacks(count: number, liftLb: number, supportLb: number, behindIn: number | null): BuildSheet['jacks'] {
  return {
    count,
    liftKg: lb(liftLb),
    supportKg: lb(supportLb),
    fromCouplerM: behindIn === null ? null : inch(behindIn),
  };
}
