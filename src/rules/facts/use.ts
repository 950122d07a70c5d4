import type { CivilDate } from '../calendar/civil-date.js';
import type { Kilometres } from '../units/distance.js';
import type { Newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { Load } from './load.js';

export const ROADS = ['salt', 'gravel', 'water'] as const;
export type Road = (typeof ROADS)[number];

/** One haul done. */
export interface Trip {
  readonly id: string;
  readonly startedOn: CivilDate;
  readonly endedOn: CivilDate;
  readonly distanceKm: Kilometres | null;
  readonly machineId: string | null;
  readonly load: Load;
  /** What it went through; null when nobody said, which is not the same as none. */
  readonly roads: readonly Road[] | null;
  readonly jobId: string | null;
}

/** A hub meter or odometer reading, as shown on the meter. */
export interface MeterReading {
  readonly id: string;
  readonly takenOn: CivilDate;
  readonly shownKm: Kilometres;
  /**
   * `read`: an ordinary reading. `rolled-over`: the meter passed its last digit since the reading before,
   * by `meterSpanKm`. `replaced`: this is the first reading of a new meter.
   */
  readonly kind: 'read' | 'rolled-over' | 'replaced';
  readonly meterSpanKm: Kilometres | null;
}

/** A haul to come. */
export interface Job {
  readonly id: string;
  readonly name: string;
  readonly startsOn: CivilDate;
  readonly endsOn: CivilDate;
  readonly state: 'booked' | 'cancelled' | 'done';
  readonly distanceKm: Kilometres | null;
  readonly work: 'own' | 'hire';
  /** Whether the haul is in commerce, which some rules ask; null when nobody said. */
  readonly commercial: boolean | null;
  readonly machineId: string | null;
  readonly load: Load;
  readonly towVehicle: TowVehicle | null;
  readonly driver: Driver | null;
  /** The person who hauls, where it is one of the yard's people. */
  readonly haulerPersonId: string | null;
}

export interface TowVehicle {
  readonly id: string;
  readonly name: string;
  readonly gvwrKg: Kilograms | null;
  /** Weighed as it drives, without trailer. */
  readonly massKg: Kilograms | null;
  readonly gcwrKg: Kilograms | null;
  readonly hitchRatingKg: Kilograms | null;
  readonly hitchTongueN: Newtons | null;
  readonly ballSizeM: Metres | null;
  /** Height of the top of the ball above the ground, with the trailer's weight on it. */
  readonly ballHeightM: Metres | null;
}

export interface Driver {
  readonly name: string;
  /** Commercial licence class held; `none` is an answer, null is unknown. */
  readonly cdl: 'A' | 'B' | 'none' | null;
}
