import type { Load } from '../facts/load.js';
import { massHeldUpBy, type Newtons, newtons, weightOf } from '../units/force.js';
import { type Kilograms, kg } from '../units/mass.js';
import { balancePointOf } from './balance-point.js';
import type { LoadLimits } from './load-limits.js';
import { tongueFrom } from './statics.js';
import { type Attitude, attitudeOf, type ForceRange, splitByGroup, splitByMoment, type Torsion } from './torsion.js';

/** What a loaded trailer weighs and where that weight rests, as far as the facts tell. */
export interface Carried {
  readonly grossKg: Kilograms | null;
  readonly cargoKg: Kilograms | null;
  /** True when every weight in the gross was weighed. */
  readonly grossMeasured: boolean;
  readonly tongueN: Newtons | null;
  /** Between what the tongue lies, where torsion axles leave it open. */
  readonly tongueRangeN: ForceRange | null;
  /** That range rests on how stiff torsion axles are taken to be. */
  readonly rangeAssumed: boolean;
  readonly tongueMeasured: boolean;
  /** Why the tongue is not known; empty when it is, or when the gross is not known either. */
  readonly tongueLacks: readonly TongueLack[];
  /** The most the axles can carry together where their load is a bound or lies in a range. */
  readonly axleGroupN: Newtons | null;
  readonly axleGroupMeasured: boolean;
  /** The axle group is only the most that it can be: the tongue is not known, or not to one number. */
  readonly axleGroupIsBound: boolean;
  /** Load of each axle from the front, where it is known and no mere bound. */
  readonly axleN: readonly Newtons[] | null;
  /** Between what each axle's load lies, where torsion axles leave it open. */
  readonly axleRangeN: readonly ForceRange[] | null;
  /** False where single axles were worked out from anything that no scale told. */
  readonly axlesMeasured: boolean;
  /** Why a known group load is not split among its axles; null when it is. */
  readonly splitLack: SplitLack | null;
  /** Of all weights about the coupler, N·m, where it is known. */
  readonly momentNm: number | null;
  /** How torsion axles rode, as far as heights tell. */
  readonly attitude: Attitude | null;
  readonly method: 'scale' | 'statics' | 'range' | 'bound' | null;
}

type SplitLack = 'torsion-level' | 'spring-rate' | 'suspension';
type TongueLack = 'balance-point' | 'empty-tongue' | 'axle-places' | 'cargo-mass' | SplitLack;

/** What a scale and the sums of masses tell, before any statics. */
interface Weighed {
  readonly grossKg: Kilograms | null;
  readonly cargoKg: Kilograms | null;
  readonly grossMeasured: boolean;
  /** One entry per axle, or null: a ticket that lumps axles together is no axle ticket. */
  readonly ticketN: readonly Newtons[] | null;
  readonly onAxlesN: Newtons | null;
  readonly tongueN: Newtons | null;
  readonly tongueMeasured: boolean;
}

/**
 * A scale beats every sum. Where no scale spoke, the gross is the empty mass and the cargo; the tongue comes from
 * statics when the balance point, the axles' places and the empty tongue are known. Axles on equalized springs share
 * equally; torsion axles are split by how level the trailer rode and how stiff they are (`torsion.ts`).
 *
 * A tongue from statics never counts as measured, even when all masses were weighed: the balance point was not.
 */
export function carriedBy(limits: LoadLimits, load: Load): Carried {
  const weighed = weigh(limits, load);
  const attitude = limits.torsion === null ? null : attitudeOf(limits.torsion, load);
  if (weighed.ticketN !== null || weighed.tongueN !== null) return byScale(limits, weighed, attitude);
  if (weighed.grossKg === null) return { ...NOTHING, ...sums(weighed), ...openSplit(limits, attitude), attitude };
  return byStatics(limits, load, weighed, attitude);
}

const NOTHING = {
  tongueN: null,
  tongueRangeN: null,
  rangeAssumed: false,
  tongueMeasured: false,
  tongueLacks: [],
  axleGroupN: null,
  axleGroupMeasured: false,
  axleGroupIsBound: true,
  axleN: null,
  axleRangeN: null,
  axlesMeasured: false,
  splitLack: null,
  momentNm: null,
  method: null,
} as const;

function sums({ grossKg, cargoKg, grossMeasured }: Weighed): Pick<Carried, 'grossKg' | 'cargoKg' | 'grossMeasured'> {
  return { grossKg, cargoKg, grossMeasured };
}

