import type { Load } from '../facts/load.js';
import type { YardPolicy } from '../facts/yard-policy.js';
import { exceeds } from '../units/compare.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import type { Kilograms } from '../units/mass.js';
import { type Carried, carriedBy } from './carried.js';
import { legalLoads } from './legal-loads.js';
import type { Comparison, Limit } from './limit.js';
import type { LoadLimits } from './load-limits.js';
import { rollOf, type SideLoads, sideLoads, wheelLoad } from './sides.js';
import type { TongueBand } from './tongue-band.js';
import type { Attitude, ForceRange } from './torsion.js';

/** One load on one build, as it stands on flat ground, held against every limit we can work out. */
export interface LoadCheck {
  readonly grossKg: Kilograms | null;
  readonly cargoKg: Kilograms | null;
  readonly tongueN: Newtons | null;
  /** Tongue weight over gross weight, 0 to 1. */
  readonly tongueShare: number | null;
  /** What the axles carry together; with method `bound`, the most they can carry. */
  readonly axleGroupN: Newtons | null;
  readonly axleN: readonly Newtons[] | null;
  /** Between what each axle's load lies, where torsion axles leave it open: how level they ride, or how stiff they are. */
  readonly axleRangeN: readonly ForceRange[] | null;
  /** Between what the tongue lies, for the same reason. */
  readonly tongueRangeN: ForceRange | null;
  /** What the two sides of each axle carry, where the load is known to sit off centre, or in the middle. */
  readonly sideN: readonly SideLoads[] | null;
  /** How torsion axles rode; null for other axles, and while a height is unknown. */
  readonly attitude: Attitude | null;
  /**
   * How the tongue and axle loads became known. `bound`: the tongue is not known, so the axles are taken to carry
   * all of it. `range`: torsion axles of which height or stiffness is unknown, taken at the most that either may be.
   * These can clear a limit but never break one: a limit they would break is left among the unknowns.
   */
  readonly method: 'scale' | 'statics' | 'range' | 'bound' | null;
  readonly comparisons: readonly Comparison[];
  readonly tongueBand: {
    readonly low: number;
    readonly high: number | null;
    readonly standing: 'inside' | 'low' | 'high' | 'unknown';
  };
  /** What could not be worked out, and which fact it lacks. */
  readonly unknowns: readonly LoadUnknown[];
}

/**
 * A fact nobody gave, and what that stops. `…-check`: some rating could not be held against this load, so no "go" can
 * rest on it. The others only keep a number from being shown.
 */
interface LoadUnknown {
  readonly lacks:
    | 'gvwr'
    | 'empty-mass'
    | 'cargo-mass'
    | 'balance-point'
    | 'empty-tongue'
    | 'axle-places'
    | 'axle-ratings'
    | 'suspension'
    | 'tire-ratings'
    /** No published row says what the tire carries at the pressure found. */
    | 'tire-table-row'
    | 'coupler-rating'
    /** How high the coupler rode, or the height at which the trailer stands level. */
    | 'torsion-level'
    | 'spring-rate'
    | 'axle-track';
  readonly stops:
    | 'gross'
    | 'tongue'
    | 'axle-loads'
    | 'tire-loads'
    | 'plate-check'
    | 'axle-check'
    | 'tire-check'
    | 'coupler-check';
  /** Which one, where there are several: axle numbers or wheel positions, comma separated. */
  readonly subject?: string;
}

/** One load as it stands on level ground, held against the limits of a build (`trailer/load-limits.ts` works them out). */
export function checkLoad(limits: LoadLimits, load: Load, policy: YardPolicy): LoadCheck {
  const carried = carriedBy(limits, load);
  const grossN = carried.grossKg === null ? null : weightOf(carried.grossKg);
  const unknowns: LoadUnknown[] = [...limits.ratingLacks];
  const comparisons: Comparison[] = [];
  const hold = (limit: Limit | null, loadN: Newtons | null, measured: boolean) => {
    if (limit !== null && loadN !== null) comparisons.push(compare(limit, loadN, measured, policy.weighFirstShare));
  };

  if (carried.grossKg === null) {
    if (limits.emptyKg === null) unknowns.push({ lacks: 'empty-mass', stops: 'gross' });
    if (load.cargo.length === 0) unknowns.push({ lacks: 'cargo-mass', stops: 'gross' });
  }
  for (const lacks of carried.tongueLacks) unknowns.push({ lacks, stops: 'tongue' });

  hold(limits.plate, grossN, carried.grossMeasured);
  holdAxles(limits, carried, load, policy.weighFirstShare, comparisons, unknowns);
  hold(limits.coupler, grossN, carried.grossMeasured);
  hold(limits.couplerTongue, carried.tongueN, carried.tongueMeasured);
  hold(limits.towHitch, grossN, carried.grossMeasured);
  hold(limits.towHitchTongue, carried.tongueN, carried.tongueMeasured);

  const tongueShare = grossN === null || carried.tongueN === null || grossN === 0 ? null : carried.tongueN / grossN;
  return {
    grossKg: carried.grossKg,
    cargoKg: carried.cargoKg,
    tongueN: carried.tongueN,
    tongueShare,
    axleGroupN: carried.axleGroupN,
    axleN: carried.axleN,
    axleRangeN: carried.axleRangeN,
    tongueRangeN: carried.tongueRangeN,
    sideN: sideLoads(limits.axles, load, carried),
    attitude: carried.attitude,
    method: carried.method,
    comparisons,
    tongueBand: {
      low: limits.band.low,
      high: limits.band.high,
      standing: limits.hitchKnown ? bandStanding(carried, grossN, limits.band) : 'unknown',
    },
    unknowns,
  };
}

