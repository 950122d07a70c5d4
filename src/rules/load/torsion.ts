import type { Load } from '../facts/load.js';
import { lbf, type Newtons, newtons } from '../units/force.js';
import { inch, type Metres, metres } from '../units/length.js';
import { aloneOn, freeOffset, type SpringAxle, springLoads, springsUnder } from './springs.js';
import type { Resultant } from './statics.js';

/** What several torsion axles are split by, worked out once for a build. */
export interface Torsion {
  /** From the front; null while the place of one is unknown. */
  readonly placesM: readonly Metres[] | null;
  readonly rates: Rates | null;
  /** Height of the coupler at which the loaded trailer stands level. */
  readonly levelHeightM: Metres | null;
  /** Height at which the tow vehicle carries the coupler; asked where the load does not say how it rode. */
  readonly ballHeightM: Metres | null;
}

/** The axles at their softest and at their stiffest: the same list when each rate is known. */
export interface Rates {
  readonly known: boolean;
  readonly softest: readonly SpringAxle[];
  readonly stiffest: readonly SpringAxle[];
}

/**
 * Between these a torsion axle's rate is taken to lie where its maker does not print it, N/m of a whole axle.
 * From memory, unverified: 1,000 to 3,000 lb/in. So what rests on them clears a limit or leaves it open; it never breaks one.
 */
export const SOFTEST_N_PER_M = lbf(1_000) / inch(1);
export const STIFFEST_N_PER_M = lbf(3_000) / inch(1);

/** The same axles, all put further back by a length; forward where it is negative. */
export function axlesMoved(torsion: Torsion, byM: Metres): Torsion {
  const moved = (axles: readonly SpringAxle[]): readonly SpringAxle[] =>
    axles.map((axle) => ({ ...axle, fromCouplerM: metres(axle.fromCouplerM + byM) }));
  const { placesM, rates } = torsion;
  return {
    ...torsion,
    placesM: placesM?.map((at) => metres(at + byM)) ?? null,
    rates: rates === null ? null : { ...rates, softest: moved(rates.softest), stiffest: moved(rates.stiffest) },
  };
}

export interface ForceRange {
  readonly leastN: Newtons;
  readonly mostN: Newtons;
}

/** How the trailer rode: nose high or low against level. */
export interface Attitude {
  /** Coupler above the height at which the trailer is level; negative is nose low. */
  readonly raisedM: Metres;
  readonly standing: 'nose-high' | 'level' | 'nose-low';
}

/** Within this the trailer is called level. Our choice: a tape in a yard reads no better than half an inch. */
const LEVEL_WITHIN_M = inch(0.5);

/** Null while the level height, or the height at which it rode, is unknown. */
export function attitudeOf({ levelHeightM, ballHeightM }: Torsion, { hitchHeightM }: Load): Attitude | null {
  const rodeM = hitchHeightM ?? ballHeightM;
  if (rodeM === null || levelHeightM === null) return null;
  const raisedM = metres(rodeM - levelHeightM);
  const standing = Math.abs(raisedM) <= LEVEL_WITHIN_M ? 'level' : raisedM > 0 ? 'nose-high' : 'nose-low';
  return { raisedM, standing };
}

/** Each axle's load, their sum and the tongue; `least` and `most` the same where nothing is left open. */
interface TorsionSplit {
  readonly axleN: readonly ForceRange[];
  readonly groupN: ForceRange;
  readonly tongueN: ForceRange;
  readonly exact: boolean;
  /** Whether it rests on how stiff such axles are taken to be, rather than on what holds of any. */
  readonly assumed: boolean;
  /** What would narrow it: how level it rode, or how stiff its axles are. */
  readonly lacks: 'torsion-level' | 'spring-rate' | null;
}

/**
 * The split of a load whose weight and moment about the coupler are known. Level, axles of one rate share equally
 * whatever the rate. Where height or rate is unknown, what must hold all the same: no axle carries less than nothing or
 * more than all of the moment alone, and together they carry between what the last and what the first would alone.
 * Null when an axle's place is unknown, or when the weights do not press the axles down.
 */
export function splitByMoment(torsion: Torsion, on: Resultant, raisedM: Metres | null): TorsionSplit | null {
  const { placesM, rates } = torsion;
  if (placesM === null || !(on.momentNm > 0)) return null;
  if (raisedM === null || rates === null) {
    const alone = placesM.map((fromCouplerM) => aloneOn({ fromCouplerM }, on.momentNm));
    const [first, last] = [alone[0] as Newtons, alone.at(-1) as Newtons];
    return {
      axleN: alone.map((mostN) => ({ leastN: newtons(0), mostN })),
      groupN: range(first, last),
      tongueN: range(on.weightN - first, on.weightN - last),
      exact: false,
      assumed: false,
      lacks: raisedM === null ? 'torsion-level' : 'spring-rate',
    };
  }
  const stance = { raisedM, groundM: null };
  const soft = springLoads(rates.softest, on, freeOffset(rates.softest, on.momentNm), stance);
  if (rates.known || raisedM === 0) return exactly(soft.axleN, soft.onAxlesN, soft.tongueN);
  const stiff = springLoads(rates.stiffest, on, freeOffset(rates.stiffest, on.momentNm), stance);
  return {
    axleN: soft.axleN.map((force, index) =>
      stiff.lifted
        ? { leastN: newtons(0), mostN: aloneOn(rates.softest[index] as SpringAxle, on.momentNm) }
        : range(force, stiff.axleN[index] as Newtons),
    ),
    groupN: range(soft.onAxlesN, stiff.onAxlesN),
    tongueN: range(soft.tongueN, stiff.tongueN),
    exact: false,
    assumed: true,
    lacks: 'spring-rate',
  };
}

/**
 * The split of what a scale said the axles carry together; `narrowed` where more than that went into it. Where height, rate or places are unknown each axle carries
 * something between nothing and all of it.
 */
export function splitByGroup(
  { rates }: Torsion,
  count: number,
  groupN: Newtons,
  raisedM: Metres | null,
): Pick<TorsionSplit, 'axleN' | 'exact' | 'lacks'> & { readonly narrowed: boolean } {
  if (!(groupN > 0) || raisedM === null || rates === null) {
    return {
      axleN: Array.from({ length: count }, () => ({ leastN: newtons(0), mostN: groupN })),
      exact: false,
      narrowed: false,
      lacks: raisedM === null ? 'torsion-level' : 'spring-rate',
    };
  }
  const soft = springsUnder(rates.softest, groupN, raisedM);
  if (rates.known || raisedM === 0) {
    return { axleN: soft.axleN.map((force) => range(force, force)), exact: true, narrowed: true, lacks: null };
  }
  const stiff = springsUnder(rates.stiffest, groupN, raisedM);
  return {
    axleN: soft.axleN.map((force, index) =>
      stiff.lifted ? { leastN: newtons(0), mostN: groupN } : range(force, stiff.axleN[index] as Newtons),
    ),
    exact: false,
    narrowed: true,
    lacks: 'spring-rate',
  };
}

function exactly(axleN: readonly Newtons[], groupN: Newtons, tongueN: Newtons): TorsionSplit {
  return {
    axleN: axleN.map((force) => range(force, force)),
    groupN: range(groupN, groupN),
    tongueN: range(tongueN, tongueN),
    exact: true,
    assumed: false,
    lacks: null,
  };
}

function range(a: number, b: number): ForceRange {
  return { leastN: newtons(Math.min(a, b)), mostN: newtons(Math.max(a, b)) };
}
