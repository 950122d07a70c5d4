import type { Machine } from '../facts/load.js';
import type { Job, Trip } from '../facts/use.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { exceeds } from '../units/compare.js';
import { type Kilograms, kg } from '../units/mass.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';
import { machineOf, mostCommon, successorOf } from './usual-machine.js';

/**
 * The machine this trailer usually carries, or the one that took over its work, no longer fits the payload. Usually the
 * machine changed, not the trailer (job card section 5, a proposal). Severity `limit`.
 */
export function outgrownFlags({ trailer }: FlagContext): readonly Flag[] {
  const payloadKg = trailer.ratingsOn(trailer.asOf)?.payloadKg ?? null;
  const usual = usualMachine(trailer);
  if (payloadKg === null || usual === null) return [];
  const machineId = successorOf(usual, trailer.facts.machines);
  const machine = trailer.facts.machines.find((one) => one.id === machineId);
  const machineKg = machine === undefined ? null : asHauledKg(machine, usual, trailer);
  if (machineKg === null || !exceeds(machineKg, payloadKg)) return [];
  return [
    {
      key: `outgrown:${machineId}`,
      rule: 'outgrown',
      severity: 'limit',
      since: trailer.trips.find((trip) => machineOf(trip) === machineId)?.startedOn ?? null,
      evidence: {
        kind: 'outgrown',
        machineId,
        machineKg,
        payloadKg,
        overKg: kg(machineKg - payloadKg),
        replacedMachineId: machineId === usual ? null : usual,
      },
      clears: [
        { kind: 'other-trailer', machineId },
        { kind: 'machine-at-most', machineId, massKg: payloadKg },
        { kind: 'payload-of-at-least', payloadKg: machineKg },
      ],
    },
  ];
}

/** By the last trips; where none names a machine, by the jobs booked. */
function usualMachine(trailer: TrailerOn): string | null {
  const trips = trailer.trips.slice(-trailer.facts.policy.driftTrips);
  return mostCommon(trips.map(machineOf)) ?? mostCommon(trailer.jobs.map(machineOf));
}

/**
 * What goes on the deck with this machine: all the cargo of its heaviest booked job, else of its last trip; else its
 * own weight and what last rode along with the machine it replaced. Once it was weighed, that is what it weighs,
 * whatever an earlier haul was entered with.
 */
function asHauledKg(machine: Machine, usual: string, trailer: TrailerOn): Kilograms | null {
  const jobs = trailer.jobs.filter((job) => machineOf(job) === machine.id && job.load.cargo.length > 0);
  if (jobs.length > 0) return kg(Math.max(...jobs.map((job) => cargoKg(job, machine))));
  const lastTrip = trailer.trips.findLast((trip) => machineOf(trip) === machine.id && trip.load.cargo.length > 0);
  if (lastTrip !== undefined) return cargoKg(lastTrip, machine);
  if (machine.massKg === null) return null;
  const before = trailer.trips.findLast((trip) => machineOf(trip) === usual);
  const besides = before?.load.cargo.filter((item) => item.machineId !== usual) ?? [];
  return kg(besides.reduce<number>((sum, item) => sum + item.massKg, machine.massKg));
}

function cargoKg(haul: Trip | Job, machine: Machine): Kilograms {
  const weighedKg = machine.basis === 'weighed' ? machine.massKg : null;
  return kg(
    haul.load.cargo.reduce<number>(
      (sum, item) => sum + (item.machineId === machine.id ? (weighedKg ?? item.massKg) : item.massKg),
      0,
    ),
  );
}
