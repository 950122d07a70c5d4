import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { Machine } from '../../rules/facts/load.js';
import { deckSpan } from '../../rules/trailer/deck-span.js';
import { isTilt } from '../../rules/trailer/tilt-body.js';
import type { Newtons } from '../../rules/units/force.js';
import type { Kilograms } from '../../rules/units/mass.js';

/** Where each thing of a side view is drawn: centimetres behind the coupler, and above the ground. */
export interface SideGeometry {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly deck: { readonly front: number; readonly rear: number; readonly height: number; readonly thick: number };
  /** Where the flat part ends and the dovetail goes down; the rear where there is none. */
  readonly flatRear: number;
  readonly tailHeight: number;
  readonly frameDepth: number;
  readonly couplerHeight: number;
  readonly axles: readonly { readonly at: number; readonly braked: boolean; readonly dual: boolean }[];
  readonly wheelRadius: number;
  readonly jackAt: number;
  /** Where a tilting deck turns and where its tilting part begins; null on a deck that does not tilt. */
  readonly tilt: { readonly pivot: number; readonly from: number } | null;
  readonly rampLength: number;
  /** Facts nobody has given, for which a usual size is drawn. */
  readonly drawnAsUsual: readonly UsualFact[];
}

export type UsualFact = 'deck-place' | 'deck-height' | 'axle-places' | 'coupler-height' | 'pivot' | 'ramp-length';

/** What stands on the deck and what it presses with; each null while unknown. */
export interface SideLoad {
  readonly name: string;
  readonly machine: Machine | null;
  readonly massKg: Kilograms | null;
  readonly balancePointM: number;
  readonly tongueN: Newtons | null;
  readonly axleN: readonly Newtons[] | null;
  /** Where it stands best, metres behind the coupler. */
  readonly bestM: number | null;
}

/** A machine as it stands on the deck. */
export interface SideMachine {
  readonly front: number;
  readonly length: number;
  readonly height: number;
  readonly balanceAt: number;
  /** Its length, or where it balances in it, is not known: the outline is a usual one. */
  readonly isSketch: boolean;
}

/** Sizes drawn where nobody has given one, cm. Common practice, no source; a picture only, nothing is worked out from them. */
const USUAL = { deckFront: 130, deckLength: 549, deckHeight: 63, highDeck: 92, coupler: 47, spread: 87, ramp: 150 };
const WHEEL_RADIUS = 37;

export function sideGeometry(build: BuildSheet): SideGeometry {
  const usual: UsualFact[] = [];
  const or = (metres: number | null, fact: UsualFact, centimetres: number): number => {
    if (metres !== null) return metres * 100;
    usual.push(fact);
    return centimetres;
  };
  const isHigh = build.body === 'deck-over' || build.hitch.kind === 'gooseneck';
  const span = deckSpan(build);
  if (span === null) usual.push('deck-place');
  const front = (span?.frontM ?? USUAL.deckFront / 100) * 100;
  const rear = span === null ? front + (build.deck.lengthM ?? USUAL.deckLength / 100) * 100 : span.rearM * 100;
  const height = or(build.deck.heightM, 'deck-height', isHigh ? USUAL.highDeck : USUAL.deckHeight);
  const dovetail = Math.min((build.rear.dovetailM ?? 0) * 100, (rear - front) / 2);
  const ramps = build.rear.ramps;
  const hasRamps = ramps !== null && ramps !== 'none';
  const rampLength = hasRamps ? or(build.rear.rampLengthM, 'ramp-length', USUAL.ramp) : 0;
  const isStanding = ramps === 'stand-up' || ramps === 'stand-up-knee-brace';
  const axles = axlesAt(build, front, rear, usual);
  const neck = build.hitch.kind === 'gooseneck' ? 145 : 0;
  return {
    left: Math.min(-75, front - 20),
    right: Math.max(rear + (isStanding ? 60 : 35), ...axles.map((axle) => axle.at + WHEEL_RADIUS + 15)),
    top: Math.max(height + (isStanding ? rampLength : 0), neck + 60, height + 60) + 10,
    deck: { front, rear, height, thick: 6 },
    flatRear: rear - dovetail,
    // How far a dovetail drops is on no build sheet: a quarter of its length is drawn, never to the ground.
    tailHeight: Math.max(height - dovetail / 4, 18),
    frameDepth: Math.min((build.frame.depthM ?? 0.15) * 100, height - 10),
    couplerHeight: or(build.hitch.levelHeightM, 'coupler-height', USUAL.coupler),
    axles,
    wheelRadius: WHEEL_RADIUS,
    jackAt: build.jacks.fromCouplerM === null ? 55 : build.jacks.fromCouplerM * 100,
    tilt: tiltOf(build, front, rear, usual),
    rampLength,
    drawnAsUsual: usual,
  };
}

function axlesAt(build: BuildSheet, front: number, rear: number, usual: UsualFact[]): SideGeometry['axles'] {
  const axles = build.axles.toSorted((a, b) => a.number - b.number);
  if (axles.some(({ fromCouplerM }) => fromCouplerM === null)) usual.push('axle-places');
  // Usually a little behind the middle of the deck.
  const centre = front + (rear - front) * 0.58;
  return axles.map((axle, index) => ({
    at: (axle.fromCouplerM ?? (centre + (index - (axles.length - 1) / 2) * USUAL.spread) / 100) * 100,
    braked: axle.brakes !== null && axle.brakes !== 'none',
    dual: axle.wheelsPerSide === 2,
  }));
}

function tiltOf(build: BuildSheet, front: number, rear: number, usual: UsualFact[]): SideGeometry['tilt'] {
  if (!isTilt(build.body)) return null;
  const { pivotFromCouplerM, tiltLengthM } = build.deck;
  if (pivotFromCouplerM === null) usual.push('pivot');
  const from = tiltLengthM === null ? front : Math.max(front, rear - tiltLengthM * 100);
  return { from, pivot: pivotFromCouplerM === null ? front + (rear - front) * 0.62 : pivotFromCouplerM * 100 };
}

/** A machine with its own balance point at a place, metres behind the coupler, driven on forwards. */
export function sideMachine(
  machine: Pick<Machine, 'lengthM' | 'balancePointM'> | null,
  balancePointM: number,
): SideMachine {
  const length = (machine?.lengthM ?? 3) * 100;
  const ahead = machine?.balancePointM == null ? length / 2 : machine.balancePointM * 100;
  return {
    front: balancePointM * 100 - ahead,
    length,
    height: Math.min(Math.max(length * 0.55, 110), 210),
    balanceAt: balancePointM * 100,
    isSketch: machine?.lengthM == null || machine.balancePointM === null,
  };
}
