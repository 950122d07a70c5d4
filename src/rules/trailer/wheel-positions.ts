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

/** The wheel positions of one axle, left to right. */
export function axleWheelPositions(axle: Axle): readonly string[] {
  const places = axle.wheelsPerSide === 2 ? ['LO', 'LI', 'RI', 'RO'] : ['L', 'R'];
  return places.map((place) => `${axle.number}${place}`);
}