/** The axle group, each axle and each tire. A bound clears a limit or leaves it unknown; only a known load can break one. */
function holdAxles(
  limits: LoadLimits,
  carried: Carried,
  load: Load,
  weighFirstShare: number,
  comparisons: Comparison[],
  unknowns: LoadUnknown[],
): void {
  const { axleGroupN, axleN, axleRangeN, splitLack, axlesMeasured } = carried;
  if (splitLack !== null) unknowns.push({ lacks: splitLack, stops: 'axle-loads' });
  if (axleGroupN === null) return;
  const groupLack = carried.axleGroupIsBound ? (carried.tongueLacks[0] ?? 'balance-point') : null;
  const lacks = groupLack ?? splitLack;
  const roll = rollOf(load, carried.cargoKg, limits.axles);
  let axlesClear = true;
  let tiresClear = true;

  /** False when only a bound stands against the limit, and does not keep within it. */
  const hold = (limit: Limit, loadN: Newtons, measured: boolean, bound: boolean): boolean => {
    if (bound && exceeds(loadN, limit.limitN)) return false;
    comparisons.push(compare(limit, loadN, measured, weighFirstShare));
    return true;
  };
  if (limits.axleGroup !== null) {
    axlesClear = hold(limits.axleGroup, axleGroupN, carried.axleGroupMeasured, groupLack !== null);
  }
  const evenN = newtons(limits.sharing === 'equal' ? axleGroupN / limits.axles.length : axleGroupN);
  const mostOn = (index: number): Newtons => axleN?.[index] ?? axleRangeN?.[index]?.mostN ?? evenN;
  for (const [index, { rated }] of limits.axles.entries()) {
    if (rated !== null) axlesClear = hold(rated, mostOn(index), axlesMeasured, lacks !== null) && axlesClear;
  }
  for (const { limit, loadN, measured, isWhole } of legalLoads(limits, carried, mostOn)) {
    axlesClear = hold(limit, loadN, measured, (isWhole ? groupLack : lacks) !== null) && axlesClear;
  }
  for (const [index, axle] of limits.axles.entries()) {
    for (const tire of axle.tires) {
      const wheelN = wheelLoad(axle, tire.subject, mostOn(index), roll);
      const measured = axlesMeasured && roll.axleNm === 0;
      tiresClear = hold(tire, wheelN, measured, (lacks ?? roll.lacks) !== null) && tiresClear;
    }
  }
  if (lacks !== null && !axlesClear) unknowns.push({ lacks, stops: 'axle-check' });
  const tireLack = lacks ?? roll.lacks;
  if (tireLack !== null && !tiresClear) unknowns.push({ lacks: tireLack, stops: 'tire-check' });
}

function compare(limit: Limit, loadN: Newtons, measured: boolean, weighFirstShare: number): Comparison {
  const marginN = newtons(limit.limitN - loadN);
  const standing = exceeds(loadN, limit.limitN)
    ? 'over'
    : !measured && marginN < weighFirstShare * limit.limitN
      ? 'near'
      : 'inside';
  return { limit, loadN, marginN, measured, standing };
}

/**
 * Where the tongue is only known to lie in a range, the whole range must stand on one side. A range that rests on an
 * assumed stiffness can put it inside its band and never out of it.
 */
function bandStanding(
  { tongueN, tongueRangeN, rangeAssumed }: Carried,
  grossN: Newtons | null,
  band: TongueBand,
): LoadCheck['tongueBand']['standing'] {
  const leastN = tongueN ?? tongueRangeN?.leastN ?? null;
  const mostN = tongueN ?? tongueRangeN?.mostN ?? null;
  if (grossN === null || grossN === 0 || leastN === null || mostN === null) return 'unknown';
  const [low, high] = [standingInBand(leastN / grossN, band), standingInBand(mostN / grossN, band)];
  return low === high && (low === 'inside' || !rangeAssumed) ? low : 'unknown';
}

/** The share of the gross on the tongue that a band is held against, 0 to 1, and whether it is only a bound. */
export interface ShareHeld {
  readonly share: number;
  /** `at-most`: the tongue carries no more than this, and less may be; `at-least`: no less. */
  readonly bound: 'at-most' | 'at-least' | null;
}

/** What puts the tongue out of its band: its share, or the end of its range that lies nearer. Null while inside or unknown. */
export function shareOutOfBand({ tongueShare, tongueRangeN, grossKg, tongueBand }: LoadCheck): ShareHeld | null {
  const { standing } = tongueBand;
  if (standing !== 'low' && standing !== 'high') return null;
  if (tongueShare !== null) return { share: tongueShare, bound: null };
  if (tongueRangeN === null || grossKg === null) return null;
  const grossN = weightOf(grossKg);
  return standing === 'low'
    ? { share: tongueRangeN.mostN / grossN, bound: 'at-most' }
    : { share: tongueRangeN.leastN / grossN, bound: 'at-least' };
}

function standingInBand(share: number, band: TongueBand): 'inside' | 'low' | 'high' {
  if (exceeds(band.low, share)) return 'low';
  return exceeds(share, band.high) ? 'high' : 'inside';
}
