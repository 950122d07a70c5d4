import type { Load } from '../facts/load.js';
import type { YardPolicy } from '../facts/yard-policy.js';
import { exceeds } from '../units/compare.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import type { Kilograms } from '../units/mass.js';
import { type Carried, carriedBy } from './carried.js';
import type { Comparison, Limit } from './limit.js';
import type { LoadLimits } from './load-limits.js';
import type { TongueBand } from './tongue-band.js';

/** One load on one build, as it stands on level ground, held against every limit we can work out. */
export interface LoadCheck {
  readonly grossKg: Kilograms | null;
  readonly cargoKg: Kilograms | null;
  readonly tongueN: Newtons | null;
  /** Tongue weight over gross weight, 0 to 1. */
  readonly tongueShare: number | null;
  /** What the axles carry together; with method `bound`, the most they can carry. */
  readonly axleGroupN: Newtons | null;
  readonly axleN: readonly Newtons[] | null;
  /**
   * How the tongue and axle loads became known. `bound`: the tongue is not known, so the axles are taken to carry
   * all of it. That can clear a limit but never break one: a limit it would break is left among the unknowns.
   */
  readonly method: 'scale' | 'statics' | 'bound' | null;
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
    | 'torsion-level';
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
  holdAxles(limits, carried, policy.weighFirstShare, comparisons, unknowns);
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
    method: carried.method,
    comparisons,
    tongueBand: {
      low: limits.band.low,
      high: limits.band.high,
      standing: tongueShare === null || !limits.hitchKnown ? 'unknown' : standingInBand(tongueShare, limits.band),
    },
    unknowns,
  };
}

/** The axle group, each axle and each tire. A bound clears a limit or leaves it unknown; only a known load can break one. */
function holdAxles(
  limits: LoadLimits,
  carried: Carried,
  weighFirstShare: number,
  comparisons: Comparison[],
  unknowns: LoadUnknown[],
): void {
  const { axleGroupN, axleGroupMeasured, axleN } = carried;
  const splitLack = axleN === null ? splitLackOf(limits) : null;
  if (splitLack !== null) unknowns.push({ lacks: splitLack, stops: 'axle-loads' });
  if (axleGroupN === null) return;
  const groupLack = carried.axleGroupIsBound ? (carried.tongueLacks[0] ?? 'balance-point') : null;
  const lacks = groupLack ?? splitLack;
  let axlesClear = true;
  let tiresClear = true;

  /** False when only a bound stands against the limit, and does not keep within it. */
  const hold = (limit: Limit, loadN: Newtons, bound: boolean): boolean => {
    if (bound && exceeds(loadN, limit.limitN)) return false;
    comparisons.push(compare(limit, loadN, axleGroupMeasured, weighFirstShare));
    return true;
  };
  if (limits.axleGroup !== null) axlesClear = hold(limits.axleGroup, axleGroupN, groupLack !== null);
  const evenN = newtons(limits.sharing === 'equal' ? axleGroupN / limits.axles.length : axleGroupN);
  for (const [index, { rated }] of limits.axles.entries()) {
    if (rated !== null) axlesClear = hold(rated, axleN?.[index] ?? evenN, lacks !== null) && axlesClear;
  }
  for (const [index, { tires, wheels }] of limits.axles.entries()) {
    const wheelN = newtons((axleN?.[index] ?? evenN) / wheels);
    for (const tire of tires) tiresClear = hold(tire, wheelN, lacks !== null) && tiresClear;
  }
  if (lacks !== null && !axlesClear) unknowns.push({ lacks, stops: 'axle-check' });
  if (lacks !== null && !tiresClear) unknowns.push({ lacks, stops: 'tire-check' });
}

/** Why a known group load cannot be split among its axles; null when it can. */
function splitLackOf(limits: LoadLimits): 'torsion-level' | 'suspension' | null {
  if (limits.axles.length === 0 || limits.sharing === 'equal') return null;
  return limits.sharing === 'separate' ? 'torsion-level' : 'suspension';
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

function standingInBand(share: number, band: TongueBand): 'inside' | 'low' | 'high' {
  if (exceeds(band.low, share)) return 'low';
  return exceeds(share, band.high) ? 'high' : 'inside';
}
