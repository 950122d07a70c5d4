import type { Axle, BuildSheet } from '../facts/build-sheet.js';

/** Where a wheel sits. Written `1L`, `2R`, and for duals `1LI`, `1RO`; or `spare`. */
export type WheelPosition =
  | {
      readonly kind: 'axle';
      /** Counted from the front, from 1. */
      readonly axle: number;
      readonly side: 'L' | 'R';
      /** Inner or outer of a dual pair; null where one wheel stands alone. */
      readonly dual: 'I' | 'O' | null;
    }
  | { readonly kind: 'spare' };

/** Reads a wheel position. Null for anything that is not one. */
export function parseWheelPosition(text: string): WheelPosition | null {
  if (text === 'spare') return { kind: 'spare' };
  const match = /^([1-9])([LR])([IO])?$/.exec(text);
  if (match === null) return null;
  const [, axle, side, dual] = match;
  return {
    kind: 'axle',
    axle: Number(axle),
    side: side === 'L' ? 'L' : 'R',
    dual: dual === 'I' || dual === 'O' ? dual : null,
  };
}

/** Every place of this build where a tire belongs, front to rear and left to right; `spare` comes last, since any trailer may carry one. */
export function wheelPositions(build: BuildSheet): readonly string[] {
  const axles = build.axles.toSorted((a, b) => a.number - b.number);
  return [...axles.flatMap(axleWheelPositions), 'spare'];
}

/** How the wheel at a position is mounted; null for the spare, and for a place the build does not have. */
export function mountingAt(position: string, build: BuildSheet): 'single' | 'dual' | null {
  const axle = build.axles.find((one) => axleWheelPositions(one).includes(position));
  return axle === undefined ? null : axle.wheelsPerSide === 2 ? 'dual' : 'single';
}

/** The other wheel of a dual pair; null where a wheel stands alone. */
export function mateOf(position: string): string | null {
  const place = parseWheelPosition(position);
  if (place?.kind !== 'axle' || place.dual === null) return null;
  return `${place.axle}${place.side}${place.dual === 'I' ? 'O' : 'I'}`;
}

/** The wheel positions of one axle, left to right. */
export function axleWheelPositions(axle: Axle): readonly string[] {
  const places = axle.wheelsPerSide === 2 ? ['LO', 'LI', 'RI', 'RO'] : ['L', 'R'];
  return places.map((place) => `${axle.number}${place}`);
}
