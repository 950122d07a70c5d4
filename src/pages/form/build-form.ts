import type { Axle, BuildSheet } from '../../rules/facts/build-sheet.js';
import type { BuildSheetInput } from '../../use-cases/input/build-sheet-input.js';
import { asText, asYesNo, inInches, inPounds, inPoundsOfForce, inPsi, plain } from './fill-form.js';
import { type FormReader, nmToPoundFeet, toPoundsPerInch } from './read-form.js';

/** More axles than the form offers places for are entered through the API; no equipment trailer has them. */
export const MOST_AXLES = 3;

/** What an axle's row of the form holds: one with any of these was meant. */
export const AXLE_FIELDS = ['gawr', 'rating', 'fromCoupler', 'springRate', 'track', 'brakes', 'lubricant'] as const;

type Choice<Value> = NonNullable<Value>;

/**
 * Reads the sections of a build sheet. A choice goes on as it came: the use case knows the choices and says the fix.
 * With "axles alike" ticked, what was entered for axle 1 stands for the others, but for where they sit.
 */
export function readBuildForm(form: FormReader): BuildSheetInput {
  const at = (name: string) => `build.${name}`;
  const choice = <Value extends string>(name: string) => form.text(at(name)) as Value | null;
  const count = axleCount(form);
  return {
    body: choice<Choice<BuildSheet['body']>>('body'),
    plate: { gvwrKg: form.pounds(at('plate.gvwr')), coldPressureKpa: form.psi(at('plate.coldPressure')) },
    empty: {
      massKg: form.pounds(at('empty.mass')),
      basis: choice<BuildSheet['empty']['basis']>('empty.basis'),
      tongueN: form.poundsOfForce(at('empty.tongue')),
    },
    axles: Array.from({ length: count }, (_, place) => readAxle(form, place)),
    suspension: choice<Choice<BuildSheet['suspension']>>('suspension'),
    hitch: {
      kind: choice<Choice<BuildSheet['hitch']['kind']>>('hitch.kind'),
      couplerRatingKg: form.pounds(at('hitch.couplerRating')),
      couplerTongueN: form.poundsOfForce(at('hitch.couplerTongue')),
      ballSizeM: form.inches(at('hitch.ballSize')),
      heightAdjustable: form.flag(at('hitch.heightAdjustable')),
      levelHeightM: form.inches(at('hitch.levelHeight')),
      chainBreakKg: form.pounds(at('hitch.chainBreak')),
      breakaway: form.flag(at('hitch.breakaway')),
    },
    deck: {
      material: choice<Choice<BuildSheet['deck']['material']>>('deck.material'),
      lengthM: form.inches(at('deck.length')),
      widthM: form.inches(at('deck.width')),
      heightM: form.inches(at('deck.height')),
      tiltLengthM: form.inches(at('deck.tiltLength')),
      tiltDrive: choice<Choice<BuildSheet['deck']['tiltDrive']>>('deck.tiltDrive'),
      pivotFromCouplerM: form.inches(at('deck.pivotFromCoupler')),
      frontFromCouplerM: form.inches(at('deck.frontFromCoupler')),
      plankThicknessM: form.inches(at('deck.plankThickness')),
      plankWidthM: form.inches(at('deck.plankWidth')),
      crossmemberSpacingM: form.inches(at('deck.crossmemberSpacing')),
      boardCount: form.number(at('deck.boardCount')),
      wood: choice<Choice<BuildSheet['deck']['wood']>>('deck.wood'),
      woodGrade: choice<Choice<BuildSheet['deck']['woodGrade']>>('deck.woodGrade'),
      treated: form.flag(at('deck.treated')),
    },
    frame: {
      section: choice<Choice<BuildSheet['frame']['section']>>('frame.section'),
      depthM: form.inches(at('frame.depth')),
      tongue: choice<Choice<BuildSheet['frame']['tongue']>>('frame.tongue'),
      bedDepthM: form.inches(at('frame.bedDepth')),
    },
    rear: {
      dovetailM: form.inches(at('rear.dovetail')),
      ramps: choice<Choice<BuildSheet['rear']['ramps']>>('rear.ramps'),
      rampLengthM: form.inches(at('rear.rampLength')),
      rampRatingKg: form.pounds(at('rear.rampRating')),
      stabilizers: form.flag(at('rear.stabilizers')),
    },
    fenders: {
      kind: choice<Choice<BuildSheet['fenders']['kind']>>('fenders.kind'),
      clearWidthM: form.inches(at('fenders.clearWidth')),
    },
    jacks: {
      count: form.number(at('jacks.count')),
      liftKg: form.pounds(at('jacks.lift')),
      supportKg: form.pounds(at('jacks.support')),
      fromCouplerM: form.inches(at('jacks.fromCoupler')),
    },
    wheels: {
      boltPattern: form.text(at('wheels.boltPattern')),
      nutTorqueNm: form.poundFeet(at('wheels.nutTorque')),
    },
  };
}

/** As many axles as were said, and never fewer than have something entered. */
export function axleCount(form: FormReader): number {
  const said = form.number('build.axleCount') ?? 0;
  const filled = [0, 1, 2].filter((place) =>
    AXLE_FIELDS.some((name) => form.text(`build.axles.${place}.${name}`) !== null),
  );
  const most = Math.max(Number.isInteger(said) ? said : 0, ...filled.map((place) => place + 1));
  return Math.min(most, MOST_AXLES);
}

