import {
  type Axle,
  BODIES,
  BRAKES,
  type BuildSheet,
  DECK_MATERIALS,
  type Deck,
  FENDERS,
  FRAME_SECTIONS,
  HITCHES,
  type HitchBuild,
  RAMPS,
  SUSPENSIONS,
  TONGUES,
  WOOD_GRADES,
  WOODS,
} from '../../rules/facts/build-sheet.js';
import { PLAUSIBLE_BUILD } from '../../rules/facts/plausible.js';
import { weightOf } from '../../rules/units/force.js';
import { type Given, TEXT } from './given.js';
import type { Incoming } from './incoming.js';
import { readWeightBasis } from './load-input.js';

/** A build as it comes in, without the id it will get and the day it holds from. */
export type BuildSheetInput = Incoming<
  Omit<BuildSheet, 'id' | 'effectiveFrom' | 'empty' | 'axles'> & {
    /** `basis` may be left out with an unknown weight. */
    empty: { massKg: BuildSheet['empty']['massKg']; basis: BuildSheet['empty']['basis'] | null } & Pick<
      BuildSheet['empty'],
      'tongueN'
    >;
    /** Axles stand from the front; the number may be left out. One wheel a side unless said. */
    axles: readonly (Omit<Axle, 'number' | 'wheelsPerSide'> & { number: number | null; wheelsPerSide: 1 | 2 | null })[];
  }
>;

/** More axles than any trailer this is for. */
const MOST_AXLES = 6;

const R = PLAUSIBLE_BUILD;

/** Reads every field of a build sheet; what is left out is unknown. */
export function readBuildSheet(given: Given): Omit<BuildSheet, 'id' | 'effectiveFrom'> {
  const plate = given.object('plate');
  const frame = given.object('frame');
  const rear = given.object('rear');
  const fenders = given.object('fenders');
  const jacks = given.object('jacks');
  const wheels = given.object('wheels');
  return {
    body: given.choice('body', 'the body', BODIES),
    plate: {
      gvwrKg: plate.number('gvwrKg', R.gvwr),
      coldPressureKpa: plate.number('coldPressureKpa', R.plateColdPressure),
    },
    empty: readEmptyWeight(given.object('empty')),
    axles: readAxles(given),
    suspension: given.choice('suspension', 'the suspension', SUSPENSIONS),
    hitch: readHitch(given.object('hitch')),
    deck: readDeck(given.object('deck')),
    frame: {
      section: frame.choice('section', 'the section of the main rail', FRAME_SECTIONS),
      depthM: frame.number('depthM', R.frameDepth),
      tongue: frame.choice('tongue', 'how far back the tongue runs', TONGUES),
      bedDepthM: frame.number('bedDepthM', R.bedDepth),
    },
    rear: {
      dovetailM: rear.number('dovetailM', R.dovetail),
      ramps: rear.choice('ramps', 'the ramps', RAMPS),
      rampLengthM: rear.number('rampLengthM', R.rampLength),
      rampRatingKg: rear.number('rampRatingKg', R.rampRating),
      stabilizers: rear.flag('stabilizers', 'are there rear stabilizer jacks?'),
    },
    fenders: {
      kind: fenders.choice('kind', 'the fenders', FENDERS),
      clearWidthM: fenders.number('clearWidthM', R.fenderClearWidth),
    },
    jacks: {
      count: jacks.number('count', R.jackCount),
      liftKg: jacks.number('liftKg', R.jackLift),
      supportKg: jacks.number('supportKg', R.jackSupport),
      fromCouplerM: jacks.number('fromCouplerM', R.jackPlace),
    },
    wheels: {
      boltPattern: wheels.text('boltPattern', 'the bolt pattern', TEXT.mark),
      nutTorqueNm: wheels.number('nutTorqueNm', R.nutTorque),
    },
  };
}

function readEmptyWeight(empty: Given): BuildSheet['empty'] {
  const massKg = empty.number('massKg', R.emptyMass);
  const tongueN = empty.number('tongueN', R.emptyTongue);
  const basis = readWeightBasis(empty, massKg !== null, 'the empty weight');
  if (massKg !== null && tongueN !== null && tongueN > weightOf(massKg)) {
    empty.refuse('tongueN', 'Enter an empty tongue weight no greater than the empty weight of the whole trailer.');
  }
  return { massKg, basis, tongueN };
}

