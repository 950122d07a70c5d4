import type { Load } from '../facts/load.js';
import { type Newtons, newtons } from '../units/force.js';
import { metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { Carried } from './carried.js';
import type { AxleLimits } from './load-limits.js';
import { rollMoment, wheelPair } from './statics.js';

/** What the left and the right side of one axle carry. */
export type SideLoads = ReturnType<typeof wheelPair>;

/** What turns the trailer to one side, as each axle takes it. */
interface Roll {
  /** N·m, right positive; 0 where the cargo sits in the middle or nobody said that it does not. Null while a fact is missing. */
  readonly axleNm: number | null;
  readonly lacks: 'axle-track' | 'cargo-mass' | null;
}

const NO_ROLL: Roll = { axleNm: 0, lacks: null };

/**
 * The roll moment of the cargo, an even part to each axle: a ball takes none of it, axles on equalized springs share
 * each side alike, and torsion axles of one kind resist alike. The empty trailer is taken to weigh alike on both sides.
 */
export function rollOf({ offCentreM }: Load, cargoKg: Kilograms | null, axles: readonly AxleLimits[]): Roll {
  if (offCentreM === null || offCentreM === 0 || axles.length === 0) return NO_ROLL;
  if (cargoKg === null) return { axleNm: null, lacks: 'cargo-mass' };
  if (axles.some(({ trackM }) => trackM === null)) return { axleNm: null, lacks: 'axle-track' };
  const cargo = { massKg: cargoKg, fromCouplerM: metres(0), offCentreM };
  return { axleNm: rollMoment([cargo]) / axles.length, lacks: null };
}

/** What one wheel carries of its axle; while a fact is missing, the most it can: all of the axle on its side. */
export function wheelLoad(
  { wheels, trackM }: AxleLimits,
  position: string | null,
  axleN: Newtons,
  { axleNm }: Roll,
): Newtons {
  const perSide = wheels / 2;
  if (axleNm === 0) return newtons(axleN / wheels);
  if (axleNm === null || trackM === null) return newtons(axleN / perSide);
  const { leftN, rightN } = wheelPair(axleN, axleNm, trackM);
  return newtons((isLeft(position) ? leftN : rightN) / perSide);
}

/** Null while the axles' loads, or where the cargo sits across the trailer, are not known. */
export function sideLoads(
  axles: readonly AxleLimits[],
  load: Load,
  { axleN, cargoKg }: Carried,
): readonly SideLoads[] | null {
  const { axleNm } = rollOf(load, cargoKg, axles);
  if (axleN === null || axleNm === null || load.offCentreM === null || axleN.length !== axles.length) return null;
  return axleN.map((force, index) => {
    const { trackM } = axles[index] as AxleLimits;
    const half = newtons(force / 2);
    return trackM === null ? { leftN: half, rightN: half } : wheelPair(force, axleNm, trackM);
  });
}

/** Wheels are called `1L`, `2RO`: the axle from the front, then the side. */
function isLeft(position: string | null): boolean {
  return position?.charAt(1) === 'L';
}
