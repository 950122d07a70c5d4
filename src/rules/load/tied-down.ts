import type { Load, Machine } from '../facts/load.js';
import type { Metres } from '../units/length.js';
import { type Kilograms, kg } from '../units/mass.js';
import { machinesAboard } from './aboard.js';
import { checkTieDowns, type TieDownCheck, type TieDownNeed, tieDownNeed } from './tie-downs.js';

/**
 * What a load needs to be tied down with. Null while nobody said what it weighs, or when it weighs nothing. Whether it
 * is blocked ahead is on no record, so it is taken not to be; pads instead of wheels or tracks leave 393.130 aside.
 */
export function needOf(load: Load, machines: readonly Machine[], cargoKg: Kilograms | null): TieDownNeed | null {
  const massKg = cargoKg ?? kg(load.cargo.reduce<number>((sum, item) => sum + item.massKg, 0));
  if (!(massKg > 0)) return null;
  let lengthM: Metres | null = null;
  let machineKg: Kilograms | null = null;
  for (const { machine, massKg: itsKg } of machinesAboard(load, machines)) {
    if (machine.lengthM !== null && (lengthM === null || machine.lengthM > lengthM)) lengthM = machine.lengthM;
    if (machine.contact !== 'pads' && machineKg === null) machineKg = itsKg;
  }
  return tieDownNeed({ massKg, lengthM, blockedAhead: false, machineKg });
}

/** The tie-downs recorded for a load against what it needs; null when nobody said what held it, or what it weighed. */
export function tiedDown(load: Load, machines: readonly Machine[], cargoKg: Kilograms | null): TieDownCheck | null {
  if (load.tieDowns === null) return null;
  const need = needOf(load, machines, cargoKg);
  return need === null ? null : checkTieDowns(need, load.tieDowns);
}
