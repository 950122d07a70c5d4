import type { TieDown } from '../facts/load.js';
import { exceeds } from '../units/compare.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import { feet, type Metres } from '../units/length.js';
import { type Kilograms, kg, lb } from '../units/mass.js';

/** What is to be tied down. */
export interface Tied {
  readonly massKg: Kilograms;
  /** Of the longest thing aboard; null when unknown. */
  readonly lengthM: Metres | null;
  /** Whether something firm stands ahead of it, such as a headboard it is pushed against. */
  readonly blockedAhead: boolean;
  /** The heaviest single machine on wheels or tracks; null when there is none. */
  readonly machineKg: Kilograms | null;
}

/** What the rule asks for. */
export interface TieDownNeed {
  /** Working load limits must add up to at least this. */
  readonly workingLoadKg: Kilograms;
  /** At least this many; with the length unknown the fewest that any length needs. */
  readonly count: number;
  /** `heavy-machine`: 49 CFR 393.130, one near each corner. `length`: 393.110. `length-unknown`: more may be needed. */
  readonly because: 'heavy-machine' | 'length' | 'length-unknown';
}

/** Tie-downs in use against what the rule asks for. */
export interface TieDownCheck {
  readonly need: TieDownNeed;
  readonly count: number;
  /** What those with a known limit count for together. */
  readonly workingLoadKg: Kilograms;
  /** How many have no known limit, so that nothing is counted for them. */
  readonly unrated: number;
  /** `unrated`: enough in number, and short only as long as some are not known to hold anything. */
  readonly standing: 'enough' | 'short' | 'unrated';
}

/** `around`: from the trailer through or round the cargo and back to the same side. */
export type TieDownWay = TieDown['way'] | 'around';

/**
 * How much of its working load limit a tie-down counts for: half from the trailer to the cargo, or round it and back to
 * the same side; all of it over the cargo to the other side. Source: 49 CFR 393.106(d)(1) to (3).
 */
const COUNTS: Readonly<Record<TieDownWay, number>> = { direct: 0.5, around: 0.5, over: 1 };

/** The sum must reach half the weight of the cargo. Source: 49 CFR 393.106(d). */
const SHARE_OF_WEIGHT = 0.5;

/** From this weight a single machine on wheels or tracks needs four. Source: 49 CFR 393.130(a), (c). */
const HEAVY_MACHINE_KG = lb(10_000);
const HEAVY_MACHINE_COUNT = 4;

/** Up to this length and weight one is enough. Source: 49 CFR 393.110(b)(1). */
const SHORT_M = feet(5);
const LIGHT_KG = lb(1_100);
/** Two up to this length, one more for each further one or part of one. Source: 49 CFR 393.110(b)(2), (3). */
const EACH_M = feet(10);

/**
 * What 49 CFR 393.106, 393.110 and 393.130 ask for. Parts of a machine that fold or lower (arms, booms, a second bucket)
 * need their own besides (393.130(b)); it is not counted here. States may ask for more.
 */
export function tieDownNeed(tied: Tied): TieDownNeed {
  const workingLoadKg = kg(tied.massKg * SHARE_OF_WEIGHT);
  const byLength = countByLength(tied);
  const isHeavy = tied.machineKg !== null && !exceeds(HEAVY_MACHINE_KG, tied.machineKg);
  if (isHeavy && byLength <= HEAVY_MACHINE_COUNT) {
    return { workingLoadKg, count: HEAVY_MACHINE_COUNT, because: 'heavy-machine' };
  }
  return { workingLoadKg, count: byLength, because: tied.lengthM === null ? 'length-unknown' : 'length' };
}

/** Holds tie-downs against what is asked for; equality is enough. */
export function checkTieDowns(
  need: TieDownNeed,
  used: readonly (Pick<TieDown, 'count' | 'workingLoadKg'> & { readonly way: TieDownWay })[],
): TieDownCheck {
  let count = 0;
  let unrated = 0;
  let sumKg = 0;
  for (const tieDown of used) {
    count += tieDown.count;
    if (tieDown.workingLoadKg === null) unrated += tieDown.count;
    else sumKg += tieDown.count * tieDown.workingLoadKg * COUNTS[tieDown.way];
  }
  const isWeak = exceeds(need.workingLoadKg, sumKg);
  return {
    need,
    count,
    workingLoadKg: kg(sumKg),
    unrated,
    standing: count < need.count || (isWeak && unrated === 0) ? 'short' : isWeak ? 'unrated' : 'enough',
  };
}

/**
 * The forces that securing must withstand, one at a time: 0.8 g forward, 0.5 g rearward, 0.5 g to either side.
 * Source: 49 CFR 393.102(a).
 */
export function securingForces(massKg: Kilograms): {
  readonly forwardN: Newtons;
  readonly rearwardN: Newtons;
  readonly sidewaysN: Newtons;
} {
  const weightN = weightOf(massKg);
  return {
    forwardN: newtons(0.8 * weightN),
    rearwardN: newtons(0.5 * weightN),
    sidewaysN: newtons(0.5 * weightN),
  };
}

function countByLength({ massKg, lengthM, blockedAhead }: Tied): number {
  if (blockedAhead) return Math.max(1, tens(lengthM ?? 0));
  const isShort = lengthM === null || !exceeds(lengthM, SHORT_M);
  if (isShort && !exceeds(massKg, LIGHT_KG)) return 1;
  if (lengthM === null || !exceeds(lengthM, EACH_M)) return 2;
  return 2 + tens(lengthM - EACH_M);
}

/** How many lengths of ten feet, a part of one counting whole. The billionth keeps rounding from making one of nothing. */
function tens(lengthM: number): number {
  return Math.ceil(lengthM / EACH_M - 1e-9);
}
