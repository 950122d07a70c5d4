import type { Limit, LimitKind } from '../load/limit.js';
import { type Newtons, newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';

/** What makes an edge of the envelope: a rating, the tongue's band, an axle that would hang in the air, or an end of the deck. */
export type EdgeKind =
  | LimitKind
  | 'tongue-share-low'
  | 'tongue-share-high'
  | 'axle-off-ground'
  | 'deck-front'
  | 'deck-rear';

/**
 * One limit on the cargo, as a line in weight and moment:
 *
 *     perWeight · w + perMoment · w x ≤ mostN
 *
 * with w the cargo's weight (N) and x its balance point (m behind the coupler). Every load of plane statics is a sum of
 * a part that goes with w and one that goes with w x, so each limit is a straight line there and the envelope a convex
 * polygon; drawn over x and w the same edge is the curve w = mostN / (perWeight + perMoment · x).
 */
export interface Boundary {
  readonly kind: EdgeKind;
  /** Which one, where there are several: an axle number, a wheel position. */
  readonly subject: string | null;
  /** The rating behind it; null for the tongue's band and the ends of the deck, which are none. */
  readonly limit: Limit | null;
  /** For an end of the tongue's band: the share of the gross that it asks for. */
  readonly grossShare: number | null;
  readonly perWeight: number;
  readonly perMoment: number;
  readonly mostN: Newtons;
}

/** A load that grows with the cargo's weight and moment: constantN + perWeight · w + perMoment · w x. */
export interface Response {
  readonly constantN: Newtons;
  readonly perWeight: number;
  readonly perMoment: number;
}

/** The boundary at which a load reaches a rating. */
export function ratedAt(limit: Limit, load: Response, share = 1): Boundary {
  return {
    kind: limit.kind,
    subject: limit.subject,
    limit,
    grossShare: null,
    perWeight: load.perWeight * share,
    perMoment: load.perMoment * share,
    mostN: newtons(limit.limitN - load.constantN * share),
  };
}

/** What one newton of cargo with its balance point there uses up of a boundary; negative where more weight leaves more room. */
export function perNewtonAt(boundary: Boundary, balancePointM: Metres): number {
  return boundary.perWeight + boundary.perMoment * balancePointM;
}
