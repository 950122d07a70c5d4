import { z } from 'zod';
import { basicLife, lifeDistance, setLife } from '../../rules/bearing/basic-life.js';
import { RATED_BEARINGS, ratedBearing } from '../../rules/bearing/bearing-table.js';
import { millionRating, ninetyMillionRating } from '../../rules/bearing/dynamic-rating.js';
import { combinedLoad, meanLoad, pairLoads, sweptLoad } from '../../rules/bearing/equivalent-load.js';
import { corneringLoads, hubLoad, ROUGH_SERVICE_FACTOR, splitHubLoad } from '../../rules/bearing/hub-load.js';
import {
  BALL_SCATTER,
  LIFE_FACTOR,
  lifeAtReliability,
  OLDER_LIFE_FACTOR,
  ratingForDuty,
  reliabilityOfRating,
  TAPER_SCATTER,
} from '../../rules/bearing/reliability.js';
import { turnsPerKm } from '../../rules/bearing/wheel-turns.js';
import { loadFactor } from '../../rules/fatigue/trip-damage.js';
import { HARSH_FACTOR } from '../../rules/inspection/harsh-service.js';
import { newtons } from '../../rules/units/force.js';
import { computation } from './computation.js';
import { answer, answerOrNull, force, kilograms, length, plain, road, words } from './values.js';

const POSITIVE_N = z.number().gt(0).max(1e7);
const ratingN = (what: string) => force(what, POSITIVE_N);
const SHARE = z.number().gt(0).lt(1);