function weigh(limits: LoadLimits, load: Load): Weighed {
  const { scale } = load;
  const axleN = scale?.axleN ?? null;
  const onAxlesN = axleN === null || axleN.length === 0 ? null : sumOf(axleN);
  const weighedKg =
    scale?.grossKg ??
    (onAxlesN !== null && scale !== null && scale.tongueN !== null
      ? massHeldUpBy(newtons(onAxlesN + scale.tongueN))
      : null);
  const { listedKg, listedWeighed } = listedCargo(load);
  const cargoKg = weighedKg !== null && limits.emptyKg !== null ? kg(weighedKg - limits.emptyKg) : listedKg;
  const grossKg = weighedKg ?? (limits.emptyKg === null || listedKg === null ? null : kg(limits.emptyKg + listedKg));
  const grossMeasured = weighedKg !== null || (limits.emptyWeighed && listedWeighed);
  const tongueN =
    scale?.tongueN ?? (onAxlesN !== null && grossKg !== null ? newtons(weightOf(grossKg) - onAxlesN) : null);
  return {
    grossKg,
    cargoKg,
    grossMeasured,
    ticketN: axleN !== null && axleN.length > 0 ? axleN : null,
    onAxlesN: onAxlesN ?? (grossKg !== null && tongueN !== null ? newtons(weightOf(grossKg) - tongueN) : null),
    tongueN,
    tongueMeasured: tongueN !== null && (scale?.tongueN != null || grossMeasured),
  };
}

/** A scale told the tongue or the axles; what it did not tell of single axles is split. */
function byScale(limits: LoadLimits, weighed: Weighed, attitude: Attitude | null): Carried {
  const { ticketN, onAxlesN, tongueN } = weighed;
  const known: Carried = {
    ...NOTHING,
    ...sums(weighed),
    tongueN,
    tongueMeasured: weighed.tongueMeasured,
    axleGroupN: onAxlesN,
    axleGroupMeasured: ticketN !== null || (weighed.grossMeasured && weighed.tongueMeasured),
    axleGroupIsBound: onAxlesN === null,
    attitude,
    method: 'scale',
  };
  const count = limits.axles.length;
  if (ticketN !== null && ticketN.length === count) {
    return { ...known, axleN: ticketN, axlesMeasured: true, momentNm: momentOf(ticketN, limits.torsion) };
  }
  if (onAxlesN === null || count === 0) return { ...known, ...openSplit(limits, attitude) };
  const axlesMeasured = known.axleGroupMeasured;
  if (limits.sharing === 'equal') return { ...known, axlesMeasured, axleN: evenly(onAxlesN, count) };
  if (limits.torsion === null) return { ...known, axlesMeasured, splitLack: 'suspension' };
  const split = splitByGroup(limits.torsion, count, onAxlesN, attitude?.raisedM ?? null);
  if (!split.exact) {
    const isCertain = !split.narrowed && axlesMeasured;
    return { ...known, axlesMeasured: isCertain, axleRangeN: split.axleN, splitLack: split.lacks };
  }
  const axleN = split.axleN.map((one) => one.mostN);
  return { ...known, axleN, momentNm: momentOf(axleN, limits.torsion) };
}

/** Moments about the coupler: what the empty trailer and the cargo press on axles and tongue. */
function byStatics(limits: LoadLimits, load: Load, weighed: Weighed, attitude: Attitude | null): Carried {
  const grossN = weightOf(weighed.grossKg as Kilograms);
  const placed = placedLoad(limits, load, weighed.cargoKg);
  if (placed.tongueN === null) {
    return { ...boundBy(weighed, grossN, attitude), ...openSplit(limits, attitude), tongueLacks: placed.lacks };
  }
  const { torsion } = limits;
  if (torsion === null) return shared(weighed, placed.tongueN, grossN, limits.axles.length, attitude);
  return sprung(limits, torsion, weighed, { weightN: grossN, momentNm: placed.momentNm }, attitude);
}

/** The axles taken to carry all of it, for want of the tongue weight. */
function boundBy(weighed: Weighed, grossN: Newtons, attitude: Attitude | null): Carried {
  const { grossMeasured } = weighed;
  return {
    ...{ ...NOTHING, ...sums(weighed), attitude, axleGroupN: grossN, method: 'bound' },
    ...{ axleGroupMeasured: grossMeasured, axlesMeasured: grossMeasured },
  };
}

