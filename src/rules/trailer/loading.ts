import type { BuildSheet } from '../facts/build-sheet.js';
import type { Machine } from '../facts/load.js';
import { type ClimbLoads, climbLoads } from '../load/climb.js';
import type { LoadLimits } from '../load/load-limits.js';
import { clearanceNeeded, frictionNeeded, rampAngle } from '../load/ramp.js';
import { roomAheadOfPivot, tippingPoint } from '../load/tilt.js';
import { exceeds } from '../units/compare.js';
import { type Metres, metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import { deckSpan } from './deck-span.js';
import { isTilt, isTippedByLoad } from './tilt-body.js';

/** What happens while a machine drives onto a build. Each part is null while a fact of it is unknown. */
export interface Loading {
  readonly climb: ClimbFound | null;
  readonly slope: Slope | null;
  readonly crest: Crest | null;
  readonly tilt: TiltRoom | null;
}

/**
 * What keeps the tail up while a machine comes on. `deck-on-ground`: a tilted deck rests on it, so that the machine's
 * weight enters at the pivot.
 */
export type RearSupport = 'stabilizers' | 'knee-brace' | 'deck-on-ground' | 'none' | 'unknown';

export interface ClimbFound {
  readonly loads: ClimbLoads;
  readonly entersAtM: Metres;
  readonly support: RearSupport;
}

interface Slope {
  /** Radians. */
  readonly angle: number;
  /** The greatest it can be: a dovetail, whose drop is unknown, makes it less. */
  readonly isMost: boolean;
  readonly friction: number;
}

/** Where ramp and deck meet, under the middle of the machine. */
interface Crest {
  readonly neededM: Metres;
  readonly clearanceM: Metres;
  /** The most it can need, as the slope is the greatest it can be. */
  readonly isMost: boolean;
  readonly hangsUp: boolean;
}

/** How far ahead of the pivot a machine can bring its balance point on a deck that its weight must lay flat. */
interface TiltRoom {
  readonly pivotM: Metres;
  readonly aheadM: Metres;
  readonly deckWeightUnknown: boolean;
}

type Comes = Pick<Machine, 'balancePointM' | 'wheelbaseM' | 'clearanceM'>;

/** `machineKg`: as it drives on, with what rides on it. Statics and geometry as in `load/climb.ts`, `load/ramp.ts`, `load/tilt.ts`. */
export function loadingOf(build: BuildSheet, limits: LoadLimits, machine: Comes, machineKg: Kilograms): Loading {
  const slope = slopeOf(build);
  return {
    climb: climbOf(build, limits, machineKg),
    slope,
    crest: slope === null || isTilt(build.body) ? null : crestOf(slope, machine),
    tilt: tiltRoom(build, machine, machineKg),
  };
}

/** A machine enters above the deck's rear edge; on a tilted deck, whose rear edge lies on the ground, above the pivot. */
export function climbOf(build: BuildSheet, limits: LoadLimits, machineKg: Kilograms): ClimbFound | null {
  const { axleCentreM, emptyTongueN } = limits;
  const rearM = deckSpan(build)?.rearM ?? null;
  const entersAtM = isTilt(build.body) ? build.deck.pivotFromCouplerM : rearM;
  if (axleCentreM === null || emptyTongueN === null || entersAtM === null) return null;
  const support = rearSupport(build);
  const stands = support === 'stabilizers' || support === 'knee-brace';
  const supportAtM = stands && entersAtM > axleCentreM ? entersAtM : null;
  return {
    loads: climbLoads({ emptyTongueN, axleCentreM, machineKg, entersAtM, supportAtM }),
    entersAtM,
    support,
  };
}

/** Stabilizers and knee braces stand under the tail; common practice, no source. */
export function rearSupport({ body, rear }: BuildSheet): RearSupport {
  if (isTilt(body)) return 'deck-on-ground';
  if (rear.ramps === 'stand-up-knee-brace') return 'knee-brace';
  if (rear.stabilizers === true) return 'stabilizers';
  if (rear.stabilizers === null || rear.ramps === null) return 'unknown';
  return 'none';
}

/**
 * The ramp from the ground to the deck, or the tilted deck itself. A dovetail lowers the ramp's upper end by a drop that
 * is not recorded, so the slope is then the most it can be. A tilted deck is taken to turn at the deck's own height,
 * which again is the most.
 */
function slopeOf(build: BuildSheet): Slope | null {
  const { heightM, pivotFromCouplerM } = build.deck;
  const rearM = deckSpan(build)?.rearM ?? null;
  const tilts = isTilt(build.body);
  const lengthM = tilts
    ? pivotFromCouplerM === null || rearM === null
      ? null
      : metres(rearM - pivotFromCouplerM)
    : build.rear.rampLengthM;
  if (heightM === null || lengthM === null || !(lengthM > 0) || heightM > lengthM) return null;
  const angle = rampAngle(heightM, lengthM);
  return { angle, isMost: tilts || build.rear.dovetailM !== 0, friction: frictionNeeded(angle) };
}

function crestOf(slope: Slope, { wheelbaseM, clearanceM }: Comes): Crest | null {
  if (wheelbaseM === null || clearanceM === null) return null;
  const neededM = clearanceNeeded(wheelbaseM, slope.angle);
  return { neededM, clearanceM, isMost: slope.isMost, hangsUp: exceeds(neededM, clearanceM) };
}

/** Only where the load must lay the deck down, the machine driven on forwards. The deck's own weight is on no build sheet. */
function tiltRoom(build: BuildSheet, { balancePointM }: Comes, machineKg: Kilograms): TiltRoom | null {
  const { pivotFromCouplerM, frontFromCouplerM, lengthM, tiltLengthM } = build.deck;
  if (!isTippedByLoad(build.body) || pivotFromCouplerM === null || frontFromCouplerM === null) return null;
  if (balancePointM === null || !(machineKg > 0)) return null;
  const fixedM = lengthM === null || tiltLengthM === null ? 0 : Math.max(0, lengthM - tiltLengthM);
  const tipping = tippingPoint({ pivotM: pivotFromCouplerM, own: null }, machineKg);
  return {
    pivotM: pivotFromCouplerM,
    aheadM: roomAheadOfPivot(metres(frontFromCouplerM + fixedM), balancePointM, tipping),
    deckWeightUnknown: tipping.deckWeightUnknown,
  };
}
