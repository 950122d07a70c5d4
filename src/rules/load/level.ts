import { type Newtons, newtons, weightOf } from '../units/force.js';
import { type Metres, metres } from '../units/length.js';
import type { Carried } from './carried.js';
import type { LoadLimits } from './load-limits.js';
import type { SpringAxle } from './springs.js';
import type { Rates } from './torsion.js';

/** What tongue and torsion axles would carry with the hitch brought to the height at which the trailer is level. */
interface WhenLevel {
  /** Null while the gross weight is unknown. */
  readonly tongueN: Newtons | null;
  readonly axleN: readonly Newtons[];
  /** The height to bring the coupler to; null while nobody has measured it. */
  readonly hitchHeightM: Metres | null;
  /** Rates of the axles were assumed alike, since nobody has given them. */
  readonly ratesAssumed: boolean;
}

/**
 * The weights' moment about the coupler does not change with the height of the hitch, so what the axles carry level
 * follows from what they carry now: F_i = M k_i / Σ k x. A nose brought down puts the load of the hitch back on the
 * axles. Null for axles that share by themselves, while the moment is unknown, or when the axles may be of unlike kinds.
 */
export function whenLevel({ torsion }: LoadLimits, { momentNm, grossKg }: Carried): WhenLevel | null {
  const rates = torsion?.rates ?? null;
  if (torsion === null || rates === null || momentNm === null || !(momentNm > 0)) return null;
  const axleN = levelShares(rates, momentNm);
  const onAxlesN = axleN.reduce<number>((sum, force) => sum + force, 0);
  return {
    tongueN: grossKg === null ? null : newtons(weightOf(grossKg) - onAxlesN),
    axleN,
    hitchHeightM: torsion.levelHeightM,
    ratesAssumed: !rates.known,
  };
}

function levelShares({ softest }: Rates, momentNm: number): readonly Newtons[] {
  const { sumKx } = moments(softest);
  return softest.map(({ rateNPerM }) => newtons((momentNm * rateNPerM) / sumKx));
}

/**
 * The distance by which a weight, moved forward by d, puts w d over it on the tongue: Σ k x² / Σ k x for torsion axles,
 * whose springs stay as they are while the load moves, and the middle of the axles where they share by themselves.
 * Where nobody said how they share, that too: on a tandem the two differ by less than a hundredth. Null while a place
 * or, for unlike torsion axles, a rate is unknown. Not for a trailer one of whose axles is off the ground.
 */
export function tongueLever({ sharing, torsion, axleCentreM }: LoadLimits): Metres | null {
  if (sharing !== 'separate') return axleCentreM;
  const springs = torsion?.rates?.softest ?? null;
  if (springs === null) return null;
  const { sumKx, sumKxx } = moments(springs);
  return metres(sumKxx / sumKx);
}

/**
 * How much of a weight on the deck an axle is relieved of when that weight is taken off: x_b k_i x_i / Σ k x², springs
 * as they are. Null as `tongueLever`, and where axles share by themselves.
 */
export function reliefOf({ torsion }: LoadLimits, axle: number, balancePointM: Metres): number | null {
  const springs = torsion?.rates?.softest ?? null;
  const spring = springs?.[axle];
  if (springs === null || spring === undefined) return null;
  return (balancePointM * spring.rateNPerM * spring.fromCouplerM) / moments(springs).sumKxx;
}

function moments(springs: readonly SpringAxle[]): { sumKx: number; sumKxx: number } {
  let [sumKx, sumKxx] = [0, 0];
  for (const { fromCouplerM, rateNPerM } of springs) {
    sumKx += rateNPerM * fromCouplerM;
    sumKxx += rateNPerM * fromCouplerM ** 2;
  }
  return { sumKx, sumKxx };
}
