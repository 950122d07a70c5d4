import type { CivilDate } from '../calendar/civil-date.js';
import type { Newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { Kilopascals } from '../units/pressure.js';

export const BODIES = ['fixed-deck', 'gravity-tilt', 'powered-gravity-tilt', 'full-powered-tilt', 'deck-over'] as const;
export const FRAME_SECTIONS = ['c-channel', 'i-beam', 'tube'] as const;
export const TONGUES = ['wrapped-to-axles', 'part-way', 'integral'] as const;
export const RAMPS = ['slide-out-rear', 'slide-out-side', 'stand-up', 'stand-up-knee-brace', 'none'] as const;
export const FENDERS = ['double-broke', 'teardrop', 'drive-over', 'none'] as const;
export const DECK_MATERIALS = ['pine', 'oak', 'rubber-faced', 'tread-plate', 'other'] as const;
export const HITCHES = ['bumper-pull', 'gooseneck', 'pintle'] as const;
export const SUSPENSIONS = ['slipper-spring', 'eye-to-eye-spring', 'torsion'] as const;
export const WOODS = [
  'southern-pine',
  'douglas-fir',
  'white-oak',
  'red-oak',
  'hem-fir',
  'spruce-pine-fir',
  'apitong',
  'other',
] as const;
/** Grades of visually graded lumber, as stamped on the board. */
export const WOOD_GRADES = ['select-structural', 'no-1', 'no-2', 'no-3'] as const;
export const BRAKES = ['electric', 'hydraulic', 'surge', 'none'] as const;

export type Body = (typeof BODIES)[number];
export type Suspension = (typeof SUSPENSIONS)[number];
export type Hitch = (typeof HITCHES)[number];
export type Brakes = (typeof BRAKES)[number];

/** How a weight became known. A scale ticket beats a brochure; a guess is said to be one. */
export type WeightBasis = 'weighed' | 'stated' | 'assumed';

/**
 * What a trailer is made of and what its plate promises, from one day on.
 * A change of running gear, coupler or deck makes a new version; trips are judged against the build of their day.
 * `null` means unknown: nobody has said. Lengths along the trailer are measured rearward from the coupler.
 */
export interface BuildSheet {
  readonly id: string;
  readonly effectiveFrom: CivilDate;
  readonly body: Body | null;
  readonly plate: Plate;
  readonly empty: EmptyWeight;
  readonly axles: readonly Axle[];
  readonly suspension: Suspension | null;
  readonly hitch: HitchBuild;
  readonly deck: Deck;
  readonly frame: Frame;
  readonly rear: Rear;
  readonly fenders: { readonly kind: (typeof FENDERS)[number] | null; readonly clearWidthM: Metres | null };
  readonly jacks: Jacks;
  readonly wheels: { readonly boltPattern: string | null; readonly nutTorqueNm: number | null };
}

interface Plate {
  readonly gvwrKg: Kilograms | null;
  /** The cold pressure the plate asks of every tire. */
  readonly coldPressureKpa: Kilopascals | null;
}

interface EmptyWeight {
  /** Weighed as used: spare, ramps, chain box. */
  readonly massKg: Kilograms | null;
  readonly basis: WeightBasis;
  readonly tongueN: Newtons | null;
}

/** One axle, counted from the front. */
export interface Axle {
  readonly number: number;
  /** The plate's rating, measured at the ground. */
  readonly gawrKg: Kilograms | null;
  /** The axle maker's rating of the axle itself; the plate may promise less. */
  readonly ratingKg: Kilograms | null;
  readonly fromCouplerM: Metres | null;
  /** Of the whole axle, both wheels together, in newtons per metre of travel at the wheels. Makers seldom print it. */
  readonly springRateNPerM: number | null;
  /** Between the middles of the tires on the two sides. */
  readonly trackM: Metres | null;
  readonly brakes: Brakes | null;
  readonly lubricant: 'grease' | 'oil' | null;
  /** 1, or 2 where wheels are dual. */
  readonly wheelsPerSide: 1 | 2;
}

export interface HitchBuild {
  readonly kind: Hitch | null;
  /** Gross trailer mass the coupler is rated for. */
  readonly couplerRatingKg: Kilograms | null;
  /** Vertical rating of the coupler, where its maker gives one. */
  readonly couplerTongueN: Newtons | null;
  readonly ballSizeM: Metres | null;
  readonly heightAdjustable: boolean | null;
  /** Height of the coupler above the ground at which the trailer stands level. */
  readonly levelHeightM: Metres | null;
  /** Breaking strength of each chain, as mass it holds. */
  readonly chainBreakKg: Kilograms | null;
  readonly breakaway: boolean | null;
}

export interface Deck {
  readonly material: (typeof DECK_MATERIALS)[number] | null;
  readonly lengthM: Metres | null;
  readonly widthM: Metres | null;
  readonly heightM: Metres | null;
  readonly tiltLengthM: Metres | null;
  readonly tiltDrive: 'damping-cylinder' | 'power-unit' | null;
  /** Where a tilting deck turns, rearward from the coupler. */
  readonly pivotFromCouplerM: Metres | null;
  /** Where the deck's front edge lies. */
  readonly frontFromCouplerM: Metres | null;
  readonly plankThicknessM: Metres | null;
  readonly plankWidthM: Metres | null;
  readonly crossmemberSpacingM: Metres | null;
  readonly boardCount: number | null;
  readonly wood: (typeof WOODS)[number] | null;
  readonly woodGrade: (typeof WOOD_GRADES)[number] | null;
  /** Pressure treated against decay. */
  readonly treated: boolean | null;
}

interface Frame {
  readonly section: (typeof FRAME_SECTIONS)[number] | null;
  /** Depth of the main rail. */
  readonly depthM: Metres | null;
  readonly tongue: (typeof TONGUES)[number] | null;
  /** Depth of the bed frame that a tilt deck rests on. */
  readonly bedDepthM: Metres | null;
}

interface Rear {
  readonly dovetailM: Metres | null;
  readonly ramps: (typeof RAMPS)[number] | null;
  readonly rampLengthM: Metres | null;
  /** What the ramps carry together. */
  readonly rampRatingKg: Kilograms | null;
  readonly stabilizers: boolean | null;
}

interface Jacks {
  readonly count: number | null;
  /** What one jack can raise. */
  readonly liftKg: Kilograms | null;
  /** What one jack can hold, standing still. */
  readonly supportKg: Kilograms | null;
  /** Where the tongue jacks stand, rearward from the coupler. */
  readonly fromCouplerM: Metres | null;
}
