import { type Newtons, newtons } from '../units/force.js';
import type { Carried } from './carried.js';
import type { Limit } from './limit.js';
import type { LoadLimits } from './load-limits.js';

/** What a run of axles carries, beside what the law lets it. */
export interface LegalLoad {
  readonly limit: Limit;
  readonly loadN: Newtons;
  readonly measured: boolean;
  /** The run spans the whole group, whose load may be known where the split is not. */
  readonly isWhole: boolean;
}

/** The load of every run of axles that the law limits. `mostOn`: the most that an axle can carry, by its place from 0. */
export function legalLoads(
  limits: LoadLimits,
  { axleGroupN, axleGroupMeasured, axlesMeasured }: Carried,
  mostOn: (place: number) => Newtons,
): readonly LegalLoad[] {
  if (axleGroupN === null) return [];
  return limits.legal.map(({ limit, first, last }) => {
    const isWhole = first === 0 && last === limits.axles.length - 1;
    let sum = 0;
    for (let place = first; place <= last; place++) sum += mostOn(place);
    return {
      limit,
      loadN: isWhole ? axleGroupN : newtons(Math.min(sum, axleGroupN)),
      measured: isWhole ? axleGroupMeasured : axlesMeasured,
      isWhole,
    };
  });
}
