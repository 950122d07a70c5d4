import type { Load } from '../../rules/facts/load.js';
import type { YardTx } from '../../store/database.js';
import type { MachineStore } from '../../store/machine-store.js';
import type { Given } from '../input/given.js';
import { withMachine } from '../input/load-input.js';

/**
 * The load with its machine in it, after looking that every machine named is one of the yard's.
 * What cannot stand is noted on `given`, under `machineId` and `load`.
 */
export async function completeLoad(
  tx: YardTx,
  machines: MachineStore,
  given: Given,
  machineId: string | null,
  load: Load,
): Promise<Load> {
  const machine = machineId === null ? null : await machines.find(tx, machineId);
  if (machineId !== null && machine === null) given.refuse('machineId', "Choose one of the yard's machines.");
  for (const [place, item] of load.cargo.entries()) {
    if (item.machineId === null || item.machineId === machineId) continue;
    if ((await machines.find(tx, item.machineId)) === null) {
      given.refuse(`load.cargo[${place}].machineId`, "Choose one of the yard's machines, or leave it out.");
    }
  }
  const complete = withMachine(load, machine);
  if (complete === null) {
    given.refuse(
      'machineId',
      `Nobody has said what ${machine?.name} weighs: enter its weight first, or list it in the cargo with a weight.`,
    );
  }
  return complete ?? load;
}
