import { z } from 'zod';
import {
  axleGroupLoad,
  forwardMove,
  type PlacedWeight,
  placeForTongueShare,
  tongueWeight,
} from '../../rules/load/statics.js';
import { massHeldUpBy } from '../../rules/units/force.js';
import { computation } from './computation.js';
import { answer, answerOrNull, force, kilograms, length, share } from './values.js';

const MOMENTS = 'Balance of vertical forces and of moments about the coupler, standing still on level ground.';

const placedWeight = z.strictObject({
  massKg: kilograms('Mass'),
  fromCouplerM: length('Where it balances, rearward from the coupler'),
});
const weights = z.array(placedWeight).min(1).max(100).describe('Every weight, the empty trailer among them.');
const axleCentreM = length('Middle of the axle group, rearward from the coupler', z.number().gt(0).max(60));

export const STATICS_COMPUTATIONS = [
  computation({
    name: 'tongue-weight',
    about: 'What rests on the coupler and on the axle group, for springs that share equally.',
    source: MOMENTS,
    input: z.object({ weights, axleCentreM }),
    output: z.object({
      tongueN: answer('Vertical force on the coupler, N; below nothing when it is lifted'),
      tongueShare: answerOrNull('Tongue weight over the whole'),
      axleGroupN: answer('What the axles carry together, N'),
    }),
    example: {
      weights: [
        { massKg: 1270.0586, fromCouplerM: 4.191 },
        { massKg: 4082.3313, fromCouplerM: 4.2672 },
      ],
      axleCentreM: 4.572,
    },
    compute: ({ weights, axleCentreM }) => {
      const tongueN = tongueWeight(weights, axleCentreM);
      const massKg = weights.reduce((sum, weight) => sum + weight.massKg, 0);
      return {
        tongueN,
        tongueShare: massKg > 0 ? massHeldUpBy(tongueN) / massKg : null,
        axleGroupN: axleGroupLoad(weights, axleCentreM),
      };
    },
  }),
  computation({
    name: 'place-for-tongue-share',
    about: 'Where a load must balance for a wanted share on the tongue.',
    source: MOMENTS,
    input: z.object({
      share: share('Wanted tongue weight over the whole'),
      massKg: kilograms('The load', z.number().gt(0)),
      others: z.array(placedWeight).max(100).describe('Every other weight, the empty trailer among them.'),
      axleCentreM,
    }),
    output: z.object({ fromCouplerM: answerOrNull('Where the load must balance, m rearward from the coupler') }),
    example: {
      share: 0.12,
      massKg: 4082.3313,
      others: [{ massKg: 1270.0586, fromCouplerM: 4.191 }],
      axleCentreM: 4.572,
    },
    compute: ({ share, massKg, others, axleCentreM }) => ({
      fromCouplerM: placeForTongueShare(share, massKg, others as readonly PlacedWeight[], axleCentreM),
    }),
  }),
  computation({
    name: 'move-for-tongue',
    about: 'How far forward a load must move to bring the tongue weight to what is wanted.',
    source: MOMENTS,
    input: z.object({
      massKg: kilograms('The load that moves', z.number().gt(0)),
      tongueN: force('Tongue weight as it is'),
      wantedN: force('Tongue weight wanted'),
      axleCentreM,
    }),
    output: z.object({ forwardM: answer('How far forward, m; below nothing means rearward') }),
    example: { massKg: 3356.5835, tongueN: 2846.8618, wantedN: 4893.0438, axleCentreM: 4.8768 },
    compute: ({ massKg, tongueN, wantedN, axleCentreM }) => ({
      forwardM: forwardMove(massKg, tongueN, wantedN, axleCentreM),
    }),
  }),
];
