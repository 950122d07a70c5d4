import { forwardMove } from '../load/statics.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { FitCase, FitRemedy } from './fit-answer.js';

/**
 * How far to move the heaviest thing on the deck so that the tongue comes into its band and stays within every rating
 * of coupler and hitch: d = ΔT · x_c / w (`load/statics.ts`). Null when a fact is missing, or when no place serves.
 * Whether the deck is long enough is for whoever stands beside it.
 */
export function moveLoad({ input, check, limits }: FitCase): Extract<FitRemedy, { kind: 'move-load' }> | null {
  const { grossKg, tongueN } = check;
  const heaviest = input.load.cargo.toSorted((a, b) => b.massKg - a.massKg)[0];
  if (grossKg === null || tongueN === null || limits.axleCentreM === null || heaviest === undefined) return null;
  if (!(heaviest.massKg > 0)) return null;
  const grossN = weightOf(grossKg);
  const leastN = newtons(limits.band.low * grossN);
  const ratings = [limits.couplerTongue, limits.towHitchTongue].flatMap((limit) =>
    limit === null ? [] : [limit.limitN],
  );
  const mostN = newtons(Math.min(limits.band.high * grossN, ...ratings));
  if (mostN < leastN) return null;
  const forward = (toN: Newtons): Metres => forwardMove(heaviest.massKg, tongueN, toN, limits.axleCentreM as Metres);
  const [near, far] = tongueN < leastN ? [leastN, mostN] : [mostN, leastN];
  return {
    kind: 'move-load',
    forwardFromM: forward(near),
    forwardToM: forward(far),
    tongueFromN: near,
    tongueToN: far,
  };
}