function readAxle(form: FormReader, place: number): NonNullable<BuildSheetInput['axles']>[number] {
  const own = (name: string) => `build.axles.${place}.${name}`;
  const from = form.ticked('build.axlesAlike') ? 'build.axles.0.' : `build.axles.${place}.`;
  const dual = form.text(`${from}dual`) === 'yes';
  return {
    gawrKg: form.pounds(`${from}gawr`),
    ratingKg: form.pounds(`${from}rating`),
    fromCouplerM: form.inches(own('fromCoupler')),
    springRateNPerM: form.poundsPerInch(`${from}springRate`),
    trackM: form.inches(`${from}track`),
    brakes: form.text(`${from}brakes`) as Axle['brakes'],
    lubricant: form.text(`${from}lubricant`) as Axle['lubricant'],
    wheelsPerSide: dual ? 2 : 1,
  };
}

/** A build as the form shows it. */
export function fillBuildForm(build: BuildSheet): Record<string, string> {
  const { plate, empty, hitch, deck, frame, rear, fenders, jacks, wheels } = build;
  const values: Record<string, string> = {
    body: asText(build.body),
    'plate.gvwr': inPounds(plate.gvwrKg),
    'plate.coldPressure': inPsi(plate.coldPressureKpa),
    'empty.mass': inPounds(empty.massKg),
    'empty.basis': empty.massKg === null ? '' : empty.basis,
    'empty.tongue': inPoundsOfForce(empty.tongueN),
    axleCount: build.axles.length === 0 ? '' : String(build.axles.length),
    suspension: asText(build.suspension),
    'hitch.kind': asText(hitch.kind),
    'hitch.couplerRating': inPounds(hitch.couplerRatingKg),
    'hitch.couplerTongue': inPoundsOfForce(hitch.couplerTongueN),
    'hitch.ballSize': inInches(hitch.ballSizeM),
    'hitch.heightAdjustable': asYesNo(hitch.heightAdjustable),
    'hitch.levelHeight': inInches(hitch.levelHeightM),
    'hitch.chainBreak': inPounds(hitch.chainBreakKg),
    'hitch.breakaway': asYesNo(hitch.breakaway),
    'deck.material': asText(deck.material),
    'deck.length': inInches(deck.lengthM),
    'deck.width': inInches(deck.widthM),
    'deck.height': inInches(deck.heightM),
    'deck.tiltLength': inInches(deck.tiltLengthM),
    'deck.tiltDrive': asText(deck.tiltDrive),
    'deck.pivotFromCoupler': inInches(deck.pivotFromCouplerM),
    'deck.frontFromCoupler': inInches(deck.frontFromCouplerM),
    'deck.plankThickness': inInches(deck.plankThicknessM),
    'deck.plankWidth': inInches(deck.plankWidthM),
    'deck.crossmemberSpacing': inInches(deck.crossmemberSpacingM),
    'deck.boardCount': asText(deck.boardCount),
    'deck.wood': asText(deck.wood),
    'deck.woodGrade': asText(deck.woodGrade),
    'deck.treated': asYesNo(deck.treated),
    'frame.section': asText(frame.section),
    'frame.depth': inInches(frame.depthM),
    'frame.tongue': asText(frame.tongue),
    'frame.bedDepth': inInches(frame.bedDepthM),
    'rear.dovetail': inInches(rear.dovetailM),
    'rear.ramps': asText(rear.ramps),
    'rear.rampLength': inInches(rear.rampLengthM),
    'rear.rampRating': inPounds(rear.rampRatingKg),
    'rear.stabilizers': asYesNo(rear.stabilizers),
    'fenders.kind': asText(fenders.kind),
    'fenders.clearWidth': inInches(fenders.clearWidthM),
    'jacks.count': asText(jacks.count),
    'jacks.lift': inPounds(jacks.liftKg),
    'jacks.support': inPounds(jacks.supportKg),
    'jacks.fromCoupler': inInches(jacks.fromCouplerM),
    'wheels.boltPattern': asText(wheels.boltPattern),
    'wheels.nutTorque': wheels.nutTorqueNm === null ? '' : plain(nmToPoundFeet(wheels.nutTorqueNm)),
  };
  for (const axle of build.axles) {
    const at = `axles.${axle.number - 1}`;
    values[`${at}.gawr`] = inPounds(axle.gawrKg);
    values[`${at}.rating`] = inPounds(axle.ratingKg);
    values[`${at}.fromCoupler`] = inInches(axle.fromCouplerM);
    values[`${at}.springRate`] = axle.springRateNPerM === null ? '' : plain(toPoundsPerInch(axle.springRateNPerM));
    values[`${at}.track`] = inInches(axle.trackM);
    values[`${at}.brakes`] = asText(axle.brakes);
    values[`${at}.lubricant`] = asText(axle.lubricant);
    values[`${at}.dual`] = axle.wheelsPerSide === 2 ? 'yes' : '';
  }
  return Object.fromEntries(Object.entries(values).map(([name, value]) => [`build.${name}`, value]));
}