/** By statics on torsion axles, each its own spring: exact when level or of known stiffness, else a range. */
function sprung(
  limits: LoadLimits,
  torsion: Torsion,
  weighed: Weighed,
  load: { readonly weightN: Newtons; readonly momentNm: number },
  attitude: Attitude | null,
): Carried {
  const split = splitByMoment(torsion, load, attitude?.raisedM ?? null);
  const bound = boundBy(weighed, load.weightN, attitude);
  if (split === null) {
    const lack = torsion.placesM === null ? 'axle-places' : 'balance-point';
    return { ...bound, ...openSplit(limits, attitude), tongueLacks: [lack] };
  }
  const known = { ...NOTHING, ...sums(weighed), attitude, momentNm: load.momentNm, axleGroupN: split.groupN.mostN };
  if (split.exact) {
    return {
      ...{ ...known, tongueN: split.tongueN.mostN },
      ...{ axleGroupIsBound: false, axleN: split.axleN.map((one) => one.mostN), method: 'statics' },
    };
  }
  return {
    ...{ ...known, tongueRangeN: split.tongueN, rangeAssumed: split.assumed },
    tongueLacks: split.lacks === null ? [] : [split.lacks],
    axleRangeN: split.axleN,
    splitLack: split.lacks,
    method: 'range',
  };
}

/** By statics on axles that share: the usual case, asked of every recent trip, so written out rather than spread. */
function shared(
  { grossKg, cargoKg, grossMeasured }: Weighed,
  tongueN: Newtons,
  grossN: Newtons,
  count: number,
  attitude: Attitude | null,
): Carried {
  const axleGroupN = newtons(grossN - tongueN);
  return {
    grossKg,
    cargoKg,
    grossMeasured,
    tongueN,
    tongueRangeN: null,
    rangeAssumed: false,
    tongueMeasured: false,
    tongueLacks: [],
    axleGroupN,
    axleGroupMeasured: false,
    axleGroupIsBound: false,
    axleN: count === 0 ? null : evenly(axleGroupN, count),
    axleRangeN: null,
    axlesMeasured: false,
    splitLack: null,
    momentNm: null,
    attitude,
    method: 'statics',
  };
}

/** Why axles are not split while not even the tongue is known. */
function openSplit({ sharing, axles, torsion }: LoadLimits, attitude: Attitude | null): Pick<Carried, 'splitLack'> {
  if (axles.length === 0 || sharing === 'equal') return { splitLack: null };
  if (torsion === null) return { splitLack: 'suspension' };
  return {
    splitLack:
      attitude !== null && torsion.placesM !== null && torsion.rates === null ? 'spring-rate' : 'torsion-level',
  };
}

/** The tongue as it would be level, and the moment about the coupler that goes with it. */
type Placed =
  | { readonly tongueN: Newtons; readonly momentNm: number }
  | { readonly tongueN: null; readonly lacks: readonly TongueLack[] };

function placedLoad(limits: LoadLimits, load: Load, cargoKg: Kilograms | null): Placed {
  const { axleCentreM, emptyTongueN, emptyKg } = limits;
  const balancePointM = balancePointOf(load);
  const lacks: TongueLack[] = [];
  if (limits.sharing === 'unknown') lacks.push('suspension');
  if (balancePointM === null) lacks.push('balance-point');
  if (axleCentreM === null) lacks.push('axle-places');
  if (emptyTongueN === null) lacks.push('empty-tongue');
  if (cargoKg === null) lacks.push('cargo-mass');
  if (lacks.length > 0 || balancePointM === null || axleCentreM === null || emptyTongueN === null || cargoKg === null) {
    return { tongueN: null, lacks };
  }
  const cargoN = weightOf(cargoKg);
  return {
    tongueN: newtons(emptyTongueN + tongueFrom(cargoKg, balancePointM, axleCentreM)),
    momentNm: (weightOf(emptyKg ?? kg(0)) - emptyTongueN) * axleCentreM + cargoN * balancePointM,
  };
}

function momentOf(axleN: readonly Newtons[], torsion: Torsion | null): number | null {
  const placesM = torsion?.placesM ?? null;
  if (placesM === null) return null;
  return axleN.reduce((sum, force, index) => sum + force * (placesM[index] as number), 0);
}

function evenly(axleGroupN: Newtons, count: number): readonly Newtons[] {
  return Array<Newtons>(count).fill(newtons(axleGroupN / count));
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
