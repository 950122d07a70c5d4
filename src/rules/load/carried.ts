import type { Load } from '../facts/load.js';
import { massHeldUpBy, type Newtons, newtons, weightOf } from '../units/force.js';
import { type Kilograms, kg } from '../units/mass.js';
import type { LoadLimits } from './load-limits.js';
import { tongueFrom } from './statics.js';

/** What a loaded trailer weighs and where that weight rests, as far as the facts tell. */
export interface Carried {
  readonly grossKg: Kilograms | null;
  readonly cargoKg: Kilograms | null;
  /** True when every weight in the gross was weighed. */
  readonly grossMeasured: boolean;
  readonly tongueN: Newtons | null;
  readonly tongueMeasured: boolean;
  /** Why the tongue is not known; empty when it is, or when the gross is not known either. */
  readonly tongueLacks: readonly TongueLack[];
  readonly axleGroupN: Newtons | null;
  readonly axleGroupMeasured: boolean;
  /** The axle group is taken to carry the whole gross, because the tongue is not known. */
  readonly axleGroupIsBound: boolean;
  /** Load of each axle from the front, where it is known and no mere bound. */
  readonly axleN: readonly Newtons[] | null;
  readonly method: 'scale' | 'statics' | 'bound' | null;
}

type TongueLack = 'balance-point' | 'empty-tongue' | 'axle-places' | 'cargo-mass' | 'suspension' | 'torsion-level';

/**
 * A scale beats every sum. Where no scale spoke, the gross is the empty mass and the cargo; the tongue comes from
 * statics when the balance point, the axles' places and the empty tongue are known and the axles share equally.
 *
 * A tongue from statics never counts as measured, even when all masses were weighed: the balance point was not.
 */
export function carriedBy(limits: LoadLimits, load: Load): Carried {
  const { scale } = load;
  const ticketN = scale?.axleN ?? null;
  const onAxlesN = ticketN === null || ticketN.length === 0 ? null : sumOf(ticketN);
  const weighedKg =
    scale?.grossKg ??
    (onAxlesN !== null && scale !== null && scale.tongueN !== null
      ? massHeldUpBy(newtons(onAxlesN + scale.tongueN))
      : null);
  const { listedKg, listedWeighed } = listedCargo(load);

  const cargoKg = weighedKg !== null && limits.emptyKg !== null ? kg(weighedKg - limits.emptyKg) : listedKg;
  const grossKg = weighedKg ?? (limits.emptyKg === null || listedKg === null ? null : kg(limits.emptyKg + listedKg));
  const grossMeasured = weighedKg !== null || (limits.emptyWeighed && listedWeighed);
  const grossN = grossKg === null ? null : weightOf(grossKg);

  const scaleTongueN = scale?.tongueN ?? (onAxlesN !== null && grossN !== null ? newtons(grossN - onAxlesN) : null);
  const lacks: TongueLack[] = [];
  const tongueN = scaleTongueN ?? (grossN === null ? null : tongueByStatics(limits, load, cargoKg, lacks));
  const tongueMeasured = scaleTongueN !== null && (scale?.tongueN !== null || grossMeasured);

  const axleGroupN = onAxlesN ?? (grossN === null ? null : tongueN === null ? grossN : newtons(grossN - tongueN));
  const axleGroupIsBound = onAxlesN === null && tongueN === null;
  return {
    grossKg,
    cargoKg,
    grossMeasured,
    tongueN,
    tongueMeasured,
    tongueLacks: lacks,
    axleGroupN,
    axleGroupMeasured: onAxlesN !== null || (grossMeasured && (axleGroupIsBound || tongueMeasured)),
    axleGroupIsBound,
    axleN: axleLoads(limits, ticketN, axleGroupIsBound ? null : axleGroupN),
    method:
      scaleTongueN !== null || onAxlesN !== null
        ? 'scale'
        : tongueN !== null
          ? 'statics'
          : axleGroupN !== null
            ? 'bound'
            : null,
  };
}

/**
 * Each axle's load. An axle scale ticket always wins. Equalized springs, or one axle, share equally; torsion axles
 * are not split, since their shares turn on hitch height and road.
 */
function axleLoads(
  limits: LoadLimits,
  ticketN: readonly Newtons[] | null,
  axleGroupN: Newtons | null,
): readonly Newtons[] | null {
  const count = limits.axles.length;
  if (ticketN !== null && ticketN.length === count) return ticketN;
  if (axleGroupN === null || count === 0 || limits.sharing !== 'equal') return null;
  return Array<Newtons>(count).fill(newtons(axleGroupN / count));
}

/** Moments about the axle group's middle: what the empty trailer rests on its coupler, and what the cargo adds there. */
function tongueByStatics(
  limits: LoadLimits,
  load: Load,
  cargoKg: Kilograms | null,
  lacks: TongueLack[],
): Newtons | null {
  const { axleCentreM, emptyTongueN } = limits;
  const { balancePointM } = load;
  if (limits.sharing === 'separate') {
    lacks.push('torsion-level');
    return null;
  }
  if (limits.sharing === 'unknown') lacks.push('suspension');
  if (balancePointM === null) lacks.push('balance-point');
  if (axleCentreM === null) lacks.push('axle-places');
  if (emptyTongueN === null) lacks.push('empty-tongue');
  if (cargoKg === null) lacks.push('cargo-mass');
  if (lacks.length > 0 || balancePointM === null || axleCentreM === null || emptyTongueN === null || cargoKg === null) {
    return null;
  }
  return newtons(emptyTongueN + tongueFrom(cargoKg, balancePointM, axleCentreM));
}

/** An empty list is not an empty deck: nobody said what was carried. */
function listedCargo(load: Load): { listedKg: Kilograms | null; listedWeighed: boolean } {
  if (load.cargo.length === 0) return { listedKg: null, listedWeighed: false };
  let massKg = 0;
  let listedWeighed = true;
  for (const item of load.cargo) {
    massKg += item.massKg;
    if (item.basis !== 'weighed') listedWeighed = false;
  }
  return { listedKg: kg(massKg), listedWeighed };
}

function sumOf(forces: readonly Newtons[]): Newtons {
  let sum = 0;
  for (const force of forces) sum += force;
  return newtons(sum);
}
