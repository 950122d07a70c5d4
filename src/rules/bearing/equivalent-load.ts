import { type Newtons, newtons } from '../units/force.js';
import { LIFE_EXPONENT, type RollingBody } from './dynamic-rating.js';

/** A load, and for how much of the way: distance or revolutions, in any one unit. */
export interface LoadShare {
  readonly loadN: Newtons;
  readonly share: number;
}

/**
 * The steady load that uses up a bearing as fast as these loads in turn do: P_m = (Σ u P^p / Σ u)^(1/p).
 * Always above the plain average. Null when nothing was driven. Source: ISO 281; the stepped mean of handbooks.
 * Not for shares of time, unless the speed never changed. Loads and shares from 0 on, else RangeError.
 */
export function meanLoad(shares: readonly LoadShare[], body: RollingBody = 'roller'): Newtons | null {
  const exponent = LIFE_EXPONENT[body];
  let weighted = 0;
  let whole = 0;
  for (const { loadN, share } of shares) {
    if (!(share >= 0) || !(loadN >= 0)) throw new RangeError(`a load of ${loadN} N over ${share} cannot be averaged`);
    weighted += share * loadN ** exponent;
    whole += share;
  }
  return whole > 0 ? newtons((weighted / whole) ** (1 / exponent)) : null;
}

/** The steady load for one that rises evenly between two values, near enough: (P_min + 2 P_max) / 3. Source: bearing handbooks. */
export function sweptLoad(leastN: Newtons, mostN: Newtons): Newtons {
  return newtons((leastN + 2 * mostN) / 3);
}

/** How a taper bearing answers to thrust, from its catalogue page. */
export interface ThrustFactors {
  /** Thrust over radial load up to which thrust does not count. */
  readonly e: number;
  /** What a newton of thrust counts for beyond it. */
  readonly y: number;
}

/** What a newton of radial load counts for beside thrust. Source: ISO 281, single-row taper bearings. */
const RADIAL_BESIDE_THRUST = 0.4;

/**
 * The radial load that uses up a taper bearing as radial load and thrust together do, N:
 * P = F_r up to F_a/F_r = e, P = 0.4 F_r + Y F_a beyond, and never below F_r. Source: ISO 281; e and Y from a catalogue.
 */
export function combinedLoad(radialN: Newtons, thrustN: Newtons, { e, y }: ThrustFactors): Newtons {
  if (thrustN <= e * radialN) return radialN;
  return newtons(Math.max(radialN, RADIAL_BESIDE_THRUST * radialN + y * thrustN));
}

/** A taper bearing under radial load: it pushes outward along the shaft, F_i = 0.47 F_r / K. Source: makers' method on the C90 base. */
export function inducedThrust(radialN: Newtons, k: number): Newtons {
  return newtons((0.47 * radialN) / k);
}

/** One bearing of a pair set against each other: its radial load and its maker's K, ratio of radial to thrust rating. */
export interface PairedBearing {
  readonly radialN: Newtons;
  readonly k: number;
}

/**
 * Equivalent loads, N, of two taper bearings set against each other under an outer thrust that presses on the first.
 *
 * The one whose own push the other cannot meet carries the difference as thrust: P = 0.4 F_r + K F_a, the other its
 * radial load alone; neither is below its radial load. Source: Budynas and Nisbett, Mechanical Engineering Design,
 * chapter 11, direct mounting (makers' method on the C90 base).
 */
export function pairLoads(
  first: PairedBearing,
  second: PairedBearing,
  thrustN: Newtons,
): { readonly firstN: Newtons; readonly secondN: Newtons } {
  const firstPush = inducedThrust(first.radialN, first.k);
  const secondPush = inducedThrust(second.radialN, second.k);
  return firstPush <= secondPush + thrustN
    ? { firstN: withThrust(first, secondPush + thrustN), secondN: second.radialN }
    : { firstN: first.radialN, secondN: withThrust(second, firstPush - thrustN) };
}

function withThrust({ radialN, k }: PairedBearing, thrustN: number): Newtons {
  return newtons(Math.max(radialN, RADIAL_BESIDE_THRUST * radialN + k * thrustN));
}
