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
  /** Height of the coupler above the ground as it rode. */
  readonly hitchHeightM: Metres | null;
  /** How far the cargo's balance point sits from the trailer's middle line; right is positive. */
  readonly offCentreM: Metres | null;
  /** What ties it down; null when nobody said, which is not the same as nothing. */
  readonly tieDowns: readonly TieDown[] | null;
}

/** Tie-downs of one kind. */
export interface TieDown {
  readonly count: number;
  /** Working load limit of one, the least of its parts and anchor points. */
  readonly workingLoadKg: Kilograms | null;
  /** `direct`: from the trailer to the cargo. `over`: from the trailer over the cargo to the trailer again. */
  readonly way: 'direct' | 'over';
}

export interface CargoItem {
  readonly name: string;
  readonly massKg: Kilograms;
  readonly basis: WeightBasis;
  readonly machineId: string | null;
  /** How this item could be spared, if it can. Items are offered in the order they stand. */
  readonly remedy: 'leave-off' | 'swap' | 'wash' | null;
  /** Where this item's own balance point sits, rearward from the coupler. */
  readonly fromCouplerM: Metres | null;
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
  /** Wheels, tracks or pads that stand on the deck. */
  readonly contactCount: number | null;
  /** Of one wheel, track or pad on the deck, along the trailer and across it. */
  readonly contactLengthM: Metres | null;
  readonly contactWidthM: Metres | null;
  /** Between the middles of the front and the rear wheels, or the length of track on the ground. */
  readonly wheelbaseM: Metres | null;
  /** Under the lowest part between the wheels or tracks. */
  readonly clearanceM: Metres | null;
  /** The machine whose work this one took over. */
  readonly replacesMachineId: string | null;
}
