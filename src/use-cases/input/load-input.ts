import type { WeightBasis } from '../../rules/facts/build-sheet.js';
import type { CargoItem, Load, Machine, ScaleTicket, TieDown } from '../../rules/facts/load.js';
import { PLAUSIBLE_LOAD } from '../../rules/facts/plausible.js';
import { weightOf } from '../../rules/units/force.js';
import { type Given, TEXT } from './given.js';
import type { Incoming } from './incoming.js';

export type LoadInput = Incoming<Load>;
export type MachineInput = Incoming<
  Omit<Machine, 'id' | 'replacesMachineId' | 'basis'> & { basis: WeightBasis | null }
>;

const WEIGHT_BASES = ['weighed', 'stated', 'assumed'] as const satisfies readonly WeightBasis[];
const CONTACTS = ['tires', 'rubber-tracks', 'steel-tracks', 'small-wheels', 'pads'] as const;
const REMEDIES = ['leave-off', 'swap', 'wash'] as const;
const WAYS = ['direct', 'over'] as const;

const MOST_CARGO_ITEMS = 40;
const MOST_AXLES_ON_A_TICKET = 6;
const MOST_KINDS_OF_TIE_DOWN = 20;

const R = PLAUSIBLE_LOAD;

/** How a weight is known must be said with the weight; with none it does not matter. */
export function readWeightBasis(given: Given, weightIsGiven: boolean, what: string): WeightBasis {
  const basis = given.choice('basis', `how ${what} is known`, WEIGHT_BASES);
  if (weightIsGiven && basis === null && !given.has('basis')) {
    given.refuse('basis', `Say how ${what} is known: ${WEIGHT_BASES.join(', ')}.`);
  }
  return basis ?? 'assumed';
}

/** Everything put on the deck. An empty list says that nobody told, not that the deck was empty. */
export function readLoad(given: Given): Load {
  return {
    cargo: given.list('cargo', 'cargo items', MOST_CARGO_ITEMS).map(readCargoItem),
    balancePointM: given.number('balancePointM', R.balancePoint),
    scale: given.has('scale') ? readScaleTicket(given.object('scale')) : null,
    hitchHeightM: given.number('hitchHeightM', R.hitchHeight),
    offCentreM: given.number('offCentreM', R.offCentre),
    tieDowns: given.has('tieDowns')
      ? given.list('tieDowns', 'kinds of tie-down', MOST_KINDS_OF_TIE_DOWN).map(readTieDown)
      : null,
  };
}

function readCargoItem(item: Given): CargoItem {
  return {
    name: item.needText('name', 'what this cargo item is', TEXT.name),
    massKg: item.needNumber('massKg', R.cargo),
    basis: readWeightBasis(item, item.has('massKg'), 'the weight of this cargo item'),
    machineId: item.id('machineId', 'the machine'),
    remedy: item.choice('remedy', 'how this item could be spared', REMEDIES),
    fromCouplerM: item.number('fromCouplerM', R.itemPlace),
  };
}

/** Which way one runs decides how much of its limit counts, so it must be said. */
function readTieDown(tieDown: Given): TieDown {
  return {
    count: tieDown.needNumber('count', R.tieDownCount),
    workingLoadKg: tieDown.number('workingLoadKg', R.workingLoad),
    way: tieDown.needChoice('way', 'which way they run', WAYS),
  };
}

/** A ticket that shows nothing is no ticket; one whose parts do not add up was misread. */
function readScaleTicket(scale: Given): ScaleTicket {
  const grossKg = scale.number('grossKg', R.scaleGross);
  const tongueN = scale.number('tongueN', R.scaleTongue);
  const axleN = scale.numbers('axleN', R.scaleAxle, MOST_AXLES_ON_A_TICKET);
  const shown = axleN !== null && axleN.length > 0 ? axleN : null;
  if (grossKg === null && tongueN === null && shown === null) {
    scale.refuse('grossKg', 'Enter at least one weight from the ticket, or leave the ticket out.');
  }
  const partsN = (tongueN ?? 0) + (shown ?? []).reduce((sum, axle) => sum + axle, 0);
  // Scales read to 20 lb and more; 2 % covers that and no slip of a digit. Our bound.
  if (grossKg !== null && partsN > weightOf(grossKg) * 1.02) {
    scale.refuse('grossKg', 'Read the ticket again: tongue and axles together weigh more than the whole trailer.');
  }
  return { grossKg, tongueN, axleN: shown };
}

/**
 * The load with the machine in it. A door may name the machine and list only what goes along with it; then the machine
 * stands first, at the weight the yard knows. Left out, a load with a forgotten machine would look safe.
 * Null when its weight is unknown and the rest is listed: the sum would be short and nobody would see it.
 */
export function withMachine(load: Load, machine: Machine | null): Load | null {
  if (machine === null || load.cargo.some((item) => item.machineId === machine.id)) return load;
  if (machine.massKg === null) return load.cargo.length === 0 || load.scale?.grossKg != null ? load : null;
  const { id, name, massKg, basis } = machine;
  return { ...load, cargo: [{ name, massKg, basis, machineId: id, remedy: null, fromCouplerM: null }, ...load.cargo] };
}

/** A machine as really hauled, without its id. */
export function readMachine(given: Given): Omit<Machine, 'id' | 'replacesMachineId'> {
  const massKg = given.number('massKg', R.machineMass);
  const lengthM = given.number('lengthM', R.machineLength);
  const balancePointM = given.number('balancePointM', R.machineBalance);
  if (lengthM !== null && balancePointM !== null && balancePointM > lengthM) {
    given.refuse('balancePointM', 'Enter a balance point within the length of the machine, measured from its front.');
  }
  const wheelbaseM = given.number('wheelbaseM', R.machineWheelbase);
  if (lengthM !== null && wheelbaseM !== null && wheelbaseM > lengthM) {
    given.refuse('wheelbaseM', 'Enter a wheelbase no longer than the machine.');
  }
  return {
    name: given.needText('name', "the machine's name", TEXT.name),
    massKg,
    basis: readWeightBasis(given, massKg !== null, "the machine's weight"),
    lengthM,
    widthM: given.number('widthM', R.machineWidth),
    balancePointM,
    contact: given.choice('contact', 'what the machine stands on', CONTACTS),
    contactCount: given.number('contactCount', R.contactCount),
    contactLengthM: given.number('contactLengthM', R.contactLength),
    contactWidthM: given.number('contactWidthM', R.contactWidth),
    wheelbaseM,
    clearanceM: given.number('clearanceM', R.clearance),
  };
}
