import type { CivilDate } from '../calendar/civil-date.js';
import type { Load } from '../facts/load.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import type { Trip } from '../facts/use.js';
import type { Flag } from '../flags/flag.js';
import { machineOf } from '../flags/usual-machine.js';
import { type TrailerOn, trailerOn } from '../history/trailer-on.js';
import { type Kilograms, kg } from '../units/mass.js';
import { portableLoad } from './portable-load.js';

/** Work that one trailer has done, or is booked for, and another may do better. */
export interface Work {
  readonly loads: readonly Load[];
  /** The days it was or will be out with them. */
  readonly days: readonly { readonly from: CivilDate; readonly to: CivilDate }[];
}

/**
 * The work behind a flag that says a trailer does another one's work; null for any other flag. Drift: the trips it
 * names. Outgrown: the machine with all that rides along, as the flag has it, on the days this trailer was out with it
 * or with the one before it.
 */
export function flaggedWork(facts: TrailerFacts, { evidence }: Flag, asOf: CivilDate): Work | null {
  const trailer = trailerOn(facts, asOf);
  if (evidence.kind === 'class-drift') return workOnTrips(trailer, new Set(evidence.tripIds));
  if (evidence.kind !== 'outgrown') return null;
  const { machineId, replacedMachineId, machineKg } = evidence;
  const machine = facts.machines.find((one) => one.id === machineId);
  const item = { name: machine?.name ?? 'the machine', massKg: machineKg, basis: machine?.basis ?? 'assumed' };
  const cargo = [{ ...item, machineId, remedy: null, fromCouplerM: null }];
  const hauls = [...trailer.trips, ...trailer.jobs.filter((job) => job.state === 'booked')].filter((haul) =>
    [machineId, replacedMachineId].includes(machineOf(haul)),
  );
  return {
    loads: [{ cargo, balancePointM: null, scale: null, hitchHeightM: null, offCentreM: null, tieDowns: null }],
    days: hauls.map((haul) => ('startedOn' in haul ? daysOf(haul) : { from: haul.startsOn, to: haul.endsOn })),
  };
}

/** The loads of these trips, as they would go onto another trailer. */
export function workOnTrips(trailer: TrailerOn, tripIds: ReadonlySet<string>): Work {
  const trips = trailer.trips.filter((trip) => tripIds.has(trip.id));
  return {
    loads: trips.map((trip) => portableLoad(trip.load, trailer.judge(trip)?.cargoKg ?? null)),
    days: trips.map(daysOf),
  };
}

/** The heaviest of these loads; null while nobody said what any of them weighs. */
export function heaviestLoad({ loads }: Pick<Work, 'loads'>): Kilograms | null {
  const known = loads.filter(({ cargo }) => cargo.length > 0);
  if (known.length === 0) return null;
  return kg(Math.max(...known.map(({ cargo }) => cargo.reduce<number>((sum, item) => sum + item.massKg, 0))));
}

/** First and last day of a trip. */
export function daysOf({ startedOn, endedOn }: Trip): Work['days'][number] {
  return { from: startedOn, to: endedOn };
}
