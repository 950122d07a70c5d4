import type { Axle } from '../facts/build-sheet.js';
import type { PlugTrial } from '../facts/handover.js';

type PlugLack = 'plug' | 'brakes';

export interface PlugAnswer {
  /** `refused`: the lamps, or electric brakes that it has, do not work. `cannot-say`: nobody tried, or nobody knows. */
  readonly verdict: 'match' | 'refused' | 'cannot-say';
  readonly dead: 'lamps' | 'brakes' | null;
  readonly lacks: readonly PlugLack[];
}

/**
 * Whether a trailer may go out on what its plug works. All lamps must work (49 CFR 393.9(a)), and so must all brakes it
 * is fitted with (49 CFR 393.48(a)); electric ones get their current through the plug, others need none.
 */
export function plugAnswer(trial: PlugTrial | null, axles: readonly Pick<Axle, 'brakes'>[]): PlugAnswer {
  if (trial === 'nothing') return { verdict: 'refused', dead: 'lamps', lacks: [] };
  if (trial === null) return { verdict: 'cannot-say', dead: null, lacks: ['plug'] };
  if (trial === 'lamps-and-brakes') return { verdict: 'match', dead: null, lacks: [] };
  if (axles.some(({ brakes }) => brakes === 'electric')) return { verdict: 'refused', dead: 'brakes', lacks: [] };
  const isUnknown = axles.length === 0 || axles.some(({ brakes }) => brakes === null);
  return isUnknown
    ? { verdict: 'cannot-say', dead: null, lacks: ['brakes'] }
    : { verdict: 'match', dead: null, lacks: [] };
}
