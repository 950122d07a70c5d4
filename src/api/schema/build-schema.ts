import { z } from 'zod';
import {
  BODIES,
  BRAKES,
  DECK_MATERIALS,
  FENDERS,
  FRAME_SECTIONS,
  HITCHES,
  RAMPS,
  SUSPENSIONS,
  TONGUES,
  WOOD_GRADES,
  WOODS,
} from '../../rules/facts/build-sheet.js';
import { PLAUSIBLE_BUILD } from '../../rules/facts/plausible.js';
import { TEXT } from '../../use-cases/input/given.js';
import { WEIGHT_BASIS } from './load-schema.js';
import { DAY, ID, known, maybe, quantity, text } from './values.js';

const R = PLAUSIBLE_BUILD;

const PLATE = { gvwrKg: quantity(R.gvwr), coldPressureKpa: quantity(R.plateColdPressure) };
const EMPTY = { massKg: quantity(R.emptyMass), tongueN: quantity(R.emptyTongue) };
const AXLE = {
  gawrKg: quantity(R.gawr),
  ratingKg: quantity(R.axleRating),
  fromCouplerM: quantity(R.fromCoupler),
  springRateNPerM: quantity(R.springRate).describe(
    'Spring rate of the whole axle, both wheels together, newtons per metre of travel at the wheels.',
  ),
  trackM: quantity(R.track).describe('Between the middles of the tires on the two sides, m.'),
  brakes: z.enum(BRAKES),
  lubricant: z.enum(['grease', 'oil']),
};
const HITCH = {
  kind: z.enum(HITCHES),
  couplerRatingKg: quantity(R.couplerRating),
  couplerTongueN: quantity(R.couplerTongue),
  ballSizeM: quantity(R.ballSize),
  heightAdjustable: z.boolean().describe('Whether the coupler height can be changed.'),
  levelHeightM: quantity(R.levelHeight),
  chainBreakKg: quantity(R.chainBreak),
  breakaway: z.boolean().describe('Whether there is a breakaway switch.'),
};
const DECK = {
  material: z.enum(DECK_MATERIALS),
  lengthM: quantity(R.deckLength),
  widthM: quantity(R.deckWidth),
  heightM: quantity(R.deckHeight),
  tiltLengthM: quantity(R.tiltLength),
  tiltDrive: z.enum(['damping-cylinder', 'power-unit']),
  pivotFromCouplerM: quantity(R.pivot),
  frontFromCouplerM: quantity(R.deckFront),
  plankThicknessM: quantity(R.plankThickness),
  plankWidthM: quantity(R.plankWidth),
  crossmemberSpacingM: quantity(R.crossmemberSpacing),
  boardCount: quantity(R.boardCount),
  wood: z.enum(WOODS).describe('Species of the boards.'),
  woodGrade: z.enum(WOOD_GRADES).describe('Grade of visually graded lumber, as stamped on the board.'),
  treated: z.boolean().describe('Whether the wood is pressure treated against decay.'),
};
const FRAME = {
  section: z.enum(FRAME_SECTIONS),
  depthM: quantity(R.frameDepth),
  tongue: z.enum(TONGUES),
  bedDepthM: quantity(R.bedDepth),
};
const REAR = {
  dovetailM: quantity(R.dovetail),
  ramps: z.enum(RAMPS),
  rampLengthM: quantity(R.rampLength),
  rampRatingKg: quantity(R.rampRating),
  stabilizers: z.boolean().describe('Whether there are rear stabilizer jacks.'),
};
const FENDER = { kind: z.enum(FENDERS), clearWidthM: quantity(R.fenderClearWidth) };
const JACKS = {
  count: quantity(R.jackCount),
  liftKg: quantity(R.jackLift),
  supportKg: quantity(R.jackSupport),
  fromCouplerM: quantity(R.jackPlace),
};
const WHEELS = {
  boltPattern: text(TEXT.mark, 'Bolt pattern, as people say it.'),
  nutTorqueNm: quantity(R.nutTorque),
};
const WHEELS_PER_SIDE = z.union([z.literal(1), z.literal(2)]).describe('2 where wheels are dual.');

/** One version of a build sheet, as answered. Lengths along the trailer are measured rearward from the coupler. */
export const BUILD = z
  .object({
    id: ID,
    effectiveFrom: DAY.describe('The day from which the trailer is built so.'),
    ...known({ body: z.enum(BODIES), suspension: z.enum(SUSPENSIONS) }),
    plate: z.object(known(PLATE)),
    empty: z.object({ ...known(EMPTY), basis: WEIGHT_BASIS }),
    axles: z.array(
      z.object({ number: z.int().describe('From the front.'), ...known(AXLE), wheelsPerSide: WHEELS_PER_SIDE }),
    ),
    hitch: z.object(known(HITCH)),
    deck: z.object(known(DECK)),
    frame: z.object(known(FRAME)),
    rear: z.object(known(REAR)),
    fenders: z.object(known(FENDER)),
    jacks: z.object(known(JACKS)),
    wheels: z.object(known(WHEELS)),
  })
  .meta({ id: 'BuildSheet' });

/** A whole build sheet as it comes in; what is left out is unknown. */
export const BUILD_BODY = z
  .strictObject(
    maybe({
      body: z.enum(BODIES),
      suspension: z.enum(SUSPENSIONS),
      plate: z.strictObject(maybe(PLATE)),
      empty: z.strictObject(maybe({ ...EMPTY, basis: WEIGHT_BASIS })),
      axles: z.array(z.strictObject(maybe({ number: z.int(), ...AXLE, wheelsPerSide: WHEELS_PER_SIDE }))).max(6),
      hitch: z.strictObject(maybe(HITCH)),
      deck: z.strictObject(maybe(DECK)),
      frame: z.strictObject(maybe(FRAME)),
      rear: z.strictObject(maybe(REAR)),
      fenders: z.strictObject(maybe(FENDER)),
      jacks: z.strictObject(maybe(JACKS)),
      wheels: z.strictObject(maybe(WHEELS)),
    }),
  )
  .meta({ id: 'BuildSheetBody' });

export const REVISE_BUILD_BODY = z.strictObject({
  build: BUILD_BODY,
  effectiveFrom: DAY.nullish().describe('The day from which it is built so; today when left out.'),
});

export const CORRECT_BUILD_BODY = z.strictObject({
  build: BUILD_BODY,
  effectiveFrom: DAY.nullish().describe('Left out: as the version that is mended.'),
});
