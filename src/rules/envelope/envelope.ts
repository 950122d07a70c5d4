import type { LoadLimits, RatingLack } from '../load/load-limits.js';
import type { SpringAxle } from '../load/springs.js';
import { massHeldUpBy, newtons } from '../units/force.js';
import { type Metres, metres } from '../units/length.js';
import { type Kilograms, kg } from '../units/mass.js';
import { type DeckSpan, deckBoundaries, loadBoundaries } from './boundaries.js';
import { type Boundary, type EdgeKind, perNewtonAt } from './boundary.js';
import { type Corner, polygonInside } from './polygon.js';
import { emptyTrailer, sharedResponse, type TrailerResponse, torsionResponse } from './response.js';

export interface EnvelopeInput {
  readonly limits: LoadLimits;
  /** Null while nobody said where the deck lies: balance points from the coupler to twice the axles' distance are looked at. */
  readonly deck: DeckSpan | null;
  /**
   * How far the coupler is held above (positive) the height at which the loaded trailer stands level; asked for torsion
   * axles only. Null: nobody said.
   */
  readonly raisedM: Metres | null;
}

interface EnvelopePoint {
  readonly balancePointM: Metres;
  readonly cargoKg: Kilograms;
}

/** One side of the envelope, and what makes it. `no-cargo` is the bare deck at the bottom. */
export interface Edge {
  readonly kind: EdgeKind | 'no-cargo';
  readonly subject: string | null;
  readonly from: EnvelopePoint;
  readonly to: EnvelopePoint;
  /** The line behind it; null at the bottom. */
  readonly boundary: Boundary | null;
}

/** What every question about the envelope is answered from: each limit as a boundary, worked out once for a build. */
export interface Bounds {
  readonly front: Boundary;
  readonly rear: Boundary;
  readonly span: DeckSpan;
  readonly boundaries: readonly Boundary[];
  readonly deckKnown: boolean;
  /** Ratings nobody gave, so that no edge stands for them. */
  readonly unchecked: readonly RatingLack[];
}

export type EnvelopeLack =
  | 'empty-mass'
  | 'empty-tongue'
  | 'axle-places'
  | 'suspension'
  | 'torsion-level'
  | 'spring-rate'
  | 'ratings';

export type BoundsFound =
  | { readonly kind: 'known'; readonly bounds: Bounds }
  | { readonly kind: 'unknown'; readonly lacks: readonly EnvelopeLack[] };

/**
 * The region of (balance point, cargo weight) inside every limit.
 *
 * `known`: its edges in order round it; an empty list when no load at all is inside, not even none. `unknown`: what is
 * missing. A region drawn from some facts only would read as a permission, so none is.
 */
export type Envelope =
  | { readonly kind: 'known'; readonly edges: readonly Edge[]; readonly bounds: Bounds }
  | { readonly kind: 'unknown'; readonly lacks: readonly EnvelopeLack[] };

/**
 * Every limit of a build on its cargo. The trailer stands on level ground; for torsion axles at the height given.
 * Source: plane statics (`load/statics.ts`); no approximation but a rigid frame and small angles.
 */
export function boundsOf({ limits, deck, raisedM }: EnvelopeInput): BoundsFound {
  const empty = emptyTrailer(limits);
  const springs = springsHeld(limits, raisedM);
  const lacks: EnvelopeLack[] = empty.kind === 'unknown' ? [...empty.lacks] : [];
  if (limits.sharing === 'unknown') lacks.push('suspension');
  if (springs.kind === 'unknown' && !lacks.includes(springs.lacks)) lacks.push(springs.lacks);
  if (empty.kind === 'unknown' || springs.kind === 'unknown' || lacks.length > 0) return { kind: 'unknown', lacks };

  const responses: readonly TrailerResponse[] =
    springs.kind === 'shared'
      ? [sharedResponse(empty, limits.axles.length)]
      : springs.each.map((axles) => torsionResponse(empty, axles, springs.raisedM));
  const span = deck ?? { frontM: metres(0), rearM: metres(2 * empty.axleCentreM) };
  const [front, rear] = deckBoundaries(span) as [Boundary, Boundary];
  return {
    kind: 'known',
    bounds: {
      front,
      rear,
      span,
      boundaries: responses.flatMap((response) => loadBoundaries(limits, response, empty.weightN)),
      deckKnown: deck !== null,
      unchecked: limits.ratingLacks,
    },
  };
}

/** `separate`: the springs every limit is held by, one list where their rates do not matter or are known, else the softest and the stiffest. */
type SpringsHeld =
  | { readonly kind: 'shared' }
  | { readonly kind: 'separate'; readonly raisedM: Metres; readonly each: readonly (readonly SpringAxle[])[] }
  | { readonly kind: 'unknown'; readonly lacks: 'torsion-level' | 'spring-rate' | 'axle-places' };

function springsHeld({ sharing, torsion }: LoadLimits, raisedM: Metres | null): SpringsHeld {
  if (sharing !== 'separate' || torsion === null) return { kind: 'shared' };
  if (torsion.placesM === null) return { kind: 'unknown', lacks: 'axle-places' };
  if (raisedM === null) return { kind: 'unknown', lacks: 'torsion-level' };
  if (torsion.rates === null) return { kind: 'unknown', lacks: 'spring-rate' };
  const { known, softest, stiffest } = torsion.rates;
  return { kind: 'separate', raisedM, each: known || raisedM === 0 ? [softest] : [softest, stiffest] };
}

/** The allowed region of balance point and cargo weight, each corner exact, each edge with the limit that makes it. */
export function envelope(input: EnvelopeInput): Envelope {
  const found = boundsOf(input);
  if (found.kind === 'unknown') return found;
  const corners = polygonInside(found.bounds.front, found.bounds.rear, found.bounds.boundaries);
  if (corners === null) return { kind: 'unknown', lacks: ['ratings'] };
  return { kind: 'known', edges: edgesOf(corners), bounds: found.bounds };
}

/** The cargo weight at which an edge is reached above a balance point between its ends; null on an upright edge or at the bottom. */
export function weightOnEdge(edge: Edge, balancePointM: Metres): Kilograms | null {
  if (edge.boundary === null || edge.boundary.mostN === 0) return null;
  return massHeldUpBy(newtons(edge.boundary.mostN / perNewtonAt(edge.boundary, balancePointM)));
}

function edgesOf(corners: readonly Corner[]): readonly Edge[] {
  return corners.flatMap((corner, index) => {
    const { onward } = corner;
    const next = corners[(index + 1) % corners.length] as Corner;
    const before = corners[(index + corners.length - 1) % corners.length] as Corner;
    const edge: Edge = {
      kind: onward.kind,
      subject: onward.subject,
      from: pointAt(corner, onward),
      to: pointAt(next, onward),
      boundary: onward,
    };
    if (corner.weightN > 0) return [edge];
    const bottom: Edge = {
      kind: 'no-cargo',
      subject: null,
      from: pointAt(corner, before.onward),
      to: edge.from,
      boundary: null,
    };
    return [bottom, edge];
  });
}

/** With no cargo every balance point is the same load: the corner is drawn where the edge that leads to it stands. */
function pointAt(corner: Corner, along: Boundary): EnvelopePoint {
  return corner.weightN > 0
    ? {
        balancePointM: metres(corner.momentNm / corner.weightN),
        cargoKg: massHeldUpBy(newtons(corner.weightN)),
      }
    : { balancePointM: metres(-along.perWeight / along.perMoment), cargoKg: kg(0) };
}
