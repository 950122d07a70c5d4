import { type Newtons, newtons, weightOf } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';

/** What rough service adds to the load standing still. Source: a bearing maker's technical note for trailer hubs; maker withheld. */
export const ROUGH_SERVICE_FACTOR = 1.2;

/**
 * The load on one hub, N: half of what its axle carries at the ground, less the wheel and tire, whose weight goes
 * straight to the road. Never below 0. Source: the same note. Unknown wheels count as no mass: the load is then too
 * high, which errs toward an earlier end of life.
 */
export function hubLoad(axleN: Newtons, wheelKg: Kilograms | null): Newtons {
  return newtons(Math.max(0, axleN / 2 - (wheelKg === null ? 0 : weightOf(wheelKg))));
}

/** Where the middle of the tire lies between the two bearings of a hub, measured outward from the middle of the inner one. */
export interface HubGeometry {
  readonly bearingSpreadM: Metres;
  /** Negative when the tire stands inboard of the inner bearing. */
  readonly tireFromInnerM: Metres;
}

export interface BearingLoads {
  readonly innerN: Newtons;
  readonly outerN: Newtons;
}

/**
 * What each bearing carries of a hub's load, by lever arms about the middle of the tire. Signed: outside the span one
 * of them is pulled the other way. Plane statics. The spread must be above 0, else RangeError.
 */
export function splitHubLoad(loadN: Newtons, { bearingSpreadM, tireFromInnerM }: HubGeometry): BearingLoads {
  if (!(bearingSpreadM > 0)) throw new RangeError(`the bearings of a hub stand apart, not ${bearingSpreadM} m`);
  const outerN = (loadN * tireFromInnerM) / bearingSpreadM;
  return { innerN: newtons(loadN - outerN), outerN: newtons(outerN) };
}

/**
 * The same in a bend: the road's side force F_y at the tire's foot adds ± F_y r / spread, as a couple, and F_y as
 * thrust. Positive: the side force pushes the wheel toward the vehicle, which loads the inner bearing further.
 */
export function corneringLoads(
  straight: BearingLoads,
  sideN: Newtons,
  loadedRadiusM: Metres,
  bearingSpreadM: Metres,
): BearingLoads & { readonly thrustN: Newtons } {
  if (!(bearingSpreadM > 0)) throw new RangeError(`the bearings of a hub stand apart, not ${bearingSpreadM} m`);
  const coupleN = (sideN * loadedRadiusM) / bearingSpreadM;
  return {
    innerN: newtons(straight.innerN + coupleN),
    outerN: newtons(straight.outerN - coupleN),
    thrustN: newtons(Math.abs(sideN)),
  };
}

/**
 * Shares of a hub's load where its geometry is not known: the most that usually comes to each bearing. They add up to
 * more than the whole on purpose, since nobody knows which bearing has the more. From memory, unverified.
 */
export const USUAL_SHARES = { inner: 0.7, outer: 0.5 } as const;
