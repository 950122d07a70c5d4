import { tongueLever } from '../load/level.js';
import { forwardMove } from '../load/statics.js';
import { axleGroupCapacity } from '../trailer/ratings.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { FitCase, FitRemedy } from './fit-answer.js';

/**
 * How far to move the heaviest thing on the deck so that the tongue comes into its band and stays within every rating
 * of coupler and hitch, without leaving the axles more than they may carry: d = ΔT · lever / w (`load/level.ts`). Null
 * when a fact is missing, when a torsion axle is off the ground, or when no place serves. Whether the deck is long
 * enough is for whoever stands beside it.
 */
export function moveLoad({ input, check, limits }: FitCase): Extract<FitRemedy, { kind: 'move-load' }> | null {
  const { grossKg, tongueN } = check;
  const leverM = tongueLever(limits);
  const heaviest = input.load.cargo.toSorted((a, b) => b.massKg - a.massKg)[0];
  if (grossKg === null || tongueN === null || leverM === null || heaviest === undefined) return null;
  if (!(heaviest.massKg > 0) || check.axleN?.includes(newtons(0))) return null;
  const grossN = weightOf(grossKg);
  const axlesMayKg = axleGroupCapacity(limits);
  const leastN = newtons(Math.max(limits.band.low * grossN, axlesMayKg === null ? 0 : grossN - weightOf(axlesMayKg)));
  const ratings = [limits.couplerTongue, limits.towHitchTongue].flatMap((limit) =>
    limit === null ? [] : [limit.limitN],
  );
  const mostN = newtons(Math.min(limits.band.high * grossN, ...ratings));
  if (mostN < leastN) return null;
  const forward = (toN: Newtons): Metres => forwardMove(heaviest.massKg, tongueN, toN, leverM);
  const [near, far] = tongueN < leastN ? [leastN, mostN] : [mostN, leastN];
  return {
    kind: 'move-load',
    forwardFromM: forward(near),
    forwardToM: forward(far),
    tongueFromN: near,
    tongueToN: far,
  };
}
