import { z } from 'zod';
import { liftOff, overRoad } from '../../rules/load/road.js';
import { freeOffset, springLoads } from '../../rules/load/springs.js';
import { resultant, wheelPair } from '../../rules/load/statics.js';
import { computation } from './computation.js';
import { answer, answerOrNull, force, kilograms, length, plain } from './values.js';

const SPRINGS =
  'Plane statics of a rigid frame on springs that push and never pull, hinged at the coupler, standing still; small pitch.';

const weights = z
  .array(
    z.strictObject({
      massKg: kilograms('Mass', z.number().gt(0).max(1e6)),
      fromCouplerM: length('Where it balances, rearward from the coupler', z.number().gt(0).max(60)),
    }),
  )
  .min(1)
  .max(100)
  .describe('Every weight, the empty trailer among them.');
const axles = z
  .array(
    z.strictObject({
      fromCouplerM: length('Where the axle is, rearward from the coupler', z.number().gt(0).max(60)),
      rateNPerM: plain('Rate of the whole axle at the wheels, N per m', z.number().gt(0).max(1e8)),
    }),
  )
  .min(1)
  .max(6)
  .describe('Each axle from the front.');
const HEIGHT = z.number().min(-2).max(2);
const raisedM = length('Coupler above the height at which this load is level; negative is nose low', HEIGHT);

/** A 2,800 lb trailer at 165 in with 9,000 lb at 160 in, axles at 163.5 and 196.5 in of 2,000 lb/in. */
const TANDEM = {
  weights: [
    { massKg: 1270.0586, fromCouplerM: 4.191 },
    { massKg: 4082.3313, fromCouplerM: 4.064 },
  ],
  axles: [
    { fromCouplerM: 4.1529, rateNPerM: 350_253.67 },
    { fromCouplerM: 4.9911, rateNPerM: 350_253.67 },
  ],
};

export const SPRING_COMPUTATIONS = [
  computation({
    name: 'torsion-loads',
    about: 'What each torsion axle and the coupler carry with the hitch off level and the ground uneven.',
    source: SPRINGS,
    input: z.object({
      weights,
      axles,
      raisedM,
      groundM: z
        .array(length('Ground under an axle against the ground under the tow vehicle', HEIGHT))
        .max(6)
        .describe('Ground under each axle, m: a bump positive, a dip negative. What is left out is flat.'),
    }),
    output: z.object({
      axleN: z.array(answer('What one axle carries, N')),
      tongueN: answer('Vertical force on the coupler, N'),
      pitch: answer('Radians, rear up positive'),
      lifted: z.boolean().describe('Whether an axle is off the ground.'),
    }),
    example: { ...TANDEM, raisedM: 0.0762, groundM: [] },
    compute: ({ weights, axles, raisedM, groundM }) => {
      const on = resultant(weights);
      const found = springLoads(axles, on, freeOffset(axles, on.momentNm), { raisedM, groundM });
      return { axleN: [...found.axleN], tongueN: found.tongueN, pitch: found.pitch, lifted: found.lifted };
    },
  }),
  computation({
    name: 'torsion-over-road',
    about:
      'The most that one torsion axle carries over a bump or dip, and from which height an axle leaves the ground.',
    source: SPRINGS,
    input: z.object({ weights, axles, raisedM, heightM: length('Bump, or negative a dip, under one axle', HEIGHT) }),
    output: z.object({
      mostN: answer('The most that one axle carries, N'),
      carriedBy: answer('Which axle that is, counted from the front'),
      under: answer('Which axle stands on the bump or in the dip'),
      lifted: z.boolean().describe('Whether an axle leaves the ground on the way.'),
      liftsAtM: answerOrNull('The least bump, or dip, at which one does, m'),
    }),
    example: { ...TANDEM, raisedM: 0, heightM: 0.0508 },
    compute: ({ weights, axles, raisedM, heightM }) => {
      const on = resultant(weights);
      const lift = liftOff(axles, on, raisedM, heightM < 0 ? 'dip' : 'bump');
      return { ...overRoad(axles, on, raisedM, heightM), liftsAtM: lift?.byM ?? null };
    },
  }),
  computation({
    name: 'wheel-pair',
    about: 'What the left and the right side of one axle carry when its load sits off centre.',
    source: 'Balance of moments about the middle of the axle.',
    input: z.object({
      axleN: force('What the axle carries', z.number().gt(0).max(1e7)),
      offCentreM: length('How far its load sits off the middle; right is positive', HEIGHT),
      trackM: length('Between the middles of the tires on the two sides', z.number().gt(0).max(5)),
    }),
    output: z.object({ leftN: answer('Left side, N'), rightN: answer('Right side, N') }),
    example: { axleN: 22_241.108, offCentreM: 0.1016, trackM: 2.032 },
    compute: ({ axleN, offCentreM, trackM }) => wheelPair(axleN, axleN * offCentreM, trackM),
  }),
];
