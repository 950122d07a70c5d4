import type { Limit } from '../load/limit.js';
import type { LoadLimits } from '../load/load-limits.js';
import { type Newtons, newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';
import { type Boundary, type Response, ratedAt } from './boundary.js';
import { type TrailerResponse, together } from './response.js';

/** Where a cargo's balance point may lie: from the deck's front edge to its rear. */
export interface DeckSpan {
  readonly frontM: Metres;
  readonly rearM: Metres;
}

/**
 * Every limit on the cargo as a boundary, in the order in which a load check names them. The tongue's band is one too
 * while the hitch is known: it is a target of the trade and no rating, and its boundaries bear no `limit`.
 */
export function loadBoundaries(limits: LoadLimits, trailer: TrailerResponse, emptyN: Newtons): readonly Boundary[] {
  const gross: Response = { constantN: emptyN, perWeight: 1, perMoment: 0 };
  const found: Boundary[] = [];
  const rate = (limit: Limit | null, load: Response, share = 1) => {
    if (limit !== null) found.push(ratedAt(limit, load, share));
  };
  rate(limits.plate, gross);
  rate(limits.axleGroup, trailer.group);
  for (const [index, { rated }] of limits.axles.entries()) rate(rated, trailer.axles[index] as Response);
  for (const [index, { tires, wheels }] of limits.axles.entries()) {
    for (const tire of tires) rate(tire, trailer.axles[index] as Response, 1 / wheels);
  }
  for (const { limit, first, last } of limits.legal) rate(limit, together(trailer.axles.slice(first, last + 1)));
  rate(limits.coupler, gross);
  rate(limits.couplerTongue, trailer.tongue);
  rate(limits.towHitch, gross);
  rate(limits.towHitchTongue, trailer.tongue);
  if (limits.hitchKnown) found.push(...bandBoundaries(limits, trailer.tongue, emptyN));
  if (limits.sharing === 'separate') found.push(...onTheGround(limits, trailer));
  return found;
}

/** Tongue over gross within its band: low · G ≤ T ≤ high · G. */
function bandBoundaries({ band }: LoadLimits, tongue: Response, emptyN: Newtons): readonly Boundary[] {
  return [
    {
      kind: 'tongue-share-low',
      subject: null,
      limit: null,
      grossShare: band.low,
      perWeight: band.low - tongue.perWeight,
      perMoment: -tongue.perMoment,
      mostN: newtons(tongue.constantN - band.low * emptyN),
    },
    {
      kind: 'tongue-share-high',
      subject: null,
      limit: null,
      grossShare: band.high,
      perWeight: tongue.perWeight - band.high,
      perMoment: tongue.perMoment,
      mostN: newtons(band.high * emptyN - tongue.constantN),
    },
  ];
}

/**
 * Below this an axle hangs in the air and what the others carry follows another line: no load check speaks there of axles
 * that share as they were built to, so the envelope ends.
 */
function onTheGround(limits: LoadLimits, trailer: TrailerResponse): readonly Boundary[] {
  return trailer.axles.map((axle, index) => ({
    kind: 'axle-off-ground',
    subject: String(limits.axles[index]?.number ?? index + 1),
    limit: null,
    grossShare: null,
    perWeight: -axle.perWeight,
    perMoment: -axle.perMoment,
    mostN: axle.constantN,
  }));
}

export function deckBoundaries({ frontM, rearM }: DeckSpan): readonly Boundary[] {
  const end = { subject: null, limit: null, grossShare: null, mostN: newtons(0) };
  return [
    { kind: 'deck-front', ...end, perWeight: frontM, perMoment: -1 },
    { kind: 'deck-rear', ...end, perWeight: -rearM, perMoment: 1 },
  ];
}
