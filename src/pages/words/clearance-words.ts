import type { Clearance, StrongerPart } from '../../rules/flags/clearance.js';
import type { Flag } from '../../rules/flags/flag.js';
import { showCount, showDate, showForce, showMass } from '../components/show-quantity.js';
import { listWords, positionWords } from './build-words.js';
import { boardNames } from './deck-words.js';
import { measuredUnit } from './measured-words.js';

interface Names {
  readonly machines: ReadonlyMap<string, string>;
  readonly checkKinds: ReadonlyMap<string, string>;
}

const FACT_WORDS: Readonly<Record<Extract<Clearance, { kind: 'correct' }>['fact'], string>> = {
  trip: 'the trip is corrected, if it was entered wrong',
  'build-sheet': 'the build sheet is corrected, if it was entered wrong',
  machine: 'the machine is corrected, if it was entered wrong',
  part: 'the part is corrected, if it was entered wrong',
  reading: 'the reading is corrected, if it was entered wrong',
  job: 'the job is changed',
};

const PART_WORDS: Readonly<Record<StrongerPart, string>> = {
  jack: 'a jack',
  axle: 'axles',
  tire: 'tires',
  coupler: 'a coupler',
  frame: 'a frame',
  plank: 'planks',
  ramp: 'ramps',
  'tie-down': 'tie-downs',
  'hub-bearings': 'hub bearings',
  'brake-lining': 'brake linings',
  'tow-hitch': 'a hitch on the tow vehicle',
};

/** What would clear a flag, in a sentence: `Clears when …, or when …`. */
export function clearanceWords({ clears }: Pick<Flag, 'clears'>, names: Names): string {
  return `Clears when ${clears.map((one) => oneWay(one, names)).join('; or when ')}.`;
}

function oneWay(clearance: Clearance, names: Names): string {
  switch (clearance.kind) {
    case 'no-more-until':
      return `no further trip shows the same until ${showDate(clearance.clearsOn)}`;
    case 'lighter-trips':
      return clearance.trips === 1
        ? `one more trip carries no more than ${showMass(clearance.atMostKg)}`
        : `${showCount(clearance.trips, 'trip')} in a row carry no more than ${showMass(clearance.atMostKg)} each`;
    case 'correct':
      return FACT_WORDS[clearance.fact];
    case 'replace-tires':
      return `new tires are recorded at ${places(clearance.positions)}`;
    case 'inflate-tires':
      return `the right cold pressure is recorded at ${places(clearance.positions)}`;
    case 'replace-boards':
      return `${boardNames(clearance.boards)} replaced and a probing passed since, or a new deck is recorded`;
    case 'pass-check':
      return `${names.checkKinds.get(clearance.checkKindId) ?? clearance.code} is passed and recorded`;
    case 'carry-proof':
      return `the ${clearance.what} is recorded as seen on the trailer`;
    case 'lift-hold':
      return 'the repair is recorded, or a named person lifts the hold';
    case 'machine-at-most':
      return `${names.machines.get(clearance.machineId) ?? 'the machine'} is weighed, with all that rides along, at no more than ${showMass(clearance.massKg)}`;
    case 'other-trailer':
      return `another trailer takes ${machineName(clearance.machineId, names)}`;
    case 'payload-of-at-least':
      return `the trailer is rebuilt so that its weakest rating leaves ${showMass(clearance.payloadKg)} for cargo`;
    case 'part-of-at-least':
      return `${PART_WORDS[clearance.part]} rated for at least ${showForce(clearance.ratingN)} ${isPlural(clearance.part) ? 'are' : 'is'} fitted and recorded`;
    case 'rear-support':
      return 'stabilizers or a knee brace under the tail are recorded on the build sheet';
    case 'measure-again':
      return `the next reading of ${measuredUnit(clearance.quantity).what} is within its limit`;
    case 'replace-part':
      return `new ${PART_WORDS[clearance.part].replace(/^an? /, '')}${clearance.position === null ? '' : ` at ${positionWords(clearance.position)}`} ${isPlural(clearance.part) ? 'are' : 'is'} recorded`;
  }
}

function machineName(machineId: string | null, names: Names): string {
  return (machineId === null ? null : names.machines.get(machineId)) ?? 'these loads';
}

function isPlural(part: StrongerPart): boolean {
  return PART_WORDS[part].endsWith('s');
}

function places(positions: readonly string[]): string {
  return listWords(positions.map(positionWords));
}
