import { massHeldUpBy, newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';
import { type Kilograms, kg } from '../units/mass.js';
import { type Boundary, perNewtonAt } from './boundary.js';
import type { Bounds } from './envelope.js';

/** What a trailer may carry with the cargo's balance point in one place. */
export interface PayloadAt {
  /** 0 when no weight there is inside every limit. */
  readonly mostKg: Kilograms;
  /** What stops at that weight; null when no known limit does. */
  readonly governedBy: Boundary | null;
  /** Less than this leaves a limit broken that more weight there mends, such as too little on the tongue; else 0. */
  readonly leastKg: Kilograms;
  readonly leastBy: Boundary | null;
}

/**
 * The greatest cargo with its balance point there that every limit allows, and which of them governs.
 * A boundary of which each newton of cargo uses up some holds it from above, one to which each gives room from below.
 * The ends of the deck are not looked at: whoever asks stands on it. Null when nothing holds it from above.
 */
export function payloadAt({ boundaries }: Bounds, balancePointM: Metres): PayloadAt | null {
  let most = Number.POSITIVE_INFINITY;
  let least = 0;
  let governedBy: Boundary | null = null;
  let leastBy: Boundary | null = null;
  for (const boundary of boundaries) {
    const perNewton = perNewtonAt(boundary, balancePointM);
    const reachedN = boundary.mostN / perNewton;
    if (perNewton > 0 && reachedN < most) {
      most = reachedN;
      governedBy = boundary;
    } else if (perNewton < 0 && reachedN > least) {
      least = reachedN;
      leastBy = boundary;
    } else if (perNewton === 0 && boundary.mostN < 0) {
      most = 0;
      governedBy = boundary;
    }
  }
  if (most === Number.POSITIVE_INFINITY) return null;
  // When the least wanted is more than what is allowed, no weight serves: what governs is what asks for more.
  if (least > most) return { mostKg: kg(0), governedBy: most > 0 ? leastBy : governedBy, leastKg: kg(0), leastBy };
  return { mostKg: held(Math.max(0, most)), governedBy, leastKg: held(least), leastBy };
}

function held(weightN: number): Kilograms {
  return massHeldUpBy(newtons(weightN));
}
