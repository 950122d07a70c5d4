import { type StandingMachine, standingMass } from '../deck/contact-load.js';
import { checkPlank, type PlankCheck } from '../deck/plank-check.js';
import type { BuildSheet } from '../facts/build-sheet.js';
import type { Load, Machine } from '../facts/load.js';
import type { Metres } from '../units/length.js';

/** One machine of a haul, held against the planks it stands on. */
export interface MachineOnDeck {
  readonly machineId: string;
  readonly name: string;
  readonly machine: StandingMachine;
  readonly check: PlankCheck;
}

interface Haul {
  readonly machineId: string | null;
  readonly load: Load;
}

/**
 * Every machine of a haul against the planks of a build. What belongs to a machine stands on it, but for what can be
 * left off: that lies on the deck beside it. A machine the haul names but did not list counts as it is on file.
 */
export function machinesOnDeck(
  haul: Haul,
  { deck }: Pick<BuildSheet, 'deck'>,
  machines: readonly Machine[],
  lostM: Metres,
): readonly MachineOnDeck[] {
  const ids = new Set(haul.load.cargo.flatMap((item) => item.machineId ?? []));
  if (haul.machineId !== null) ids.add(haul.machineId);
  return [...ids].sort().map((machineId) => {
    const machine = machines.find((one) => one.id === machineId);
    const name = machine?.name ?? haul.load.cargo.find((item) => item.machineId === machineId)?.name ?? machineId;
    const onDeck = standing(machine ?? UNKNOWN, haul.load, machineId);
    return { machineId, name, machine: onDeck, check: checkPlank(deck, onDeck, lostM) };
  });
}

/** A machine that is not on file. */
const UNKNOWN: StandingMachine = {
  massKg: null,
  contact: null,
  contactCount: null,
  contactLengthM: null,
  contactWidthM: null,
};

function standing(machine: StandingMachine, load: Load, machineId: string): StandingMachine {
  const { contact, contactCount, contactLengthM, contactWidthM } = machine;
  const own = load.cargo.filter((item) => item.machineId === machineId && item.remedy !== 'leave-off');
  const [first, ...rest] = own.map((item) => item.massKg);
  const massKg = first === undefined ? machine.massKg : standingMass(first, rest);
  return { massKg, contact, contactCount, contactLengthM, contactWidthM };
}
