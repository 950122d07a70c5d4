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
  // A load has a handful of items: looking through them is quicker than any index of them.
  const aboard: { machine: Machine; massKg: Kilograms; weighed: boolean }[] = [];
  for (const { machineId, massKg, basis } of cargo) {
    if (machineId === null) continue;
    const known = aboard.find(({ machine }) => machine.id === machineId);
    if (known !== undefined) {
      known.massKg = kg(known.massKg + massKg);
      known.weighed &&= basis === 'weighed';
      continue;
    }
    const machine = machines.find((one) => one.id === machineId);
    if (machine !== undefined) aboard.push({ machine, massKg, weighed: basis === 'weighed' });
  }
  return aboard.length < 2 ? aboard : aboard.sort((a, b) => b.massKg - a.massKg);
}
