import type { Axle, BuildSheet } from '../../rules/facts/build-sheet.js';
import { showFeet, showForce, showLength, showMass, showNumber, showPressure } from '../components/show-quantity.js';
import { nmToPoundFeet, toPoundsPerInch } from '../form/read-form.js';
import {
  BASIS_WORDS,
  BODY_WORDS,
  BRAKE_WORDS,
  DECK_WORDS,
  FENDER_WORDS,
  FRAME_WORDS,
  HITCH_WORDS,
  RAMP_WORDS,
  SUSPENSION_WORDS,
  TILT_DRIVE_WORDS,
  TONGUE_WORDS,
  WOOD_GRADE_WORDS,
  WOOD_WORDS,
} from './build-words.js';

/** A fact of the build by its name; null is unknown. */
interface BuildLine {
  readonly name: string;
  readonly value: string | null;
}

export interface BuildGroup {
  readonly title: string;
  readonly lines: readonly BuildLine[];
}

/** The whole build sheet as people read it, in the order of the form that enters it. */
export function buildGroups(build: BuildSheet): readonly BuildGroup[] {
  const { plate, empty, hitch, deck, frame, rear, fenders, jacks, wheels } = build;
  return [
    {
      title: 'Plate and weight',
      lines: [
        line('Body', build.body && BODY_WORDS[build.body]),
        line('GVWR', some(plate.gvwrKg, showMass)),
        line('Cold pressure on the plate', some(plate.coldPressureKpa, showPressure)),
        line(
          'Empty weight',
          some(empty.massKg, (mass) => `${showMass(mass)}, ${BASIS_WORDS[empty.basis].toLowerCase()}`),
        ),
        line('Empty, on the tongue', some(empty.tongueN, showForce)),
      ],
    },
    ...build.axles.map((axle) => ({ title: `Axle ${axle.number}`, lines: axleLines(axle) })),
    {
      title: 'Running gear',
      lines: [
        line('Suspension', build.suspension && SUSPENSION_WORDS[build.suspension]),
        line('Bolt pattern', wheels.boltPattern),
        line(
          'Wheel nut torque',
          some(wheels.nutTorqueNm, (torque) => `${showNumber(nmToPoundFeet(torque))} lb-ft`),
        ),
      ],
    },
    {
      title: 'Hitch',
      lines: [
        line('Kind', hitch.kind && HITCH_WORDS[hitch.kind]),
        line('Coupler rating', some(hitch.couplerRatingKg, showMass)),
        line('Coupler, vertical rating', some(hitch.couplerTongueN, showForce)),
        line('Ball size', some(hitch.ballSizeM, showBall)),
        line('Height adjustable', yesNo(hitch.heightAdjustable)),
        line('Stands level with the coupler at', some(hitch.levelHeightM, showLength)),
        line('Safety chain, breaking strength each', some(hitch.chainBreakKg, showMass)),
        line('Breakaway switch', yesNo(hitch.breakaway)),
      ],
    },
    {
      title: 'Deck',
      lines: [
        line('Material', deck.material && DECK_WORDS[deck.material]),
        line('Length', some(deck.lengthM, showFeet)),
        line('Width', some(deck.widthM, showLength)),
        line('Height', some(deck.heightM, showLength)),
        line('Tilting part', some(deck.tiltLengthM, showFeet)),
        line('Tilt works by', deck.tiltDrive && TILT_DRIVE_WORDS[deck.tiltDrive]),
        line('Tilt turns behind the coupler at', some(deck.pivotFromCouplerM, showLength)),
        line('Front edge behind the coupler', some(deck.frontFromCouplerM, showLength)),
        line('Plank thickness', some(deck.plankThicknessM, showLength)),
        line('Plank width', some(deck.plankWidthM, showLength)),
        line('Crossmember spacing', some(deck.crossmemberSpacingM, showLength)),
        line('Boards', some(deck.boardCount, String)),
        line('Wood', deck.wood && WOOD_WORDS[deck.wood]),
        line('Grade', deck.woodGrade && WOOD_GRADE_WORDS[deck.woodGrade]),
        line('Pressure treated', yesNo(deck.treated)),
      ],
    },
    {
      title: 'Frame and rear',
      lines: [
        line('Main rail', frame.section && FRAME_WORDS[frame.section]),
        line('Rail depth', some(frame.depthM, showLength)),
        line('Tongue', frame.tongue && TONGUE_WORDS[frame.tongue]),
        line('Bed frame depth', some(frame.bedDepthM, showLength)),
        line('Dovetail', some(rear.dovetailM, showFeet)),
        line('Ramps', rear.ramps && RAMP_WORDS[rear.ramps]),
        line('Ramp length', some(rear.rampLengthM, showFeet)),
        line('Ramps together carry', some(rear.rampRatingKg, showMass)),
        line('Rear stabilizer jacks', yesNo(rear.stabilizers)),
        line('Fenders', fenders.kind && FENDER_WORDS[fenders.kind]),
        line('Clear width between fenders', some(fenders.clearWidthM, showLength)),
      ],
    },
    {
      title: 'Jacks',
      lines: [
        line('How many', some(jacks.count, String)),
        line('Each lifts', some(jacks.liftKg, showMass)),
        line('Each holds', some(jacks.supportKg, showMass)),
        line('Behind the coupler', some(jacks.fromCouplerM, showLength)),
      ],
    },
  ];
}

function axleLines(axle: Axle): readonly BuildLine[] {
  return [
    line('GAWR on the plate', some(axle.gawrKg, showMass)),
    line("Axle maker's rating", some(axle.ratingKg, showMass)),
    line('Behind the coupler', some(axle.fromCouplerM, showLength)),
    line('Track', some(axle.trackM, showLength)),
    line(
      'Spring rate of the axle',
      some(axle.springRateNPerM, (rate) => `${showNumber(toPoundsPerInch(rate))} lb per in`),
    ),
    line('Brakes', axle.brakes && BRAKE_WORDS[axle.brakes]),
    line('Hubs', axle.lubricant && (axle.lubricant === 'oil' ? 'Oil' : 'Grease')),
    line('Wheels a side', String(axle.wheelsPerSide)),
  ];
}

/** Ball sizes are stamped as fractions: 2-5/16 in, not 2.31. */
function showBall(size: Parameters<typeof showLength>[0]): string {
  const sixteenths = Math.round((size / 0.0254) * 16);
  const whole = Math.floor(sixteenths / 16);
  let [over, under] = [sixteenths % 16, 16];
  if (over === 0) return `${whole} in`;
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return `${whole}-${over}/${under} in`;
}

function line(name: string, value: string | null): BuildLine {
  return { name, value };
}

function some<Value>(value: Value | null, show: (value: Value) => string): string | null {
  return value === null ? null : show(value);
}

function yesNo(value: boolean | null): string | null {
  return value === null ? null : value ? 'Yes' : 'No';
}
