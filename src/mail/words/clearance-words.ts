import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Clearance } from '../../rules/flags/clearance.js';
import type { Flag } from '../../rules/flags/flag.js';
import { boardNames } from './deck-words.js';
import { count, list, onDay, pounds, poundsOf, wheel } from './show.js';

interface Names {
  readonly asOf: CivilDate;
  readonly checkKinds: ReadonlyMap<string, { readonly name: string }>;
  readonly machines: ReadonlyMap<string, string>;
}

/** What would clear a flag, for a letter: `hub repack passed and recorded`, ways joined by `or`. */
export function clearanceWords({ clears }: Pick<Flag, 'clears'>, names: Names): string {
  return clears.map((one) => oneWay(one, names)).join(', or ');
}

function oneWay(clearance: Clearance, names: Names): string {
  switch (clearance.kind) {
    case 'no-more-until':
      return `no such trip again until ${onDay(clearance.clearsOn, names.asOf)}`;
    case 'lighter-trips':
      return `${count(clearance.trips, 'trip')} in a row with ${pounds(clearance.atMostKg)} or less`;
    case 'correct':
      return clearance.fact === 'job'
        ? 'the job changed'
        : `the ${clearance.fact.replace('-', ' ')} corrected, if it was entered wrong`;
    case 'replace-tires':
      return `new tires recorded at ${list(clearance.positions.map(wheel))}`;
    case 'inflate-tires':
      return `the right cold pressure recorded at ${list(clearance.positions.map(wheel))}`;
    case 'replace-boards':
      return `${boardNames(clearance.boards)} replaced and a probing passed since, or a new deck recorded`;
    case 'pass-check':
      return `${names.checkKinds.get(clearance.checkKindId)?.name ?? clearance.code} passed and recorded`;
    case 'carry-proof':
      return `the ${clearance.what} recorded as seen on the trailer`;
    case 'lift-hold':
      return 'the repair recorded, or the hold lifted by a named person';
    case 'machine-at-most':
      return `${names.machines.get(clearance.machineId) ?? 'the machine'} weighed, with what rides along, at ${pounds(clearance.massKg)} or less`;
    case 'other-trailer':
      return `another trailer for ${(clearance.machineId === null ? undefined : names.machines.get(clearance.machineId)) ?? 'these loads'}`;
    case 'payload-of-at-least':
      return `a rebuild that leaves ${pounds(clearance.payloadKg)} for cargo`;
    case 'part-of-at-least':
      return `${clearance.part.replace('-', ' ')} rated for ${poundsOf(clearance.ratingN)} or more`;
    case 'rear-support':
      return 'stabilizers or a knee brace recorded on the build sheet';
    case 'measure-again':
      return 'the next reading within its limit';
    case 'replace-part':
      return `a new ${clearance.part.replace('-', ' ')} recorded${clearance.position === null ? '' : ` at ${wheel(clearance.position)}`}`;
  }
}
