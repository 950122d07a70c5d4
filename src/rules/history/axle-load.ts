import type { Load } from '../facts/load.js';
import type { Trip } from '../facts/use.js';
import { balancePointOf } from '../load/balance-point.js';
import type { LoadLimits } from '../load/load-limits.js';
import { tongueFrom } from '../load/statics.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import { type Kilograms, kg } from '../units/mass.js';
import type { TrailerOn } from './trailer-on.js';

// Asked of every trip ever made, so the usual case (springs that share, no scale ticket) is answered without the whole
// of a load check. A test holds both ways against each other.

/** What an axle, counted from 0 at the front, carried on a trip, standing; null where it is not known to one number. */
export function knownAxleLoad(trip: Trip, axle: number, trailer: TrailerOn): Newtons | null {
  const limits = trailer.limitsOn(trip.startedOn);
  if (limits === null) return null;
  if (trip.load.scale !== null) return trailer.judge(trip)?.axleN?.[axle] ?? null;
  if (limits.sharing === 'equal') return axle < limits.axles.length ? evenLoad(limits, trip.load, null) : null;
  return trip.load.hitchHeightM === null ? null : (trailer.judge(trip)?.axleN?.[axle] ?? null);
}

/**
 * The same, or where it is known only between bounds, the most it can be: with the tongue unknown the whole weight,
 * shared evenly; on torsion axles of unknown height or stiffness the upper end. Null where not even that is known. Holds for a tongue that presses down; a load that lifts it puts more on the axles.
 */
export function mostAxleLoad(trip: Trip, axle: number, trailer: TrailerOn): Newtons | null {
  const known = knownAxleLoad(trip, axle, trailer);
  if (known !== null) return known;
  const limits = trailer.limitsOn(trip.startedOn);
  if (limits === null || axle >= limits.axles.length) return null;
  if (limits.sharing !== 'equal') return trailer.judge(trip)?.axleRangeN?.[axle]?.mostN ?? null;
  const scaleKg = trip.load.scale?.grossKg ?? null;
  if (scaleKg !== null) return newtons(weightOf(scaleKg) / limits.axles.length);
  return evenLoad(limits, trip.load, newtons(0));
}

/** What each axle carried on each trip, in the order of the trips, where axles shared evenly and no scale spoke. */
interface EvenLoads {
  /** How many axles shared evenly; 0 where they did not, or a scale spoke: `knownAxleLoad` and `mostAxleLoad` tell. */
  readonly axles: Uint8Array;
  /** What each carried; NaN where not even the most it can be is known. */
  readonly axleN: Float64Array;
  /** 1 where that is only the most it can be. */
  readonly isBound: Uint8Array;
}

const kept = new WeakMap<TrailerOn, EvenLoads>();

/** The usual case for all trips, worked out once: bearings are weighed and hubs summed from it. */
export function evenLoads(trailer: TrailerOn): EvenLoads {
  const known = kept.get(trailer);
  if (known !== undefined) return known;
  const { trips } = trailer;
  const loads = {
    axles: new Uint8Array(trips.length),
    axleN: new Float64Array(trips.length).fill(Number.NaN),
    isBound: new Uint8Array(trips.length),
  };
  for (let place = 0; place < trips.length; place++) {
    const { startedOn, load } = trips[place] as Trip;
    const limits = trailer.limitsOn(startedOn);
    if (limits === null || limits.sharing !== 'equal' || load.scale !== null) continue;
    loads.axles[place] = limits.axles.length;
    const cargoKg = listedMass(load);
    if (cargoKg === null || limits.emptyKg === null) continue;
    const tongueN = tongueOf(limits, load, cargoKg);
    if (tongueN === null) loads.isBound[place] = 1;
    loads.axleN[place] = shareOf(limits.emptyKg, cargoKg, tongueN ?? newtons(0), limits.axles.length);
  }
  kept.set(trailer, loads);
  return loads;
}

/** One axle's even share of what the tongue leaves; `otherwise` is the tongue to take where it cannot be worked out. */
function evenLoad(limits: LoadLimits, load: Load, otherwise: Newtons | null): Newtons | null {
  const cargoKg = listedMass(load);
  if (cargoKg === null || limits.emptyKg === null) return null;
  const tongueN = tongueOf(limits, load, cargoKg) ?? otherwise;
  if (tongueN === null) return null;
  return shareOf(limits.emptyKg, cargoKg, tongueN, limits.axles.length);
}

function shareOf(emptyKg: Kilograms, cargoKg: Kilograms, tongueN: Newtons, axles: number): Newtons {
  return newtons((weightOf(kg(emptyKg + cargoKg)) - tongueN) / axles);
}

function tongueOf({ axleCentreM, emptyTongueN }: LoadLimits, load: Load, cargoKg: Kilograms): Newtons | null {
  if (axleCentreM === null || emptyTongueN === null) return null;
  const balancePointM = balancePointOf(load);
  return balancePointM === null ? null : newtons(emptyTongueN + tongueFrom(cargoKg, balancePointM, axleCentreM));
}

function listedMass({ cargo }: Load): Kilograms | null {
  if (cargo.length === 0) return null;
  let massKg = 0;
  for (const item of cargo) massKg += item.massKg;
  return kg(massKg);
}