function readAxles(given: Given): readonly Axle[] {
  const axles = given.list('axles', 'axles', MOST_AXLES).map((axle, place): Axle => {
    const number = axle.number('number', {
      what: "the axle's number",
      low: 1,
      high: MOST_AXLES,
      unit: null,
      whole: true,
    });
    if (number !== null && number !== place + 1) {
      axle.refuse('number', `Number the axles from the front without gaps: this one is ${place + 1}.`);
    }
    const wheels = axle.number('wheelsPerSide', {
      what: 'the wheels on each side',
      low: 1,
      high: 2,
      unit: null,
      whole: true,
    });
    return {
      number: place + 1,
      gawrKg: axle.number('gawrKg', R.gawr),
      ratingKg: axle.number('ratingKg', R.axleRating),
      fromCouplerM: axle.number('fromCouplerM', R.fromCoupler),
      springRateNPerM: axle.number('springRateNPerM', R.springRate),
      trackM: axle.number('trackM', R.track),
      brakes: axle.choice('brakes', "this axle's brakes", BRAKES),
      lubricant: axle.choice('lubricant', "the hubs' lubricant", ['grease', 'oil'] as const),
      wheelsPerSide: wheels === 2 ? 2 : 1,
    };
  });
  axles.forEach((axle, place) => {
    const ahead = axles[place - 1]?.fromCouplerM ?? null;
    if (axle.fromCouplerM !== null && ahead !== null && axle.fromCouplerM <= ahead) {
      given.refuse(
        `axles[${place}].fromCouplerM`,
        `Enter a distance greater than that of axle ${place}; axles are counted from the front.`,
      );
    }
  });
  return axles;
}

function readHitch(hitch: Given): HitchBuild {
  return {
    kind: hitch.choice('kind', 'the hitch', HITCHES),
    couplerRatingKg: hitch.number('couplerRatingKg', R.couplerRating),
    couplerTongueN: hitch.number('couplerTongueN', R.couplerTongue),
    ballSizeM: hitch.number('ballSizeM', R.ballSize),
    heightAdjustable: hitch.flag('heightAdjustable', 'can the coupler height be changed?'),
    levelHeightM: hitch.number('levelHeightM', R.levelHeight),
    chainBreakKg: hitch.number('chainBreakKg', R.chainBreak),
    breakaway: hitch.flag('breakaway', 'is there a breakaway switch?'),
  };
}

function readDeck(deck: Given): Deck {
  const lengthM = deck.number('lengthM', R.deckLength);
  const tiltLengthM = deck.number('tiltLengthM', R.tiltLength);
  if (lengthM !== null && tiltLengthM !== null && tiltLengthM > lengthM) {
    deck.refuse('tiltLengthM', 'Enter a tilting part no longer than the whole deck.');
  }
  return {
    material: deck.choice('material', 'what the deck is made of', DECK_MATERIALS),
    lengthM,
    widthM: deck.number('widthM', R.deckWidth),
    heightM: deck.number('heightM', R.deckHeight),
    tiltLengthM,
    tiltDrive: deck.choice('tiltDrive', 'what moves the tilt', ['damping-cylinder', 'power-unit'] as const),
    pivotFromCouplerM: deck.number('pivotFromCouplerM', R.pivot),
    frontFromCouplerM: deck.number('frontFromCouplerM', R.deckFront),
    plankThicknessM: deck.number('plankThicknessM', R.plankThickness),
    plankWidthM: deck.number('plankWidthM', R.plankWidth),
    crossmemberSpacingM: deck.number('crossmemberSpacingM', R.crossmemberSpacing),
    boardCount: deck.number('boardCount', R.boardCount),
    wood: deck.choice('wood', 'the wood of the deck', WOODS),
    woodGrade: deck.choice('woodGrade', 'the grade stamped on the boards', WOOD_GRADES),
    treated: deck.flag('treated', 'is the wood pressure treated?'),
  };
}
