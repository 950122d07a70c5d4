import { z } from 'zod';
import { climbLoads } from '../../rules/load/climb.js';
import { jackLoad } from '../../rules/load/jack-load.js';
import { approachAngle, breakoverAngle, clearanceNeeded, frictionNeeded, rampAngle } from '../../rules/load/ramp.js';
import { tippingPoint } from '../../rules/load/tilt.js';
import { computation } from './computation.js';
import { answer, answerOrNull, force, kilograms, length } from './values.js';

const MOMENTS = 'Balance of vertical forces and of moments, standing still on level ground.';
const TRIGONOMETRY = 'Plane trigonometry on a straight ramp and firm wheels.';

const BEHIND = z.number().gt(0).max(60);
const LENGTH = z.number().gt(0).max(100);
const axleCentreM = length('Middle of the axle group, rearward from the coupler', BEHIND);

export const LOADING_COMPUTATIONS = [
  computation({
    name: 'jack-load',
    about: 'What the tongue jacks carry together once the coupler is off the ball.',
    source: MOMENTS,
    input: z.object({
      tongueN: force('What the coupler carries hitched'),
      jackM: length('Where the jacks stand, rearward from the coupler', z.number().min(-5).max(60)),
      axleCentreM,
    }),
    output: z.object({ loadN: answer('On all jacks together, N') }),
    example: { tongueN: 5337.8659, jackM: 0.9144, axleCentreM: 4.572 },
    compute: ({ tongueN, jackM, axleCentreM }) => ({ loadN: jackLoad(tongueN, jackM, axleCentreM) }),
  }),
  computation({
    name: 'ramp-climb',
    about: 'What the hitch feels, and what a support under the tail takes, while a machine comes onto the trailer.',
    source: `${MOMENTS} With a support they leave one force open, so its bounds are given.`,
    input: z.object({
      emptyTongueN: force('What the empty trailer rests on its coupler'),
      axleCentreM,
      machineKg: kilograms('The machine as it drives on'),
      entersAtM: length('Where it first stands on the trailer, rearward from the coupler', BEHIND),
      supportAtM: length('Where stabilizers or a knee brace stand', BEHIND).nullable(),
    }),
    output: z.object({
      tongueN: answer('On the hitch with nothing under the tail, N; below nothing when it is pulled up'),
      liftN: answer('How hard the hitch is pulled up then, N'),
      supportLeastN: answerOrNull('Least the support takes if the hitch is not to rise, N'),
      supportMostN: answerOrNull('Most the support can be made to take, N'),
    }),
    example: {
      emptyTongueN: 1037.9184,
      axleCentreM: 4.572,
      machineKg: 3628.739,
      entersAtM: 6.4008,
      supportAtM: 6.4008,
    },
    compute: (climb) => {
      const { tongueN, liftN, support } = climbLoads(climb);
      return {
        tongueN,
        liftN,
        supportLeastN: support?.leastN ?? null,
        supportMostN: support?.mostN ?? null,
      };
    },
  }),
  computation({
    name: 'ramp-slope',
    about: 'How steep a ramp is, the friction it asks for, and the clearance a machine needs where it meets the deck.',
    source: TRIGONOMETRY,
    input: z.object({
      heightM: length('Height of the upper end above the ground', z.number().min(0).max(10)),
      rampLengthM: length('Length of the ramp', LENGTH),
      wheelbaseM: length('Wheelbase of the machine, or length of its track on the ground', LENGTH),
    }),
    output: z.object({
      angle: answer('Radians'),
      friction: answer('Least coefficient of friction'),
      clearanceM: answer('Needed under the middle of the machine at the crest, m'),
    }),
    example: { heightM: 0.8636, rampLengthM: 1.8288, wheelbaseM: 1.143 },
    compute: ({ heightM, rampLengthM, wheelbaseM }) => {
      const angle = rampAngle(heightM, rampLengthM);
      return { angle, friction: frictionNeeded(angle), clearanceM: clearanceNeeded(wheelbaseM, angle) };
    },
  }),
  computation({
    name: 'breakover',
    about: 'The sharpest crest that a machine passes without touching.',
    source: TRIGONOMETRY,
    input: z.object({
      clearanceM: length('Clearance under the middle', z.number().min(0).max(10)),
      wheelbaseM: length('Wheelbase', LENGTH),
    }),
    output: z.object({ angle: answer('Radians') }),
    example: { clearanceM: 0.3048, wheelbaseM: 2.54 },
    compute: ({ clearanceM, wheelbaseM }) => ({ angle: breakoverAngle(clearanceM, wheelbaseM) }),
  }),
  computation({
    name: 'tilt-tipping-point',
    about: 'Where a machine stands, by its balance point, when a tilting deck turns under it.',
    source: `Moments about the pivot, friction and damping left out. ${MOMENTS}`,
    input: z.object({
      pivotM: length('The pivot, rearward from the coupler', BEHIND),
      machineKg: kilograms('The machine', z.number().gt(0).max(1e6)),
      deck: z
        .strictObject({
          massKg: kilograms('Mass of the tilting part'),
          fromCouplerM: length('Where it balances, rearward from the coupler', BEHIND),
        })
        .nullable()
        .describe('The tilting part; null where nobody knows its mass.'),
    }),
    output: z.object({
      fromCouplerM: answer('Rearward from the coupler, m'),
      deckWeightUnknown: z.boolean().describe('Whether the pivot is all that can be said.'),
    }),
    example: { pivotM: 5.08, machineKg: 3628.739, deck: { massKg: 544.3108, fromCouplerM: 4.064 } },
    compute: ({ pivotM, machineKg, deck }) => tippingPoint({ pivotM, own: deck }, machineKg),
  }),
  computation({
    name: 'ramp-approach',
    about: 'The steepest slope whose foot the overhang of a machine passes without touching.',
    source: TRIGONOMETRY,
    input: z.object({
      heightM: length('Height of the overhang above the ground', z.number().min(0).max(10)),
      overhangM: length('How far it reaches ahead of the first wheel, or of the track on the ground', LENGTH),
    }),
    output: z.object({ angle: answer('Radians') }),
    example: { heightM: 0.254, overhangM: 0.762 },
    compute: ({ heightM, overhangM }) => ({ angle: approachAngle(heightM, overhangM) }),
  }),
];
