import { z } from 'zod';
import { day } from '../../rules/calendar/civil-date.js';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { Load, Machine } from '../../rules/facts/load.js';
import type { Part } from '../../rules/facts/part.js';
import type { TowVehicle } from '../../rules/facts/use.js';
import type { LoadLimits } from '../../rules/load/load-limits.js';
import { loadLimits } from '../../rules/trailer/load-limits.js';
import { wheelPositions } from '../../rules/trailer/wheel-positions.js';
import { readBuildSheet } from '../input/build-sheet-input.js';
import { Given } from '../input/given.js';
import { readLoad, readMachine, withMachine } from '../input/load-input.js';
import { readPart } from '../input/part-input.js';
import { readTowVehicle } from '../input/tow-vehicle-input.js';
import { pressure, words } from './values.js';

/**
 * A whole fact that goes in, read by the reader every other door uses, with its ranges and its words for what is wrong.
 * Its fields are those of the same fact in the API's description; whatever is left out is unknown.
 */
function read<Fact>(what: string, reader: (given: Given) => Fact) {
  return z
    .looseObject({})
    .describe(`${what}; fields as the API has them, what is left out is unknown.`)
    .transform((value, context) => {
      const given = Given.from(value);
      const fact = reader(given);
      for (const { field, message } of given.problems) {
        context.addIssue({ code: 'custom', message, path: stepsOf(field), input: value });
      }
      return fact;
    });
}

/** `axles[0].gawrKg` as steps; the root of a fact has none. */
function stepsOf(field: string): (string | number)[] {
  if (field === 'input') return [];
  return field.split(/[.[\]]+/).flatMap((step) => (step === '' ? [] : [/^\d+$/.test(step) ? Number(step) : step]));
}

/** Before any day asked about, so that what is given holds on it. */
const LONG_AGO = day('1970-01-01');
/** After any day asked about: no date code is too young here. */
const LAST_DAY = day('2099-12-31');
/** The one machine of a haul. */
const MACHINE_ID = '00000000-0000-4000-8000-000000000001';

export const build = read(
  'The build sheet',
  (given): BuildSheet => ({
    ...readBuildSheet(given),
    ...{ id: 'build', effectiveFrom: LONG_AGO },
  }),
);

export const tires = z
  .array(
    read('One tire as fitted', (given): Part => {
      const part = readPart(given, null, LAST_DAY);
      if (part.kind !== 'tire') given.refuse('kind', 'Give tires only here: their kind is "tire".');
      const { kind, position, fittedOn, tire, bearings, costCents } = part;
      const id = `tire ${position}`;
      return { id, kind, position, fittedOn, tire, bearings, costCents, removedOn: null, removedFor: null };
    }),
  )
  .max(30)
  .describe('The tires fitted, by their positions.');

export const coldPressures = z
  .array(
    z.strictObject({
      position: words('Wheel position'),
      coldKpa: pressure('Cold pressure found in it', z.number().min(0).max(2_000)),
    }),
  )
  .max(30)
  .describe('Where none was found, the plate’s or the sidewall’s is taken.');

export const load = read('What is carried', readLoad);
export const towVehicle = read('What tows it', (given): TowVehicle => ({ id: 'tow', ...readTowVehicle(given) }));
export const machine = read(
  'The machine',
  (given): Machine => ({
    ...readMachine(given),
    ...{ id: MACHINE_ID, replacesMachineId: null },
  }),
);

/** A build with what stands on its wheels, and what tows it. */
export interface Rig {
  readonly build: BuildSheet;
  readonly tires: readonly Part[];
  readonly coldPressures: readonly z.output<typeof coldPressures>[number][];
  readonly towVehicle: TowVehicle | null;
}

/** Throws RangeError for a wheel position the build does not have: its tire would be passed over in silence. */
export function refuseStrayWheels(build: BuildSheet, places: readonly (string | null)[], field: string): void {
  const known = wheelPositions(build);
  const stray = places.find((place) => place !== null && place !== 'spare' && !known.includes(place));
  if (stray === undefined) return;
  const instead = known.length === 0 ? 'give the axles of the build' : `use one of ${known.join(', ')}`;
  throw new RangeError(`"${field}" name a position ${stray} that this build does not have: ${instead}.`);
}

export function limitsOf({ build, tires, coldPressures, towVehicle }: Rig): LoadLimits {
  const found = coldPressures.map(({ position, coldKpa }) => [position.toUpperCase(), coldKpa] as const);
  refuseStrayWheels(
    build,
    tires.map(({ position }) => position),
    'tires',
  );
  refuseStrayWheels(
    build,
    found.map(([position]) => position),
    'coldPressures',
  );
  return loadLimits({ build, tires, coldPressures: new Map(found), towVehicle });
}

/** The load with the machine in it; throws RangeError where its weight is unknown and would be missing from the sum. */
export function loaded(given: Load, machine: Machine | null): Load {
  const whole = withMachine(given, machine);
  if (whole === null) throw new RangeError('"machine": give its weight, or leave out the rest of the cargo.');
  return whole;
}
