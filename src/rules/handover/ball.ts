import type { Ball, CustomerHitch, Seen } from '../facts/handover.js';
import { exceeds } from '../units/compare.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';

/** Sizes are stamped in sixteenths of an inch and steps between sizes are an eighth; less than this is rounding, m. */
const SAME_SIZE_M = 0.001;

type BallLack = 'coupler-size' | 'ball-size' | 'ball-rating' | 'gross';

export interface BallAnswer {
  /** `refused`: sizes differ, or the ball is rated for less than the loaded trailer. `cannot-say`: a fact is missing. */
  readonly verdict: 'match' | 'refused' | 'cannot-say';
  readonly sizesDiffer: boolean;
  readonly overKg: Kilograms | null;
  readonly lacks: readonly BallLack[];
}

/**
 * Whether a ball serves a trailer: the size stamped on the coupler must be the size stamped on the ball, and the ball's
 * rating at least what the loaded trailer weighs. A smaller ball lets the coupler jump off.
 * Common practice and what couplers are stamped for: SAE J684 marks both with size and rating.
 */
export function ballAnswer(
  coupler: { readonly ballSizeM: Metres | null; readonly grossKg: Kilograms | null },
  ball: Ball,
): BallAnswer {
  const lacks: BallLack[] = [];
  if (coupler.ballSizeM === null) lacks.push('coupler-size');
  if (ball.sizeM === null) lacks.push('ball-size');
  if (ball.ratingKg === null) lacks.push('ball-rating');
  if (coupler.grossKg === null) lacks.push('gross');
  const sizesDiffer =
    coupler.ballSizeM !== null && ball.sizeM !== null && Math.abs(coupler.ballSizeM - ball.sizeM) > SAME_SIZE_M;
  const isOver = coupler.grossKg !== null && ball.ratingKg !== null && exceeds(coupler.grossKg, ball.ratingKg);
  const overKg = isOver && coupler.grossKg !== null ? ((coupler.grossKg - (ball.ratingKg ?? 0)) as Kilograms) : null;
  const verdict = sizesDiffer || isOver ? 'refused' : lacks.length > 0 ? 'cannot-say' : 'match';
  return { verdict, sizesDiffer, overKg, lacks };
}

/** Whether a ball that the yard changed on the customer's own mount is still to be put back. */
export function owesBall(hitch: CustomerHitch | null, back: readonly Seen[]): boolean {
  const isSwapped = hitch !== null && hitch.swappedTo !== null;
  return isSwapped && !back.some((one) => one.thing === 'customer-ball' && one.condition === 'sound');
}
