import type { WOOD_GRADES } from '../facts/build-sheet.js';
import { inch, type Metres } from '../units/length.js';
import { type Kilopascals, kPa, psi } from '../units/pressure.js';
import type { Wood } from './clear-wood.js';
import {
  flatUseFactor,
  INCISED_BENDING,
  INCISED_ELASTICITY,
  LOAD_DURATION,
  type LoadDuration,
  sizeFactor,
  WET_ELASTICITY_FACTOR,
  WET_SHEAR_FACTOR,
  wetBendingFactor,
} from './design-factors.js';

export type WoodGrade = (typeof WOOD_GRADES)[number];

/** Published reference values of one grade: dry, ten years, edgewise. */
interface Reference {
  readonly bendingKpa: Kilopascals;
  readonly shearKpa: Kilopascals;
  readonly elasticityKpa: Kilopascals;
  /** False: from memory, or two copies disagree. Such a value never blocks a trip. */
  readonly verified: boolean;
}

/** What a board may be stressed to, and what it is reckoned from. */
export interface AllowableStress {
  readonly bendingKpa: Kilopascals;
  readonly shearKpa: Kilopascals;
  readonly elasticityKpa: Kilopascals;
  readonly verified: boolean;
}

export interface BoardUse {
  readonly widthM: Metres;
  /** As sawn, whatever decay has left: the published tables go by it. */
  readonly thicknessM: Metres;
  readonly duration: LoadDuration;
  readonly wet: boolean;
  /** Pressure treated. Woods other than southern pine are cut for it, and lose by the cuts. */
  readonly treated: boolean;
}

/** Thinnest board the tables know: nominal 2 in, dressed 1-1/2 in, m. */
const THINNEST: Metres = inch(1.5);
const ROUNDING = 1e-4;

/**
 * Design value of a plank laid flat: F'b = Fb · C_D · C_M · C_fu · C_F, shear F'v = Fv · C_D · C_M, E' = E · C_M.
 * Source: National Design Specification for Wood Construction (NDS) 2018, ch. 4 and supplement table 4A.
 * Null where no published value is at hand: another wood, or a board thinner than nominal 2 in.
 */
export function allowableStress(wood: Wood, grade: WoodGrade, use: BoardUse): AllowableStress | null {
  const reference = referenceValue(wood, grade, use.widthM);
  if (reference === null || use.thicknessM < THINNEST - ROUNDING) return null;
  // Southern pine is published by width and takes preservative without being cut.
  const isPine = wood === 'southern-pine';
  const incised = use.treated && !isPine;
  const size = isPine ? 1 : sizeFactor(use.widthM);
  const duration = LOAD_DURATION[use.duration];
  const wet = use.wet ? wetBendingFactor(kPa(reference.bendingKpa * size)) : 1;
  const flat = flatUseFactor(use.widthM, use.thicknessM);
  const cuts = incised ? INCISED_BENDING : 1;
  return {
    bendingKpa: kPa(reference.bendingKpa * size * duration * wet * flat * cuts),
    shearKpa: kPa(reference.shearKpa * duration * (use.wet ? WET_SHEAR_FACTOR : 1) * cuts),
    elasticityKpa: kPa(
      reference.elasticityKpa * (use.wet ? WET_ELASTICITY_FACTOR : 1) * (incised ? INCISED_ELASTICITY : 1),
    ),
    verified: reference.verified && !incised,
  };
}

/** Southern pine, column by dressed width: Fb falls as boards grow wider. */
const PINE_WIDTHS = [inch(5.5), inch(7.25), inch(9.25), inch(11.25)] as const;

/**
 * Southern pine. Source: Southern Pine Use Guide (grading rules of the Southern Pine Inspection Bureau, effective 2013),
 * its metric edition read as 6.9, 6.4, 5.5, 5.2 MPa for No. 2 and so on; psi as in the NDS supplement, table 4B, whose
 * metric roundings those are. Fv 1.2 MPa = 175 psi.
 */
const SOUTHERN_PINE: Readonly<
  Record<WoodGrade, { readonly bendingPsi: readonly number[]; readonly millionPsi: number }>
> = {
  'select-structural': { bendingPsi: [2_100, 1_950, 1_700, 1_600], millionPsi: 1.8 },
  'no-1': { bendingPsi: [1_350, 1_250, 1_050, 1_000], millionPsi: 1.6 },
  'no-2': { bendingPsi: [1_000, 925, 800, 750], millionPsi: 1.4 },
  'no-3': { bendingPsi: [575, 525, 475, 450], millionPsi: 1.3 },
};

/**
 * Woods published once for all widths, [Fb psi, E million psi] by grade; Fv psi.
 * Source: NDS 2018 supplement, table 4A (Douglas fir-larch p. 34, hem-fir p. 35, spruce-pine-fir p. 37).
 */
const BY_SIZE_FACTOR: Readonly<
  Partial<Record<Wood, { readonly shearPsi: number } & Record<WoodGrade, readonly [number, number]>>>
> = {
  'douglas-fir': {
    shearPsi: 180,
    'select-structural': [1_500, 1.9],
    'no-1': [1_000, 1.7],
    'no-2': [900, 1.6],
    'no-3': [525, 1.4],
  },
  'hem-fir': {
    shearPsi: 150,
    'select-structural': [1_400, 1.6],
    'no-1': [975, 1.5],
    'no-2': [850, 1.3],
    'no-3': [500, 1.2],
  },
  'spruce-pine-fir': {
    shearPsi: 135,
    // Copies disagree, 1,150 and 1,250: the lower one, unverified.
    'select-structural': [1_150, 1.5],
    'no-1': [875, 1.4],
    'no-2': [875, 1.4],
    'no-3': [500, 1.2],
  },
};

const PINE_SHEAR = psi(175);

function referenceValue(wood: Wood, grade: WoodGrade, width: Metres): Reference | null {
  if (wood === 'southern-pine') {
    const column = PINE_WIDTHS.findIndex((row) => width <= row + ROUNDING);
    const bendingPsi = SOUTHERN_PINE[grade].bendingPsi[column];
    if (bendingPsi === undefined) return null;
    return {
      bendingKpa: psi(bendingPsi),
      shearKpa: PINE_SHEAR,
      elasticityKpa: psi(SOUTHERN_PINE[grade].millionPsi * 1e6),
      verified: true,
    };
  }
  const row = BY_SIZE_FACTOR[wood];
  if (row === undefined) return null;
  const [bendingPsi, millionPsi] = row[grade];
  return {
    bendingKpa: psi(bendingPsi),
    shearKpa: psi(row.shearPsi),
    elasticityKpa: psi(millionPsi * 1e6),
    verified: !(wood === 'spruce-pine-fir' && grade === 'select-structural'),
  };
}
