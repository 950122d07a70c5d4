import { order } from '../history/order.js';
import { type Kilograms, kg } from '../units/mass.js';
import { byRoom } from './rank-trailers.js';
import type { Clash } from './ranked-trailer.js';

/** What is kept of a trailer, enough to pass it over without its facts: in a large yard most are. */
export interface TrailerBrief {
  readonly trailerId: string;
  readonly yardNumber: string;
  readonly readiness: 'ready' | 'due' | 'down' | 'gone';
  /** As last assessed; null while it cannot be said. */
  readonly payloadKg: Kilograms | null;
  /** Jobs booked on days of the haul, its own left out. */
  readonly clashes: readonly Clash[];
}

/** Why a trailer need not be asked. */
export type PassedOver = Pick<TrailerBrief, 'trailerId' | 'yardNumber'> & {
  readonly why:
    | { readonly kind: 'gone' }
    | { readonly kind: 'down' }
    | { readonly kind: 'booked'; readonly clashes: readonly Clash[] }
    | { readonly kind: 'too-small'; readonly payloadKg: Kilograms; readonly shortKg: Kilograms };
};

/**
 * Payload is reckoned with the least tongue of the hitch's band. A load further forward takes up to 5 % of the gross
 * more off the axles (15 % on the hitch for 10 %), about a tenth of the payload where the empty trailer is two fifths
 * of the gross. So only what is short by more than that is certainly too small.
 */
const FURTHER_FORWARD = 1.1;

/**
 * Sorts a yard into trailers worth a full answer, the likeliest first, and those passed over with the reason. Costs one
 * look at each; `rankTrailers` then works out only as many as are wanted. `cargoKg` is null while nobody said what is
 * carried: then size passes nobody over.
 */
export function worthAsking(
  yard: readonly TrailerBrief[],
  cargoKg: Kilograms | null,
): { readonly ask: readonly TrailerBrief[]; readonly passedOver: readonly PassedOver[] } {
  const ask: { readonly brief: TrailerBrief; readonly room: number | null }[] = [];
  const passedOver: PassedOver[] = [];
  for (const brief of yard) {
    const why = whyNot(brief, cargoKg);
    if (why !== null) passedOver.push({ trailerId: brief.trailerId, yardNumber: brief.yardNumber, why });
    else ask.push({ brief, room: roomIn(brief, cargoKg) });
  }
  ask.sort((a, b) => byRoom(a.room, b.room) || order(a.brief.yardNumber, b.brief.yardNumber));
  return { ask: ask.map((one) => one.brief), passedOver };
}

function whyNot({ readiness, payloadKg, clashes }: TrailerBrief, cargoKg: Kilograms | null): PassedOver['why'] | null {
  if (readiness === 'gone') return { kind: 'gone' };
  if (payloadKg !== null && cargoKg !== null && cargoKg > payloadKg * FURTHER_FORWARD) {
    return { kind: 'too-small', payloadKg, shortKg: kg(cargoKg - payloadKg) };
  }
  if (clashes.length > 0) return { kind: 'booked', clashes };
  return readiness === 'down' ? { kind: 'down' } : null;
}

function roomIn({ payloadKg }: TrailerBrief, cargoKg: Kilograms | null): number | null {
  return payloadKg === null || cargoKg === null || payloadKg <= 0 ? null : 1 - cargoKg / payloadKg;
}
