import type { Axle, HitchBuild } from '../facts/build-sheet.js';
import type { TowVehicle } from '../facts/use.js';
import type { SpringAxle } from '../load/springs.js';
import { type Rates, SOFTEST_N_PER_M, STIFFEST_N_PER_M, type Torsion } from '../load/torsion.js';
import type { Metres } from '../units/length.js';

/** What several torsion axles of a build, listed from the front, are split by behind this tow vehicle. */
export function torsionOf(axles: readonly Axle[], hitch: HitchBuild, towVehicle: TowVehicle | null): Torsion {
  const placesM = knownPlaces(axles);
  return {
    placesM,
    rates: placesM === null ? null : ratesOf(axles, placesM),
    levelHeightM: hitch.levelHeightM,
    ballHeightM: towVehicle?.ballHeightM ?? null,
  };
}

/** Null without axles, while the place of one is unknown or not behind the coupler, and when they are not numbered from the front. */
function knownPlaces(axles: readonly Axle[]): readonly Metres[] | null {
  const placesM: Metres[] = [];
  for (const { fromCouplerM } of axles) {
    if (fromCouplerM === null || !(fromCouplerM > (placesM.at(-1) ?? 0))) return null;
    placesM.push(fromCouplerM);
  }
  return placesM.length === 0 ? null : placesM;
}

/**
 * The rates entered, when all are. With none entered, axles of one rating are taken to be of one kind, and so of one
 * rate, somewhere between the softest and the stiffest. Null when some rates are entered and some not, or when the
 * ratings differ or are unknown: such axles may be of different kinds.
 */
function ratesOf(axles: readonly Axle[], placesM: readonly Metres[]): Rates | null {
  const entered = axles.filter(({ springRateNPerM }) => springRateNPerM !== null && springRateNPerM > 0);
  const springs = (rateOf: (axle: Axle) => number): readonly SpringAxle[] =>
    axles.map((axle, index) => ({ fromCouplerM: placesM[index] as Metres, rateNPerM: rateOf(axle) }));
  if (entered.length === axles.length) {
    const known = springs(({ springRateNPerM }) => springRateNPerM as number);
    return { known: true, softest: known, stiffest: known };
  }
  const ratings = new Set(axles.map(({ ratingKg, gawrKg }) => ratingKg ?? gawrKg));
  if (entered.length > 0 || ratings.size > 1 || ratings.has(null)) return null;
  return { known: false, softest: springs(() => SOFTEST_N_PER_M), stiffest: springs(() => STIFFEST_N_PER_M) };
}
