import { exceeds } from '../units/compare.js';
import type { Newtons } from '../units/force.js';
import { type Metres, metres } from '../units/length.js';
import { freeOffset, type SpringAxle, type Stance, springLoads } from './springs.js';
import type { Resultant } from './statics.js';

/**
 * What a bump or a dip under one axle does to independent axles, driven so slowly that nothing swings. The ratings of
 * axles and tires are for standing loads; these loads are met in passing, so they warn and judge nothing.
 */
interface OverRoad {
  /** The most that any axle carries when each in turn stands on the bump (or in the dip). */
  readonly mostN: Newtons;
  /** Which axle that is, and which stands on the bump or in the dip; counted from the front, from 1. */
  readonly carriedBy: number;
  readonly under: number;
  /** Whether an axle has left the ground there or anywhere on the way. */
  readonly lifted: boolean;
}

/** `heightM`: a bump (crest) is positive, a dip negative; the rest of the ground is flat. Throws RangeError as `springLoads`. */
export function overRoad(axles: readonly SpringAxle[], on: Resultant, raisedM: Metres, heightM: Metres): OverRoad {
  const offsetM = freeOffset(axles, on.momentNm);
  let worst: OverRoad | null = null;
  let lifted = false;
  for (const under of axles.keys()) {
    const stance: Stance = { raisedM, groundM: axles.map((_, index) => metres(index === under ? heightM : 0)) };
    const found = springLoads(axles, on, offsetM, stance);
    lifted ||= found.lifted;
    for (const [index, mostN] of found.axleN.entries()) {
      if (worst === null || exceeds(mostN, worst.mostN))
        worst = { mostN, carriedBy: index + 1, under: under + 1, lifted };
    }
  }
  return { ...(worst as OverRoad), lifted };
}

/** A bump or dip at which the first axle leaves the ground. */
interface LiftOff {
  /** Above 0, also for a dip. */
  readonly byM: Metres;
  readonly under: number;
  readonly lifts: number;
}

/**
 * The least bump (`bump`), or the least dip, under any one axle at which some axle leaves the ground; null when none
 * does, as on a single axle. While all touch each load is straight in g: ∂F_j/∂g_i = k_j (δ_ij − k_i x_i x_j / Σ k x²).
 * An axle that is already off the ground lifts at 0.
 */
export function liftOff(
  axles: readonly SpringAxle[],
  on: Resultant,
  raisedM: Metres,
  way: 'bump' | 'dip',
): LiftOff | null {
  const flat = springLoads(axles, on, freeOffset(axles, on.momentNm), { raisedM, groundM: null });
  const stiffness = axles.reduce((sum, axle) => sum + axle.rateNPerM * axle.fromCouplerM ** 2, 0);
  const up = way === 'bump' ? 1 : -1;
  let first: LiftOff | null = null;
  for (const [under, bumped] of axles.entries()) {
    for (const [lifts, axle] of axles.entries()) {
      const leverage = (bumped.rateNPerM * bumped.fromCouplerM * axle.fromCouplerM) / stiffness;
      const gainNPerM = up * axle.rateNPerM * ((lifts === under ? 1 : 0) - leverage);
      if (gainNPerM >= 0 || axles.length === 1) continue;
      const byM = metres((flat.axleN[lifts] as Newtons) / -gainNPerM);
      if (first === null || byM < first.byM) first = { byM, under: under + 1, lifts: lifts + 1 };
    }
  }
  return first;
}

/**
 * How far an equalizer must swing its ends apart for axles it shares among to go on sharing: the most by which the
 * ground under two neighbours, seen from the frame, differs, metres. Equal shares (`statics.ts`) hold only while the
 * equalizer does not meet its stop; past that the pair acts as separate springs (`springs.ts`). No plate names its
 * travel: it is measured at the hangers. Uneven arms share by their lengths, which this does not cover. Places in metres
 * behind the coupler; the frame is taken to turn about the middle of the axles.
 */
export function equalizerTakesUp(placesM: readonly Metres[], raisedM: Metres, groundM: readonly Metres[]): Metres {
  const centreM = placesM.reduce((sum, at) => sum + at, 0) / placesM.length;
  const slope = -raisedM / centreM;
  let most = 0;
  for (let index = 1; index < placesM.length; index++) {
    const [front, rear] = [placesM[index - 1] as Metres, placesM[index] as Metres];
    const apart = (groundM[index] ?? 0) - (groundM[index - 1] ?? 0) - slope * (rear - front);
    most = Math.max(most, Math.abs(apart));
  }
  return metres(most);
}
