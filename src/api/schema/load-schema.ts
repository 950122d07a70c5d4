import { z } from 'zod';
import { PLAUSIBLE_BUILD, PLAUSIBLE_LOAD, PLAUSIBLE_TOW_VEHICLE } from '../../rules/facts/plausible.js';
import { TEXT } from '../../use-cases/input/given.js';
import { DAY, ID, known, maybe, quantity, text } from './values.js';

const R = PLAUSIBLE_LOAD;

export const WEIGHT_BASIS = z
  .enum(['weighed', 'stated', 'assumed'])
  .describe('How the weight is known. It must be said with every weight.');

const CARGO_OPTIONAL = {
  machineId: ID,
  remedy: z.enum(['leave-off', 'swap', 'wash']).describe('How this item could be spared, if it can.'),
  fromCouplerM: quantity(R.itemPlace),
};
const CARGO_NEEDED = {
  name: text(TEXT.name, 'What it is.'),
  massKg: quantity(R.cargo),
  basis: WEIGHT_BASIS,
};
const SCALE = {
  grossKg: quantity(R.scaleGross),
  tongueN: quantity(R.scaleTongue),
  axleN: z.array(quantity(R.scaleAxle)).max(6).describe("The ticket's axle weights from the front, N."),
};

const TIE_DOWN_NEEDED = {
  count: quantity(R.tieDownCount),
  way: z
    .enum(['direct', 'over'])
    .describe('direct: from the trailer to the cargo. over: over the cargo, from the trailer to the trailer.'),
};
const TIE_DOWN_OPTIONAL = {
  workingLoadKg: quantity(R.workingLoad).describe(
    'Working load limit of one, the least of its parts and anchor points, kg.',
  ),
};
const RIDING = {
  hitchHeightM: quantity(R.hitchHeight),
  offCentreM: quantity(R.offCentre).describe(
    "How far the cargo balances from the trailer's middle line, right positive, m.",
  ),
};
const TIED = 'What ties it down; null when nobody said, which is not the same as nothing.';

/** Everything on the deck, as answered. */
export const LOAD = z
  .object({
    cargo: z
      .array(z.object({ ...CARGO_NEEDED, ...known(CARGO_OPTIONAL) }))
      .describe('Empty when nobody told what was on the deck.'),
    ...known({
      balancePointM: quantity(R.balancePoint),
      scale: z.object(known(SCALE)),
      ...RIDING,
      tieDowns: z.array(z.object({ ...TIE_DOWN_NEEDED, ...known(TIE_DOWN_OPTIONAL) })).describe(TIED),
    }),
  })
  .meta({ id: 'Load' });

/** Everything on the deck, as it comes in. */
export const LOAD_BODY = z
  .strictObject(
    maybe({
      cargo: z.array(z.strictObject({ ...CARGO_NEEDED, ...maybe(CARGO_OPTIONAL) })).max(40),
      balancePointM: quantity(R.balancePoint),
      scale: z.strictObject(maybe(SCALE)),
      ...RIDING,
      tieDowns: z
        .array(z.strictObject({ ...TIE_DOWN_NEEDED, ...maybe(TIE_DOWN_OPTIONAL) }))
        .max(20)
        .describe(TIED),
    }),
  )
  .meta({ id: 'LoadBody' });

const MACHINE_OPTIONAL = {
  massKg: quantity(R.machineMass),
  lengthM: quantity(R.machineLength),
  widthM: quantity(R.machineWidth),
  balancePointM: quantity(R.machineBalance),
  contact: z
    .enum(['tires', 'rubber-tracks', 'steel-tracks', 'small-wheels', 'pads'])
    .describe('What the machine stands on.'),
  contactCount: quantity(R.contactCount),
  contactLengthM: quantity(R.contactLength),
  contactWidthM: quantity(R.contactWidth),
  wheelbaseM: quantity(R.machineWheelbase).describe(
    'Between the middles of the front and the rear wheels, or the length of track on the ground, m.',
  ),
  clearanceM: quantity(R.clearance),
};
const MACHINE_NAME = { name: text(TEXT.name, "The machine's name.") };

export const MACHINE = z
  .object({
    id: ID,
    ...MACHINE_NAME,
    ...known(MACHINE_OPTIONAL),
    basis: WEIGHT_BASIS,
    replacesMachineId: ID.nullable().describe('The machine whose work this one took over.'),
  })
  .meta({ id: 'Machine' });

export const KEPT_MACHINE = MACHINE.extend({ retiredOn: DAY.nullable() }).meta({ id: 'KeptMachine' });

export const MACHINE_BODY = z
  .strictObject({ ...MACHINE_NAME, ...maybe(MACHINE_OPTIONAL), basis: WEIGHT_BASIS.nullish() })
  .meta({ id: 'MachineBody' });

export const REPLACE_MACHINE_BODY = z.strictObject({ replacedOn: DAY, by: MACHINE_BODY });

const V = PLAUSIBLE_TOW_VEHICLE;
const TOW_VEHICLE_OPTIONAL = {
  gvwrKg: quantity(V.gvwr),
  massKg: quantity(V.mass),
  gcwrKg: quantity(V.gcwr),
  hitchRatingKg: quantity(V.hitchRating),
  hitchTongueN: quantity(V.hitchTongue),
  ballSizeM: quantity(PLAUSIBLE_BUILD.ballSize),
  ballHeightM: quantity(V.ballHeight).describe("Height of the top of the ball with the trailer's weight on it, m."),
};
const TOW_VEHICLE_NAME = { name: text(TEXT.name, "The tow vehicle's name.") };

export const TOW_VEHICLE = z
  .object({ id: ID, ...TOW_VEHICLE_NAME, ...known(TOW_VEHICLE_OPTIONAL) })
  .meta({ id: 'TowVehicle' });

export const TOW_VEHICLE_BODY = z
  .strictObject({ ...TOW_VEHICLE_NAME, ...maybe(TOW_VEHICLE_OPTIONAL) })
  .meta({ id: 'TowVehicleBody' });
