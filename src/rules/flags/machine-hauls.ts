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

/** Every haul of these machines on recent trips, in the order of time. */
export function haulsOf({ recentTrips }: FlagContext, machines: readonly Machine[]): readonly MachineHaul[] {
  if (machines.length === 0) return [];
  return recentTrips.flatMap((trip) => machinesAboard(trip.load, machines).map((one) => ({ ...one, trip })));
}

/** The recent trips of each machine of which `fault` finds one, with what it found; most machines have none, and cost no look at trips. */
export function faultsByMachine<Fault>(
  context: FlagContext,
  fault: (machine: Machine) => Fault | null,
): readonly { readonly machine: Machine; readonly fault: Fault; readonly trips: readonly Trip[] }[] {
  const found = new Map<string, { machine: Machine; fault: Fault; trips: Trip[] }>();
  for (const machine of context.trailer.facts.machines) {
    const one = fault(machine);
    if (one !== null) found.set(machine.id, { machine, fault: one, trips: [] });
  }
  const faulty = [...found.values()];
  for (const { machine, trip } of haulsOf(
    context,
    faulty.map((one) => one.machine),
  )) {
    found.get(machine.id)?.trips.push(trip);
  }
  return faulty.filter(({ trips }) => trips.length > 0);
}
