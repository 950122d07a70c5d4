import type { Load } from '../facts/load.js';
import type { Kilograms } from '../units/mass.js';

/**
 * A load as it would go onto another trailer: what it weighs stays, where it sat and what a scale said of that trailer
 * do not. `cargoKg` is what was carried, where only a ticket told it; null when that is not known either.
 */
export function portableLoad(load: Load, cargoKg: Kilograms | null): Load {
  const cargo =
    load.scale === null || cargoKg === null
      ? load.cargo.map((item) => ({ ...item, fromCouplerM: null }))
      : [
          {
            ...{ name: load.cargo.map((item) => item.name).join(', '), massKg: cargoKg, basis: 'weighed' as const },
            ...{ machineId: load.cargo.find((item) => item.machineId !== null)?.machineId ?? null },
            ...{ remedy: null, fromCouplerM: null },
          },
        ];
  return { ...load, cargo, balancePointM: null, scale: null, hitchHeightM: null, offCentreM: null };
}
