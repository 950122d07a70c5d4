import type { Axle } from '../facts/build-sheet.js';
import { type AxleRun, axleRunLimit, axleRuns } from '../law/bridge.js';
import type { LegalRun } from '../load/load-limits.js';
import { weightOf } from '../units/force.js';
import { metres } from '../units/length.js';

/**
 * What the law of the Interstate System lets each run of consecutive axles carry; see `law/bridge.ts`. `axles` from the
 * front. Runs that a wider run with no higher limit holds anyway are left out. While a place is unknown only the limit
 * of each axle by itself is known. State roads and permits differ: check your state.
 */
export function legalRuns(axles: readonly Axle[]): readonly LegalRun[] {
  const runs = axleRuns(axles.map((axle) => axle.fromCouplerM)) ?? axles.map(alone);
  return runs
    .filter((run) => !runs.some((other) => other !== run && holdsAnyway(other, run)))
    .map(({ first, last, limitKg }) => ({
      first,
      last,
      limit: {
        kind: 'legal-axles',
        subject: first === last ? number(axles, first) : `${number(axles, first)}-${number(axles, last)}`,
        limitN: weightOf(limitKg),
        origin: 'law',
      },
    }));
}

function alone(_axle: Axle, place: number): AxleRun {
  return { first: place, last: place, ...axleRunLimit(metres(0), 1) };
}

/** Whether what keeps `wide` within its limit keeps `run` within its own. */
function holdsAnyway(wide: AxleRun, run: AxleRun): boolean {
  return wide.first <= run.first && wide.last >= run.last && wide.limitKg <= run.limitKg;
}

function number(axles: readonly Axle[], place: number): string {
  return String(axles[place]?.number ?? place + 1);
}
