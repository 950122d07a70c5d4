import type { LoadLimits } from '../load/load-limits.js';
import type { SpringAxle } from '../load/springs.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Response } from './boundary.js';

/** How tongue, axle group and each axle (from the front) answer to cargo. */
export interface TrailerResponse {
  readonly tongue: Response;
  readonly group: Response;
  readonly axles: readonly Response[];
}

/** The fact that is missing, or the trailer's own weight on tongue and axles. */
export type EmptyTrailer =
  | { readonly kind: 'known'; readonly weightN: Newtons; readonly tongueN: Newtons; readonly axleCentreM: Metres }
  | { readonly kind: 'unknown'; readonly lacks: readonly ('empty-mass' | 'empty-tongue' | 'axle-places')[] };

export function emptyTrailer({ emptyKg, emptyTongueN, axleCentreM }: LoadLimits): EmptyTrailer {
  if (emptyKg !== null && emptyTongueN !== null && axleCentreM !== null) {
    return { kind: 'known', weightN: weightOf(emptyKg), tongueN: emptyTongueN, axleCentreM };
  }
  return {
    kind: 'unknown',
    lacks: [
      ...(emptyKg === null ? (['empty-mass'] as const) : []),
      ...(emptyTongueN === null ? (['empty-tongue'] as const) : []),
      ...(axleCentreM === null ? (['axle-places'] as const) : []),
    ],
  };
}

/**
 * Axles that share equally (`load/statics.ts`): the group carries all moments over its middle, T = W − M / x_c.
 * Torsion axles of one rate, standing level, do the same.
 */
export function sharedResponse(empty: Extract<EmptyTrailer, { kind: 'known' }>, axleCount: number): TrailerResponse {
  const group: Response = {
    constantN: newtons(empty.weightN - empty.tongueN),
    perWeight: 0,
    perMoment: 1 / empty.axleCentreM,
  };
  return {
    group,
    tongue: { constantN: empty.tongueN, perWeight: 1, perMoment: -group.perMoment },
    axles: Array.from({ length: axleCount }, () => scaled(group, 1 / axleCount)),
  };
}

/**
 * Torsion axles with the coupler `raisedM` above (positive) the height at which the loaded trailer stands level: the
 * springs of `load/springs.ts`, F_i = k_i (h − z − θ x_i), with h the free offset of the load itself. Solved for each
 * axle, all of them touching:
 *
 *     F_i = k_i M / Σ k x − k_i z (1 − x_i Σ k x / Σ k x²)
 *
 * so that raising the nose shifts load from front to rear by an amount that no cargo changes. Source: plane statics of a
 * rigid frame on linear springs. Throws RangeError for rates or places not above 0.
 */
export function torsionResponse(
  empty: Extract<EmptyTrailer, { kind: 'known' }>,
  springs: readonly SpringAxle[],
  raisedM: Metres,
): TrailerResponse {
  let sumKx = 0;
  let sumKxx = 0;
  for (const { fromCouplerM, rateNPerM } of springs) {
    if (!(rateNPerM > 0)) throw new RangeError(`a spring rate of ${rateNPerM} N/m: must be above 0`);
    if (!(fromCouplerM > 0)) throw new RangeError(`an axle ${fromCouplerM} m behind the coupler: must be above 0`);
    sumKx += rateNPerM * fromCouplerM;
    sumKxx += rateNPerM * fromCouplerM ** 2;
  }
  const emptyMomentNm = (empty.weightN - empty.tongueN) * empty.axleCentreM;
  const axles = springs.map(({ fromCouplerM, rateNPerM }): Response => {
    const perMoment = rateNPerM / sumKx;
    const shiftN = -rateNPerM * raisedM * (1 - (fromCouplerM * sumKx) / sumKxx);
    return { constantN: newtons(emptyMomentNm * perMoment + shiftN), perWeight: 0, perMoment };
  });
  const group = together(axles);
  return {
    group,
    tongue: { constantN: newtons(empty.weightN - group.constantN), perWeight: 1, perMoment: -group.perMoment },
    axles,
  };
}

function scaled(response: Response, by: number): Response {
  return {
    constantN: newtons(response.constantN * by),
    perWeight: response.perWeight * by,
    perMoment: response.perMoment * by,
  };
}

/** What several loads come to together. */
export function together(loads: readonly Response[]): Response {
  return loads.reduce(added, { constantN: newtons(0), perWeight: 0, perMoment: 0 });
}

function added(a: Response, b: Response): Response {
  return {
    constantN: newtons(a.constantN + b.constantN),
    perWeight: a.perWeight + b.perWeight,
    perMoment: a.perMoment + b.perMoment,
  };
}
