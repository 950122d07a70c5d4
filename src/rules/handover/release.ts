import type { BuildSheet } from '../facts/build-sheet.js';
import type { CustomerHitch } from '../facts/handover.js';
import type { Kilograms } from '../units/mass.js';
import { type BallAnswer, ballAnswer } from './ball.js';
import { type PlugAnswer, plugAnswer } from './plug.js';

/** What coupling up at the counter comes to. */
export interface Release {
  /** Null where the trailer takes no ball: a pintle. */
  readonly ball: BallAnswer | null;
  readonly plug: PlugAnswer;
}

/**
 * Whether a trailer may be handed out on what the customer came with: the ball it goes out on, and the plug.
 * `grossKg` is what it will weigh loaded. A fact that is missing refuses nothing, and is named.
 */
export function release(build: BuildSheet | null, hitch: CustomerHitch, grossKg: Kilograms | null): Release {
  const coupler = { ballSizeM: build?.hitch.ballSizeM ?? null, grossKg };
  const takesBall = build?.hitch.kind !== 'pintle';
  return {
    ball: takesBall ? ballAnswer(coupler, hitch.swappedTo ?? hitch.ball) : null,
    plug: plugAnswer(hitch.plug, build?.axles ?? []),
  };
}

/** What a trailer will weigh on the road: what the job's load comes to, or else the most its plate lets it. */
export function loadedMass(grossOfJobKg: Kilograms | null, build: BuildSheet | null): Kilograms | null {
  return grossOfJobKg ?? build?.plate.gvwrKg ?? null;
}