export const BEARING_COMPUTATIONS = [
  computation({
    name: 'bearing-life',
    about: 'How many turns and how far nine in ten such bearings last under a steady load.',
    source: 'ISO 281, basic rating life L10. Never a date for a repack: hubs fail by water, grease and preload first.',
    input: z.object({
      millionN: ratingN('Rating on the base of 1 million turns'),
      loadN: ratingN('Equivalent load'),
      body: z.enum(['roller', 'ball']).describe('Rolling body: exponent 10/3 or 3.'),
      loadedRadiusM: length('Radius at which the loaded wheel rides', z.number().gt(0).max(2)),
    }),
    output: z.object({ turns: answer('L10, turns'), turnsPerKm: answer('Turns a km'), distanceKm: answer('L10, km') }),
    example: { millionN: 45_500, loadN: 5_449.07, body: 'roller' as const, loadedRadiusM: 0.33264 },
    compute: ({ millionN, loadN, body, loadedRadiusM }) => {
      const turns = basicLife(millionN, loadN, body);
      const aKm = turnsPerKm(loadedRadiusM);
      return { turns, turnsPerKm: aKm, distanceKm: lifeDistance(turns, aKm) };
    },
  }),
  computation({
    name: 'bearing-ratings',
    about: 'The ratings of a cone number usual in trailer hubs, on both bases, and where they come from.',
    source: "A maker's catalogue page, Budynas and Nisbett chapter 11, or from memory, unverified: each says which.",
    input: z.object({ cone: words('Number on the cone, such as L44649') }),
    output: z.object({
      cone: z.string(),
      millionN: answer('C1, N'),
      ninetyMillionN: answer('C90, N'),
      k: answer('K'),
      e: answer('e'),
      y: answer('Y'),
      origin: z.enum(['catalogue', 'series', 'memory']),
    }),
    example: { cone: 'L44649' },
    compute: ({ cone }) => {
      const found = ratedBearing(cone);
      if (found === null) {
        const known = RATED_BEARINGS.map((one) => one.cone).join(', ');
        throw new RangeError(`"cone" is not in the table: give one of ${known}.`);
      }
      const { millionN, k, e, y } = found;
      return {
        cone: found.cone,
        millionN,
        ninetyMillionN: ninetyMillionRating(millionN),
        k,
        e,
        y,
        origin: found.source,
      };
    },
  }),
  computation({
    name: 'bearing-rating-base',
    about: 'A rating on the base of 90 million turns, put on the base of 1 million.',
    source: 'C1 = 90^(3/10) C90, from the life law of roller bearings in ISO 281.',
    input: z.object({ ninetyMillionN: ratingN('Rating on the base of 90 million turns') }),
    output: z.object({ millionN: answer('C1, N') }),
    example: { ninetyMillionN: 11_800 },
    compute: ({ ninetyMillionN }) => ({ millionN: millionRating(ninetyMillionN) }),
  }),
  computation({
    name: 'bearing-mean-load',
    about: 'The steady load that uses up a roller bearing as fast as these loads in turn do.',
    source: 'ISO 281; the stepped mean of bearing handbooks, and their rule for a load that rises evenly.',
    input: z.object({
      loads: z
        .array(
          z.strictObject({
            loadN: force('Load', z.number().min(0).max(1e7)),
            share: plain('Distance or turns under it, any one unit', z.number().gt(0).max(1e9)),
          }),
        )
        .min(1)
        .max(1_000)
        .describe('Each load, and for how much of the way.'),
    }),
    output: z.object({
      meanN: answerOrNull('Equivalent mean load, N'),
      sweptN: answer('Were it one even rise from the least to the greatest, N'),
    }),
    example: {
      loads: [
        { loadN: 2_224.11, share: 0.3 },
        { loadN: 4_448.22, share: 0.5 },
        { loadN: 7_117.15, share: 0.2 },
      ],
    },
    compute: ({ loads }) => {
      const each = loads.map((one) => one.loadN);
      return { meanN: meanLoad(loads), sweptN: sweptLoad(newtons(Math.min(...each)), newtons(Math.max(...each))) };
    },
  }),
  computation({
    name: 'bearing-combined-load',
    about: 'The radial load that does as much to a taper bearing as radial load and thrust together.',
    source: 'ISO 281, single-row taper bearings: P = 0.4 Fr + Y Fa where Fa/Fr is above e; e and Y from a catalogue.',
    input: z.object({
      radialN: ratingN('Radial load'),
      thrustN: force('Thrust', z.number().min(0).max(1e7)),
      e: plain('e of the catalogue', z.number().gt(0).max(5)),
      y: plain('Y of the catalogue', z.number().gt(0).max(10)),
    }),
    output: z.object({ loadN: answer('Equivalent load, N') }),
    example: { radialN: 5_000, thrustN: 3_000, e: 0.42, y: 1.44 },
    compute: ({ radialN, thrustN, e, y }) => ({ loadN: combinedLoad(radialN, thrustN, { e, y }) }),
  }),
  computation({
    name: 'bearing-pair',
    about: 'What two taper bearings set against each other feel under radial loads and an outer thrust on the first.',
    source:
      'Budynas and Nisbett, Mechanical Engineering Design, chapter 11: induced thrust 0.47 Fr/K, P = 0.4 Fr + K Fa.',
    input: z.object({
      firstN: ratingN('Radial load of the bearing that the thrust presses on'),
      secondN: ratingN('Radial load of the other'),
      thrustN: force('Outer thrust', z.number().min(0).max(1e7)),
      firstK: plain('K of the first', z.number().gt(0).max(5)),
      secondK: plain('K of the other', z.number().gt(0).max(5)),
    }),
    output: z.object({ firstN: answer('Equivalent load of the first, N'), secondN: answer('Of the other, N') }),
    example: { firstN: 2_170, secondN: 2_654, thrustN: 1_690, firstK: 1.5, secondK: 1.5 },
    compute: ({ firstN, secondN, thrustN, firstK, secondK }) =>
      pairLoads({ radialN: firstN, k: firstK }, { radialN: secondN, k: secondK }, thrustN),
  }),
  computation({
    name: 'bearing-set-life',
    about: 'How long a set of bearings stays whole, each of whose lives is known at one reliability.',
    source: 'ISO 281: the lives add up to the power −9/8; the exponent is from memory, unverified.',
    input: z.object({
      bearings: z
        .array(z.strictObject({ life: plain('Life, in turns or km', z.number().gt(0).max(1e15)) }))
        .min(1)
        .max(100)
        .describe('Each bearing, all lives in one unit.'),
    }),
    output: z.object({ life: answer('Life of the set, in the same unit') }),
    example: { bearings: [{ life: 900e6 }, { life: 1600e6 }] },
    compute: ({ bearings }) => ({ life: setLife(bearings.map((one) => one.life)) }),
  }),
  computation({
    name: 'bearing-reliability',
    about: 'The rating a bearing needs for a load, a life and a reliability, and how sure a chosen one is.',
    source: 'Weibull law of bearing lives as in Budynas and Nisbett, chapter 11; factors a1 of ISO 281 from memory.',
    input: z.object({
      loadN: ratingN('Equivalent load'),
      ratedLives: plain('Turns wanted over the turns the rating is for', z.number().gt(0).max(1e6)),
      reliability: plain('Share that must still run, below 1', SHARE),
      body: z.enum(['roller', 'ball']).describe('Taper bearing on the base of 90 million turns, or ball on 1 million.'),
      chosenN: ratingN('Rating of the one chosen, on the same base'),
    }),
    output: z.object({
      neededN: answer('Rating needed, N'),
      chosenReliability: answer('Share of the chosen ones still running'),
      lifeOverL10: answer('Life at that reliability over L10, by the law with no least life'),
      factor2007: answerOrNull('a1 of ISO 281:2007 for that whole percent'),
      factor1990: answerOrNull('a1 of the edition of 1990'),
    }),
    example: { loadN: 3_000, ratedLives: 525, reliability: 0.9, body: 'ball' as const, chosenN: 25_500 },
    compute: ({ loadN, ratedLives, reliability, body, chosenN }) => {
      const scatter = body === 'ball' ? BALL_SCATTER : TAPER_SCATTER;
      const percent = Math.round(reliability * 1000) / 10;
      return {
        neededN: ratingForDuty({ loadN, ratedLives, reliability }, scatter, body),
        chosenReliability: reliabilityOfRating(chosenN, { loadN, ratedLives }, scatter, body),
        lifeOverL10: lifeAtReliability(reliability),
        factor2007: LIFE_FACTOR.get(percent) ?? null,
        factor1990: OLDER_LIFE_FACTOR.get(percent) ?? null,
      };
    },
  }),
  computation({
    name: 'hub-loads',
    about: 'What a hub and each of its two bearings carry, straight ahead in rough service and in a bend.',
    source:
      "A bearing maker's note for trailer hubs (half the axle less the wheel, 20 % for rough service); lever arms.",
    input: z.object({
      axleN: ratingN('What the axle carries at the ground'),
      wheelKg: kilograms('Wheel and tire; null counts as none').nullable(),
      bearingSpreadM: length('Between the middles of the bearings', z.number().gt(0).max(1)),
      tireFromInnerM: length('Middle of the tire, outward from the inner bearing', z.number().min(-1).max(1)),
      sideN: force('Side force at the foot of the tire, toward the vehicle'),
      loadedRadiusM: length('Radius at which the loaded wheel rides', z.number().gt(0).max(2)),
    }),
    output: z.object({
      hubN: answer('Hub load in rough service, N'),
      innerN: answer('Inner bearing, N'),
      outerN: answer('Outer bearing, N'),
      innerInBendN: answer('Inner bearing in the bend, N'),
      outerInBendN: answer('Outer bearing in the bend, N'),
      thrustN: answer('Thrust in the bend, N'),
    }),
    example: {
      ...{ axleN: 15_568.8, wheelKg: 20, bearingSpreadM: 0.06, tireFromInnerM: 0.018 },
      ...{ sideN: 1_000, loadedRadiusM: 0.333 },
    },
    compute: ({ axleN, wheelKg, bearingSpreadM, tireFromInnerM, sideN, loadedRadiusM }) => {
      const hubN = newtons(hubLoad(axleN, wheelKg) * ROUGH_SERVICE_FACTOR);
      const straight = splitHubLoad(hubN, { bearingSpreadM, tireFromInnerM });
      const bend = corneringLoads(straight, sideN, loadedRadiusM, bearingSpreadM);
      return { hubN, ...straight, innerInBendN: bend.innerN, outerInBendN: bend.outerN, thrustN: bend.thrustN };
    },
  }),
  computation({
    name: 'repack-distance',
    about:
      'How much of a repack interval hauls have used, each counted by its load and its road: it only ever shortens.',
    source:
      'ISO 281, (load / rating)^(10/3) above the rating; salt and gravel count twice: common practice, no source.',
    input: z.object({
      ratedN: ratingN('What the axle is rated for'),
      intervalKm: road('Repack interval', z.number().gt(0).max(1e6)),
      hauls: z
        .array(
          z.strictObject({
            distanceKm: road('Distance'),
            axleN: force('What the axle carried', z.number().min(0).max(1e7)).nullable(),
            harsh: z.boolean().describe('Over salt or gravel, or over the plate.'),
          }),
        )
        .max(1_000)
        .describe('Since the last repack.'),
    }),
    output: z.object({
      drivenKm: answer('Driven, km'),
      countedKm: answer('Counted toward the interval, km'),
      leftKm: answer('Left of it, km; below nothing when it is past'),
    }),
    example: {
      ...{ ratedN: 31_137.5514, intervalKm: 19_312.128 },
      hauls: [
        { distanceKm: 1_000, axleN: 34_251.3066, harsh: false },
        { distanceKm: 1_000, axleN: 15_000, harsh: false },
        { distanceKm: 1_000, axleN: null, harsh: true },
      ],
    },
    compute: ({ ratedN, intervalKm, hauls }) => {
      const counted = hauls.reduce((sum, { distanceKm, axleN, harsh }) => {
        const byLoad = axleN === null ? 1 : loadFactor(axleN, ratedN, 'bearing');
        return sum + distanceKm * Math.max(1, harsh ? HARSH_FACTOR : 1, byLoad);
      }, 0);
      const drivenKm = hauls.reduce((sum, { distanceKm }) => sum + distanceKm, 0);
      return { drivenKm, countedKm: counted, leftKm: intervalKm - counted };
    },
  }),
];
