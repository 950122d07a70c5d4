import { newtons } from '../units/force.js';
import type { Boundary } from './boundary.js';

/** A corner in weight (N) and moment (N m), and the boundary along which the polygon goes on from it. */
export interface Corner {
  readonly weightN: number;
  readonly momentNm: number;
  readonly onward: Boundary;
}

/**
 * Far above any load on wheels, N. A polygon that still reaches it is held by no limit from above.
 */
const ENDLESS_N = 1e9;

/** Of a boundary's own size: nearer than this a corner counts as lying on it. Sums of a dozen terms err by 1e-15. */
const ON_IT = 1e-12;

/**
 * The convex polygon inside every boundary and between the first two, which are lines from the origin (the ends of the
 * deck). Each corner is the crossing of its own two boundaries, not a point carried along from cut to cut, so that it
 * lies on both to rounding. `[]`: nothing is inside. Null: nothing holds it from above.
 */
export function polygonInside(
  front: Boundary,
  rear: Boundary,
  boundaries: readonly Boundary[],
): readonly Corner[] | null {
  const top: Boundary = { ...front, perWeight: 1, perMoment: 0, mostN: newtons(ENDLESS_N) };
  let corners: readonly Corner[] = [
    { weightN: 0, momentNm: 0, onward: rear },
    crossing(rear, top, top),
    crossing(top, front, front),
  ];
  for (const boundary of boundaries) corners = cut(corners, boundary);
  return corners.some((corner) => corner.onward === top) ? null : corners;
}

/** The part of a polygon inside one more boundary. */
function cut(corners: readonly Corner[], boundary: Boundary): readonly Corner[] {
  const kept: Corner[] = [];
  for (const [index, corner] of corners.entries()) {
    const next = corners[(index + 1) % corners.length] as Corner;
    const isInside = lies(corner, boundary);
    if (isInside) kept.push(corner);
    if (isInside && !lies(next, boundary)) kept.push(crossing(corner.onward, boundary, boundary));
    else if (!isInside && lies(next, boundary)) kept.push(crossing(corner.onward, boundary, corner.onward));
  }
  return kept.length < 3 ? [] : withoutRepeats(kept);
}

function lies(corner: Corner, { perWeight, perMoment, mostN }: Boundary): boolean {
  const onWeight = perWeight * corner.weightN;
  const onMoment = perMoment * corner.momentNm;
  const size = Math.abs(onWeight) + Math.abs(onMoment) + Math.abs(mostN);
  return onWeight + onMoment - mostN <= size * ON_IT;
}

function crossing(a: Boundary, b: Boundary, onward: Boundary): Corner {
  const determinant = a.perWeight * b.perMoment - b.perWeight * a.perMoment;
  return {
    weightN: (a.mostN * b.perMoment - b.mostN * a.perMoment) / determinant,
    momentNm: (a.perWeight * b.mostN - b.perWeight * a.mostN) / determinant,
    onward,
  };
}

/** A boundary through a corner leaves that corner twice; of the two the one whose edge has a length stays. */
function withoutRepeats(corners: readonly Corner[]): readonly Corner[] {
  return corners.filter((corner, index) => {
    const next = corners[(index + 1) % corners.length] as Corner;
    const size = Math.abs(corner.weightN) + Math.abs(corner.momentNm);
    return Math.abs(corner.weightN - next.weightN) + Math.abs(corner.momentNm - next.momentNm) > size * ON_IT;
  });
}
