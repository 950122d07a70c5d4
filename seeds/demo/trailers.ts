import type { Axle, BuildSheet } from '../../src/rules/facts/build-sheet.js';
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
}

export const DEMO_TRAILERS: readonly DemoTrailer[] = [
  {
    trailer: { yardNumber: 'T-01', name: 'the short white one', stored: 'cover', boughtYearsAgo: 3 },
    tire: ST_225_75R15_E,
    tireWeeks: 120,
    spareWeeks: 120,
    build: {
      body: 'fixed-deck',
      plate: plate(9_990, 80),
      empty: empty(2_720, 'weighed', 310),
      axles: axles(2, 5_200, 158, 34, 'electric', 'grease'),
      suspension: 'eye-to-eye-spring',
      hitch: bumperPull(12_500, 1_250, 15_000),
      deck: deck('pine', 16, 82, 25, 52, { plank: 1.5, spacing: 16 }),
      frame: { section: 'c-channel', depthM: inch(5), tongue: 'wrapped-to-axles', bedDepthM: null },
      rear: { dovetailM: feet(2), ramps: 'slide-out-rear', stabilizers: true },
      fenders: { kind: 'teardrop', clearWidthM: inch(80) },
      jacks: jacks(1, 5_000, 7_000),
      wheels: { boltPattern: '6 on 5.5 in', nutTorqueNm: 149 },
    },
  },
  {
    trailer: { yardNumber: 'T-02', name: 'the long black one', stored: 'open', boughtYearsAgo: 4 },
    tire: ST_235_80R16_E,
    tireWeeks: 96,
    spareWeeks: 200,
    build: {
      body: 'fixed-deck',
      plate: plate(14_000, 80),
      empty: empty(3_720, 'weighed', 470),
      axles: axles(2, 7_000, 190, 35, 'electric', 'grease'),
      suspension: 'slipper-spring',
      hitch: bumperPull(21_000, 2_000, 21_000),
      deck: deck('oak', 20, 82, 27, 56, { plank: 1.75, spacing: 16 }),
      frame: { section: 'c-channel', depthM: inch(6), tongue: 'wrapped-to-axles', bedDepthM: null },
      rear: { dovetailM: feet(2), ramps: 'slide-out-side', stabilizers: true },
      fenders: { kind: 'double-broke', clearWidthM: inch(82) },
      jacks: jacks(1, 10_000, 12_000),
      wheels: { boltPattern: '8 on 6.5 in', nutTorqueNm: 163 },
    },
  },
  {
    trailer: { yardNumber: 'T-03', name: 'the gravity tilt', stored: 'open', boughtYearsAgo: 5 },
    tire: ST_235_80R16_E,
    tireWeeks: 210,
    spareWeeks: 210,
    build: {
      body: 'gravity-tilt',
      plate: plate(14_000, 80),
      empty: empty(4_050, 'weighed', 520),
      axles: axles(2, 7_000, 196, 36, 'electric', 'grease'),
      suspension: 'torsion',
      hitch: bumperPull(21_000, 2_000, 21_000),
      deck: {
        ...deck('pine', 20, 82, 28, 58, { plank: 1.5, spacing: 16 }),
        tiltLengthM: feet(16),
        tiltDrive: 'damping-cylinder',
      },
      frame: { section: 'c-channel', depthM: inch(6), tongue: 'wrapped-to-axles', bedDepthM: inch(6) },
      rear: { dovetailM: null, ramps: 'none', stabilizers: false },
      fenders: { kind: 'double-broke', clearWidthM: inch(82) },
      jacks: jacks(1, 10_000, 12_000),
      wheels: { boltPattern: '8 on 6.5 in', nutTorqueNm: 163 },
    },
  },
  {
    trailer: { yardNumber: 'T-04', name: 'the powered tilt, rubber deck', stored: 'cover', boughtYearsAgo: 2 },
    tire: TRUCK_215_75R17_5_H,
    tireWeeks: 70,
    spareWeeks: 70,
    build: {
      body: 'powered-gravity-tilt',
      plate: plate(15_400, 125),
      empty: empty(4_480, 'stated', 600),
      axles: axles(2, 8_000, 200, 36, 'electric', 'oil'),
      suspension: 'slipper-spring',
      hitch: bumperPull(25_000, 2_500, 25_000),
      deck: {
        ...deck('rubber-faced', 22, 82, 29, 60, { plank: 1.75, spacing: 16 }),
        tiltLengthM: feet(18),
        tiltDrive: 'power-unit',
      },
      frame: { section: 'tube', depthM: inch(6), tongue: 'wrapped-to-axles', bedDepthM: inch(6) },
      rear: { dovetailM: null, ramps: 'none', stabilizers: false },
      fenders: { kind: 'drive-over', clearWidthM: inch(82) },
      jacks: jacks(1, 12_000, 14_000),
      wheels: { boltPattern: '8 on 275 mm', nutTorqueNm: 610 },
    },
  },
  {
    trailer: { yardNumber: 'T-05', name: 'the full tilt gooseneck', stored: 'open', boughtYearsAgo: 3 },
    tire: TRUCK_215_75R17_5_H,
    tireWeeks: 130,
    spareWeeks: 130,
    build: {
      body: 'full-powered-tilt',
      plate: plate(20_000, 125),
      empty: empty(6_150, 'weighed', 1_150),
      axles: axles(2, 8_000, 268, 40, 'hydraulic', 'oil'),
      suspension: 'torsion',
      hitch: gooseneck(30_000, 6_000, 30_000),
      deck: {
        ...deck('tread-plate', 24, 82, 31, 92, { plank: 0.1875, spacing: 16 }),
        tiltLengthM: feet(24),
        tiltDrive: 'power-unit',
      },
      frame: { section: 'i-beam', depthM: inch(8), tongue: 'integral', bedDepthM: inch(8) },
      rear: { dovetailM: null, ramps: 'none', stabilizers: false },
      fenders: { kind: 'drive-over', clearWidthM: inch(83) },
      jacks: jacks(2, 10_000, 12_000),
      wheels: { boltPattern: '8 on 275 mm', nutTorqueNm: 610 },
    },
  },
  {
    trailer: { yardNumber: 'T-06', name: 'the dual gooseneck', stored: 'open', boughtYearsAgo: 6 },
    tire: ST_235_80R16_E,
    tireWeeks: 150,
    spareWeeks: 260,
    build: {
      body: 'deck-over',
      plate: plate(23_900, 80),
      empty: empty(7_900, 'weighed', 1_600),
      axles: axles(2, 10_000, 300, 48, 'electric', 'oil', 2),
      suspension: 'slipper-spring',
      hitch: gooseneck(30_000, 7_500, 30_000),
      deck: deck('oak', 30, 102, 36, 96, { plank: 1.75, spacing: 16 }),
      frame: { section: 'i-beam', depthM: inch(12), tongue: 'integral', bedDepthM: null },
      rear: { dovetailM: feet(5), ramps: 'stand-up', stabilizers: true },
      fenders: { kind: 'none', clearWidthM: null },
      jacks: jacks(2, 12_000, 14_000),
      wheels: { boltPattern: '8 on 6.5 in', nutTorqueNm: 163 },
    },
  },
  {
    // Outgrown: its skid steer was replaced by a track loader that it cannot lawfully carry with its attachments.
    trailer: { yardNumber: 'T-07', name: 'the skid steer trailer', stored: 'open', boughtYearsAgo: 5 },
    tire: ST_235_80R16_E,
    tireWeeks: 180,
    spareWeeks: 180,
    build: {
      body: 'fixed-deck',
      plate: plate(14_000, 80),
      empty: empty(3_900, 'weighed', 480),
      axles: axles(2, 7_000, 192, 35, 'electric', 'grease'),
      suspension: 'eye-to-eye-spring',
      hitch: bumperPull(21_000, 2_000, 21_000),
      deck: deck('pine', 20, 82, 27, 56, { plank: 1.5, spacing: 16 }),
      frame: { section: 'c-channel', depthM: inch(6), tongue: 'wrapped-to-axles', bedDepthM: null },
      rear: { dovetailM: feet(2), ramps: 'stand-up', stabilizers: false },
      fenders: { kind: 'double-broke', clearWidthM: inch(82) },
      jacks: jacks(1, 10_000, 12_000),
      wheels: { boltPattern: '8 on 6.5 in', nutTorqueNm: 163 },
    },
  },
  {
    trailer: { yardNumber: 'T-08', name: 'the pintle deck-over', stored: 'open', boughtYearsAgo: 7 },
    tire: TRUCK_215_75R17_5_H,
    tireWeeks: 160,
    spareWeeks: null,
    build: {
      body: 'deck-over',
      plate: plate(24_000, 125),
      empty: empty(7_250, 'weighed', 980),
      axles: axles(3, 8_000, 230, 38, 'hydraulic', 'oil'),
      suspension: 'slipper-spring',
      hitch: {
        kind: 'pintle',
        couplerRatingKg: lb(40_000),
        couplerTongueN: lbf(6_000),
        ballSizeM: null,
        heightAdjustable: true,
        chainBreakKg: lb(26_000),
        breakaway: true,
      },
      deck: deck('other', 25, 102, 35, 62, { plank: 1.75, spacing: 16 }),
      frame: { section: 'i-beam', depthM: inch(10), tongue: 'integral', bedDepthM: null },
      rear: { dovetailM: feet(5), ramps: 'stand-up-knee-brace', stabilizers: true },
      fenders: { kind: 'none', clearWidthM: null },
      jacks: jacks(1, 12_000, 20_000),
      wheels: { boltPattern: '8 on 275 mm', nutTorqueNm: 610 },
    },
  },
  {
    // Too light a frame for equipment, and the yard never found out where its axle sits.
    trailer: { yardNumber: 'T-09', name: 'the little utility', stored: 'cover', boughtYearsAgo: 8 },
    tire: ST_205_75R15_D,
    tireWeeks: 240,
    spareWeeks: null,
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
          brakes: 'none',
          lubricant: 'grease',
          wheelsPerSide: 1,
        },
      ],
      suspension: 'eye-to-eye-spring',
      hitch: { ...bumperPull(5_000, null, 5_000), ballSizeM: inch(2), breakaway: false },
      deck: deck('pine', 12, 76, 20, 40, { plank: 1.5, spacing: 24 }),
      frame: { section: 'tube', depthM: inch(3), tongue: 'part-way', bedDepthM: null },
      rear: { dovetailM: null, ramps: 'stand-up', stabilizers: false },
      fenders: { kind: 'teardrop', clearWidthM: inch(76) },
      jacks: jacks(1, 2_000, 2_000),
      wheels: { boltPattern: '5 on 4.5 in', nutTorqueNm: 136 },
    },
  },
  {
    // Rubber past its age with tread to spare.
    trailer: { yardNumber: 'T-10', name: 'the old medium', stored: 'open', boughtYearsAgo: 9 },
    tire: ST_235_80R16_E_OLD,
    tireWeeks: 330,
    spareWeeks: 480,
    build: {
      body: 'fixed-deck',
      plate: plate(12_000, 80),
      empty: empty(3_450, 'weighed', 430),
      axles: axles(2, 6_000, 186, 35, 'electric', 'grease'),
      suspension: 'slipper-spring',
      hitch: bumperPull(15_000, 1_500, 15_000),
      deck: deck('pine', 18, 82, 26, 54, { plank: 1.5, spacing: 16 }),
      frame: { section: 'c-channel', depthM: inch(6), tongue: 'part-way', bedDepthM: null },
      rear: { dovetailM: feet(2), ramps: 'slide-out-rear', stabilizers: false },
      fenders: { kind: 'double-broke', clearWidthM: inch(81) },
      jacks: jacks(1, 7_000, 7_000),
      wheels: { boltPattern: '6 on 5.5 in', nutTorqueNm: 149 },
    },
  },
  {
    trailer: { yardNumber: 'T-11', name: 'the surge brake tilt', stored: 'open', boughtYearsAgo: 4 },
    tire: ST_225_75R15_E,
    tireWeeks: 100,
    spareWeeks: 100,
    build: {
      body: 'gravity-tilt',
      plate: plate(9_990, 80),
      empty: empty(3_060, 'weighed', 350),
      axles: axles(2, 5_200, 170, 34, 'surge', 'grease'),
      suspension: 'slipper-spring',
      hitch: bumperPull(12_500, 1_250, 15_000),
      deck: {
        ...deck('rubber-faced', 18, 80, 24, 54, { plank: 1.5, spacing: 16 }),
        tiltLengthM: feet(16),
        tiltDrive: 'damping-cylinder',
      },
      frame: { section: 'c-channel', depthM: inch(5), tongue: 'wrapped-to-axles', bedDepthM: inch(5) },
      rear: { dovetailM: null, ramps: 'none', stabilizers: false },
      fenders: { kind: 'teardrop', clearWidthM: inch(80) },
      jacks: jacks(1, 5_000, 7_000),
      wheels: { boltPattern: '6 on 5.5 in', nutTorqueNm: 149 },
    },
  },
  {
    trailer: { yardNumber: 'T-12', name: 'the hire medium', stored: 'open', boughtYearsAgo: 2 },
    tire: ST_235_80R16_E,
    tireWeeks: 88,
    spareWeeks: 88,
    build: {
      body: 'fixed-deck',
      plate: plate(14_000, 80),
      empty: empty(3_800, 'weighed', 490),
      axles: axles(2, 7_000, 192, 35, 'electric', 'grease'),
      suspension: 'slipper-spring',
      hitch: bumperPull(21_000, 2_000, 21_000),
      deck: deck('oak', 20, 82, 27, 56, { plank: 1.75, spacing: 16 }),
      frame: { section: 'c-channel', depthM: inch(6), tongue: 'wrapped-to-axles', bedDepthM: null },
      rear: { dovetailM: feet(2), ramps: 'stand-up-knee-brace', stabilizers: false },
      fenders: { kind: 'drive-over', clearWidthM: inch(82) },
      jacks: jacks(1, 10_000, 12_000),
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

/** Axles of one rating, evenly spread about a middle measured from the coupler. */
function axles(
  count: number,
  ratingLb: number,
  middleIn: number,
  spreadIn: number,
  brakes: Axle['brakes'],
  lubricant: Axle['lubricant'],
  wheelsPerSide: Axle['wheelsPerSide'] = 1,
): readonly Axle[] {
  return Array.from({ length: count }, (_, index) => ({
    number: index + 1,
    gawrKg: lb(ratingLb),
    ratingKg: lb(ratingLb),
    fromCouplerM: inch(middleIn + (index - (count - 1) / 2) * spreadIn),
    brakes,
    lubricant,
    wheelsPerSide,
  }));
}

function bumperPull(couplerLb: number, tongueLb: number | null, chainLb: number): BuildSheet['hitch'] {
  return {
    kind: 'bumper-pull',
    couplerRatingKg: lb(couplerLb),
    couplerTongueN: tongueLb === null ? null : lbf(tongueLb),
    ballSizeM: inch(2.3125),
    heightAdjustable: true,
    chainBreakKg: lb(chainLb),
    breakaway: true,
  };
}

function gooseneck(couplerLb: number, tongueLb: number, chainLb: number): BuildSheet['hitch'] {
  return { ...bumperPull(couplerLb, tongueLb, chainLb), kind: 'gooseneck' };
}

function deck(
  material: BuildSheet['deck']['material'],
  lengthFt: number,
  widthIn: number,
  heightIn: number,
  frontIn: number,
  boards: { readonly plank: number; readonly spacing: number },
): BuildSheet['deck'] {
  return {
    material,
    lengthM: feet(lengthFt),
    widthM: inch(widthIn),
    heightM: inch(heightIn),
    tiltLengthM: null,
    tiltDrive: null,
    frontFromCouplerM: inch(frontIn),
    plankThicknessM: inch(boards.plank),
    plankWidthM: inch(7.25),
    crossmemberSpacingM: inch(boards.spacing),
  };
}

function jacks(count: number, liftLb: number, supportLb: number): BuildSheet['jacks'] {
  return { count, liftKg: lb(liftLb), supportKg: lb(supportLb) };
}
