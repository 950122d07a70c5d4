import type { Load, Machine } from '../facts/load.js';
import { type Kilograms, kg } from '../units/mass.js';

/** A machine on the deck, and its mass with what is entered as part of it. */
export interface Aboard {
  readonly machine: Machine;
  readonly massKg: Kilograms;
  /** True when every weight in it was weighed. */
  readonly weighed: boolean;
}

/** The machines among a load's cargo, heaviest first; items that name the same machine are it and what it wears. */
export function machinesAboard({ cargo }: Load, machines: readonly Machine[]): readonly Aboard[] {
  const aboard = new Map<string, { machine: Machine; massKg: number; weighed: boolean }>();
  for (const item of cargo) {
    if (item.machineId === null) continue;
    const known = aboard.get(item.machineId);
    const machine = known?.machine ?? machines.find((one) => one.id === item.machineId);
    if (machine === undefined) continue;
    aboard.set(item.machineId, {
      machine,
      massKg: (known?.massKg ?? 0) + item.massKg,
      weighed: (known?.weighed ?? true) && item.basis === 'weighed',
    });
  }
  return [...aboard.values()].map((one) => ({ ...one, massKg: kg(one.massKg) })).sort((a, b) => b.massKg - a.massKg);
}
