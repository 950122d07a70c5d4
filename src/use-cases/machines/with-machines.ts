import type { Load, Machine } from '../../rules/facts/load.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import type { YardTx } from '../../store/database.js';
import type { MachineStore } from '../../store/machine-store.js';

/** The machines a load names, and those that replaced them. */
export async function machinesOf(tx: YardTx, machines: MachineStore, { cargo }: Load): Promise<readonly Machine[]> {
  const named = cargo.flatMap((item) => item.machineId ?? []);
  return named.length === 0 ? [] : machines.findWithReplacements(tx, named);
}

/** The facts with these machines among them: a trailer that never carried one knows nothing of it. */
export function withMachines(facts: TrailerFacts, machines: readonly Machine[]): TrailerFacts {
  const known = new Set(facts.machines.map((machine) => machine.id));
  const others = machines.filter((machine) => !known.has(machine.id));
  return others.length === 0 ? facts : { ...facts, machines: [...facts.machines, ...others] };
}
