import { z } from 'zod';
import { climbLoads } from '../../rules/load/climb.js';
import { jackLoad } from '../../rules/load/jack-load.js';
import { breakoverAngle, clearanceNeeded, frictionNeeded, rampAngle } from '../../rules/load/ramp.js';
import { checkTieDowns, securingForces, tieDownNeed } from '../../rules/load/tie-downs.js';
import { tippingPoint } from '../../rules/load/tilt.js';
import { CHAIN_GRADES, CHAIN_SIZES, chainWorkingLoad, webbingWorkingLoad } from '../../rules/load/working-load.js';
import { computation } from './computation.js';
import { answer, answerOrNull, count, force, kilograms, length } from './values.js';

const MOMENTS = 'Balance of vertical forces and of moments, standing still on level ground.';
const TRIGONOMETRY = 'Plane trigonometry on a straight ramp and firm wheels.';
const SECURING = '49 CFR 393.102, 393.106, 393.110 and 393.130; check your state.';

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
    name: 'tie-downs',
    about: 'How many tie-downs a cargo needs, how strong, and whether those in use are enough.',
    source: SECURING,
    input: z.object({
      massKg: kilograms('All of the cargo'),
      lengthM: length('Of the longest thing aboard', LENGTH).nullable(),
      blockedAhead: z.boolean().describe('Whether something firm stands ahead of it.'),
      machineKg: kilograms('The heaviest single machine on wheels or tracks').nullable(),
      used: z
        .array(
          z.strictObject({
            count: count('How many of this kind'),
            workingLoadKg: kilograms('Working load limit of one, the least of its parts and anchors').nullable(),
            way: z
              .enum(['direct', 'around', 'over'])
              .describe('To the cargo, round it and back to the same side, or over it to the other side.'),
          }),
        )
        .max(50)
        .describe('Those in use.'),
    }),
    output: z.object({
      neededCount: answer('Least number'),
      neededKg: answer('What they must count for together, kg'),
      because: z.enum(['heavy-machine', 'length', 'length-unknown']).describe('What sets the number.'),
      count: answer('How many are in use'),
      countsForKg: answer('What those in use count for, kg'),
      unrated: answer('How many of them have no known limit'),
      standing: z.enum(['enough', 'short', 'unrated']).describe('Whether they are enough.'),
      forwardN: answer('What they must withstand forward, N'),
      rearwardN: answer('And rearward, N'),
      sidewaysN: answer('And to either side, N'),
    }),
    example: {
      massKg: 5443.1084,
      lengthM: null,
      blockedAhead: false,
      machineKg: 5443.1084,
      used: [{ count: 4, workingLoadKg: 2993.7096, way: 'direct' as const }],
    },
    compute: ({ used, ...tied }) => {
      const { need, workingLoadKg, ...found } = checkTieDowns(tieDownNeed(tied), used);
      return {
        neededCount: need.count,
        neededKg: need.workingLoadKg,
        because: need.because,
        ...found,
        countsForKg: workingLoadKg,
        ...securingForces(tied.massKg),
      };
    },
  }),
  computation({
    name: 'chain-working-load',
    about: 'What a chain of a size and grade may hold where its maker marks no limit.',
    source: 'Tables of 49 CFR 393.108; an unmarked chain counts as grade 30.',
    input: z.object({
      size: z.enum(CHAIN_SIZES).describe('Nominal size as stamped, inches.'),
      grade: z.enum(CHAIN_GRADES).nullable().describe('Null for an unmarked chain.'),
    }),
    output: z.object({ workingLoadKg: answerOrNull('Working load limit, kg') }),
    example: { size: '5/16' as const, grade: 'grade80' as const },
    compute: ({ size, grade }) => ({ workingLoadKg: chainWorkingLoad(size, grade) }),
  }),
  computation({
    name: 'webbing-working-load',
    about: 'What an unmarked web strap of a width may hold.',
    source: 'Table of 49 CFR 393.108; between two widths the narrower row.',
    input: z.object({ widthM: length('Width of the webbing', z.number().gt(0).max(1)) }),
    output: z.object({ workingLoadKg: answerOrNull('Working load limit, kg') }),
    example: { widthM: 0.1016 },
    compute: ({ widthM }) => ({ workingLoadKg: webbingWorkingLoad(widthM) }),
  }),
];
