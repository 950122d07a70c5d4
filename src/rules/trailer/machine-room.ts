import type { BuildSheet } from '../facts/build-sheet.js';
import type { Machine } from '../facts/load.js';
import { exceeds } from '../units/compare.js';
import { type Metres, metres } from '../units/length.js';
import { deckSpan } from './deck-span.js';
import { isTilt, isTippedByLoad } from './tilt-body.js';

/** A machine wider than where it must stand. */
export interface TooWide {
  readonly machineM: Metres;
  readonly roomM: Metres;
  readonly between: 'fenders' | 'deck-edges';
}

/**
 * Null when it fits, or when a width is unknown. Between plate or teardrop fenders the clear width counts; without
 * fenders the deck's own; over drive-over fenders a machine may stand, so nothing is said. The width is the machine's as
 * hauled, over everything: a bucket that reaches over the fenders is wider than its tracks and is called too wide.
 */
export function tooWide(build: BuildSheet, machine: Pick<Machine, 'widthM'>): TooWide | null {
  const room = widthRoom(build);
  if (room === null || machine.widthM === null || !exceeds(machine.widthM, room.roomM)) return null;
  return { machineM: machine.widthM, ...room };
}

export function widthRoom({ fenders, deck }: BuildSheet): Pick<TooWide, 'roomM' | 'between'> | null {
  if (fenders.kind === 'drive-over') return null;
  if (fenders.kind === 'none') return deck.widthM === null ? null : { roomM: deck.widthM, between: 'deck-edges' };
  return fenders.clearWidthM === null ? null : { roomM: fenders.clearWidthM, between: 'fenders' };
}

/** A machine longer than what it must stand on. */
export interface TooLong {
  readonly machineM: Metres;
  readonly roomM: Metres;
  /** `tilt`: the tilting part, on a deck that tilts. */
  readonly of: 'tilt' | 'deck';
  /** Whether its wheels or tracks have room all the same, so that it only sticks out; null while their length is unknown. */
  readonly stands: boolean | null;
}

/** Null when it fits, or when a length is unknown. On a tilt deck the tilting part must hold all of it. */
export function tooLong(build: BuildSheet, machine: Pick<Machine, 'lengthM' | 'wheelbaseM'>): TooLong | null {
  const room = lengthRoom(build);
  if (room === null || machine.lengthM === null || !exceeds(machine.lengthM, room.roomM)) return null;
  const stands = machine.wheelbaseM === null ? null : !exceeds(machine.wheelbaseM, room.roomM);
  return { machineM: machine.lengthM, ...room, stands };
}

export function lengthRoom(build: BuildSheet): Pick<TooLong, 'roomM' | 'of'> | null {
  const { tiltLengthM, lengthM } = build.deck;
  if (isTilt(build.body) && tiltLengthM !== null) return { roomM: tiltLengthM, of: 'tilt' };
  return lengthM === null ? null : { roomM: lengthM, of: 'deck' };
}

/**
 * Between where the balance point of a machine may lie with none of it beyond the deck, driven on forwards: the deck less
 * what the machine has ahead of its balance point and behind it, and on a deck that its weight must lay flat no further
 * back than the pivot. With its length or balance point unknown, the whole deck. Null while the deck's place is unknown,
 * or when there is no such place.
 */
export function parkingRange(
  build: BuildSheet,
  { lengthM, balancePointM }: Pick<Machine, 'lengthM' | 'balancePointM'>,
): { readonly fromM: Metres; readonly toM: Metres } | null {
  const span = deckSpan(build);
  if (span === null) return null;
  const isSized = lengthM !== null && balancePointM !== null;
  const fromM = metres(span.frontM + (isSized ? balancePointM : 0));
  const rearM = span.rearM - (isSized ? lengthM - balancePointM : 0);
  const pivotM = isTippedByLoad(build.body) ? build.deck.pivotFromCouplerM : null;
  const toM = metres(Math.min(rearM, pivotM ?? rearM));
  return fromM <= toM ? { fromM, toM } : null;
}
