import type { Load } from '../facts/load.js';
import { exceeds } from '../units/compare.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import { kg } from '../units/mass.js';
import { balancePointOf } from './balance-point.js';
import type { Limit } from './limit.js';
import type { LoadLimits } from './load-limits.js';
import { tongueFrom } from './statics.js';
import { attitudeOf } from './torsion.js';

// Asked of every trip since a check was last done, which may be all of them, and nearly all pass no limit: those are
// told by three sums, without the whole of a load check. A test holds both ways against each other.

/** The least of all limits on each of the three forces that decide where axles share equally; infinite where there is none. */
export interface LeastLimits {
  readonly grossN: Newtons;
  readonly tongueN: Newtons;
  /** On the axles together, so that none of them, nor a run of them, nor a tire, carries more than it may. */
  readonly axleGroupN: Newtons;
}

/** Once for a build and its tires. */
export function leastLimits(limits: LoadLimits): LeastLimits {
  const count = limits.axles.length;
  const axleGroupN = [least(limits.axleGroup)];
  for (const { rated, wheels, tires } of limits.axles) {
    axleGroupN.push(least(rated) * count);
    for (const tire of tires) axleGroupN.push(tire.limitN * wheels * count);
  }
  for (const { first, last, limit } of limits.legal) axleGroupN.push((limit.limitN * count) / (last - first + 1));
  return {
    grossN: newtons(Math.min(least(limits.plate), least(limits.coupler), least(limits.towHitch))),
    tongueN: newtons(Math.min(least(limits.couplerTongue), least(limits.towHitchTongue))),
    axleGroupN: newtons(Math.min(...axleGroupN)),
  };
}

function least(limit: Limit | null): number {
  return limit?.limitN ?? Number.POSITIVE_INFINITY;
}

/**
 * True only where a load passes no limit, as `checkLoad` would find. False says nothing: the load may pass one, or a
 * scale, cargo off centre or torsion axles of known stiffness make it a longer question.
 */
export function passesNoLimit(limits: LoadLimits, least: LeastLimits, load: Load): boolean {
  if (load.scale !== null || (load.offCentreM !== null && load.offCentreM !== 0)) return false;
  if (limits.emptyKg === null || load.cargo.length === 0) return true;
  let cargoKg = 0;
  for (const item of load.cargo) cargoKg += item.massKg;
  const grossN = weightOf(kg(limits.emptyKg + cargoKg));
  if (isNear(grossN, least.grossN)) return false;
  if (limits.sharing !== 'equal') return isOnlyBounded(limits, load);
  const { axleCentreM, emptyTongueN } = limits;
  if (axleCentreM === null || emptyTongueN === null) return true;
  const balancePointM = balancePointOf(load);
  if (balancePointM === null) return true;
  const tongueN = emptyTongueN + tongueFrom(kg(cargoKg), balancePointM, axleCentreM);
  return !isNear(tongueN, least.tongueN) && !isNear(grossN - tongueN, least.axleGroupN);
}

/** Axles that share in no known way, or torsion axles of unknown stiffness off level, are held only against bounds, which never break a limit. */
function isOnlyBounded({ torsion }: LoadLimits, load: Load): boolean {
  if (torsion === null || torsion.rates === null) return true;
  if (torsion.rates.known) return false;
  const attitude = attitudeOf(torsion, load);
  return attitude === null || attitude.raisedM !== 0;
}

/** Sums taken in another order differ in their last digit, so what comes that near is left to the whole check. */
function isNear(valueN: number, limitN: number): boolean {
  return exceeds(valueN, limitN * NEARLY);
}

const NEARLY = 1 - 1e-9;
