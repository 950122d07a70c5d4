import type { Newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { WeightBasis } from './build-sheet.js';

/** Everything put on the deck for one trip, and what a scale said of it. */
export interface Load {
  readonly cargo: readonly CargoItem[];
  /** Where the cargo's balance point sits, rearward from the coupler. */
  readonly balancePointM: Metres | null;
  readonly scale: ScaleTicket | null;
}

export interface CargoItem {
  readonly name: string;
  readonly massKg: Kilograms;
  readonly basis: WeightBasis;
  readonly machineId: string | null;
  /** How this item could be spared, if it can. Items are offered in the order they stand. */
  readonly remedy: 'leave-off' | 'swap' | 'wash' | null;
}

/** A weighing of the loaded trailer. What the ticket does not show is null. */
export interface ScaleTicket {
  /** Whole trailer, hitch weight included. */
  readonly grossKg: Kilograms | null;
  readonly tongueN: Newtons | null;
  /** One entry per axle from the front. */
  readonly axleN: readonly Newtons[] | null;
}

/** What gets carried, as really hauled. */
export interface Machine {
  readonly id: string;
  readonly name: string;
  readonly massKg: Kilograms | null;
  readonly basis: WeightBasis;
  readonly lengthM: Metres | null;
  readonly widthM: Metres | null;
  /** Of the machine alone, rearward from its front. */
  readonly balancePointM: Metres | null;
  readonly contact: 'tires' | 'rubber-tracks' | 'steel-tracks' | 'small-wheels' | 'pads' | null;
  /** The machine whose work this one took over. */
  readonly replacesMachineId: string | null;
}
