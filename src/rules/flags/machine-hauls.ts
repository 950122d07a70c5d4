import type { Machine } from '../facts/load.js';
import type { Trip } from '../facts/use.js';
import { machinesAboard } from '../load/aboard.js';
import type { Kilograms } from '../units/mass.js';
import type { FlagContext } from './flag-context.js';

/** A machine on a recent trip, as heavy as it was then. */
export interface MachineHaul {
  readonly machine: Machine;
  readonly massKg: Kilograms;
  readonly trip: Trip;
}

/** Every machine of every recent trip, in the order of time. */
export function machineHauls({ trailer, recentTrips }: FlagContext): readonly MachineHaul[] {
  const { machines } = trailer.facts;
  if (machines.length === 0) return [];
  return recentTrips.flatMap((trip) => machinesAboard(trip.load, machines).map((one) => ({ ...one, trip })));
}

/** The trips of each machine, a machine in the order in which it first rode. */
export function tripsByMachine(context: FlagContext): readonly { machine: Machine; trips: readonly Trip[] }[] {
  const byMachine = new Map<string, { machine: Machine; trips: Trip[] }>();
  for (const { machine, trip } of machineHauls(context)) {
    const known = byMachine.get(machine.id);
    if (known === undefined) byMachine.set(machine.id, { machine, trips: [trip] });
    else known.trips.push(trip);
  }
  return [...byMachine.values()];
}
