import { z } from 'zod';
import { expectedRate, rateQuantile, updatedRate } from '../../rules/statistics/failure-rate.js';
import { scaleLowerBound } from '../../rules/statistics/scale-bound.js';
import { shapeBiasFactor } from '../../rules/statistics/shape-bias.js';
import { ageReachedOnCurve, survivalCurve } from '../../rules/statistics/survival-curve.js';
import {
  ageReachedBySurvivor,
  deathWithinProbability,
  meanLife,
  spreadOfLife,
  survivalProbability,
} from '../../rules/statistics/weibull.js';
import { ageReachedByBelief, deathWithinByBelief, weibullBelief } from '../../rules/statistics/weibull-belief.js';
import { ageReachedRange, fitWeibull, scaleAtShape } from '../../rules/statistics/weibull-fit.js';
import { computation } from './computation.js';
import { answer, answerOrNull, chance, plain } from './values.js';

const AGE = z.number().gt(0).max(1e9);
const age = (what: string, number = z.number().min(0).max(1e9)) =>
  plain(`${what}, in the one unit of all ages`, number);
const shape = plain('Shape of the Weibull law', z.number().min(0.05).max(100));
const scale = plain('Scale: the age by which 63.2 % have died', AGE);

/** At least one life: of none nothing is learned. */
const lives = z
  .array(
    z.strictObject({
      age: age('Age at its death, or when last seen alive', AGE),
      died: z.boolean().describe('False: still in use, sold, or taken off for another reason.'),
      watchedFrom: age('Age at which it came under watch; 0 from new').default(0),
      count: plain('How many of just this history', z.int().min(1).max(100_000)).default(1),
    }),
  )
  .min(1)
  .max(400)
  .describe('How long each unit has lasted.');

const prior = (what: string) =>
  z
    .strictObject({
      median: plain('The value held likeliest', AGE),
      logSpread: plain('Standard deviation of its logarithm', z.number().min(0.01).max(5)),
    })
    .describe(`What was held of the ${what} before any life was seen.`);

const fitShape = z.object({
  shape: answer('Shape'),
  scale: answer('Scale'),
  logLikelihood: answer('Log likelihood'),
  meanLife: answer('Mean life'),
  spread: answer('Standard deviation of lives'),
  deaths: answer('Deaths'),
  units: answer('Units'),
  shapeBiasFactor: answerOrNull('What few deaths overstate the shape by, as a factor on it'),
  reached: z
    .object({ low: answer('Low end'), age: answer('The estimate'), high: answer('High end') })
    .describe('Age by which the share asked for has died, of those alive at the age asked for.'),
});

/** NIST/SEMATECH e-Handbook 8.2.2.1: twenty units, ten deaths, watched for 500 hours. */
const TWENTY_UNITS = [
  ...[54, 187, 216, 240, 244, 335, 361, 373, 375, 386].map((hours) => ({ age: hours, died: true })),
  { age: 500, died: false, count: 10 },
];

export const LIFE_COMPUTATIONS = [
  computation({
    name: 'life-fit',
    about: 'The Weibull law of lives by maximum likelihood, those still running counted as what they are.',
    source:
      'Meeker and Escobar, Statistical Methods for Reliability Data, ch. 8 and 11; NIST/SEMATECH e-Handbook 8.4.1.3.',
    input: z.object({
      lives,
      shapePrior: prior('shape').nullable(),
      aliveAt: age('Age of those asked about; 0 for new ones'),
      share: chance('Share of them that has died by then'),
      confidence: chance('Confidence of the range'),
    }),
    output: z.object({
      fit: fitShape.nullable().describe('Null where the lives name no law.'),
      refused: z.enum(['no-deaths', 'no-spread', 'no-maximum', 'bad-age']).nullable().describe('Why there is no fit.'),
    }),
    example: { lives: TWENTY_UNITS, shapePrior: null, aliveAt: 0, share: 0.1, confidence: 0.95 },
    compute: ({ lives, shapePrior, aliveAt, share, confidence }) => {
      const found = fitWeibull(lives, shapePrior ?? undefined);
      if (found.kind === 'refused') return { fit: null, refused: found.because };
      const { shape, scale, logLikelihood, deaths, units } = found;
      return {
        fit: {
          ...{ shape, scale, logLikelihood, deaths, units },
          ...{ meanLife: meanLife(found), spread: spreadOfLife(found) },
          shapeBiasFactor: shapePrior === null ? shapeBiasFactor(deaths, units) : null,
          reached: ageReachedRange(found, aliveAt, share, confidence),
        },
        refused: null,
      };
    },
  }),
  computation({
    name: 'life-of-survivor',
    about: 'The chance that a unit of this age dies within a span, and when such a one will have died.',
    source: 'Weibull law, given that it has lasted until now: NIST/SEMATECH e-Handbook 8.1.6.2 for the law.',
    input: z.object({ shape, scale, age: age('Age it has reached'), span: age('Span ahead'), share: chance('Share') }),
    output: z.object({
      aliveAtAge: answer('Share of all units that reach this age'),
      diesWithin: answer('Chance that this one dies within the span'),
      reachedBy: answer('Age by which the share of those alive now has died'),
    }),
    example: { shape: 3.16047, scale: 27_718.72, age: 20_000, span: 3_000, share: 0.5 },
    compute: ({ age, span, share, ...law }) => ({
      aliveAtAge: survivalProbability(law, age),
      diesWithin: deathWithinProbability(law, age, span),
      reachedBy: ageReachedBySurvivor(law, age, share),
    }),
  }),
  computation({
    name: 'life-with-prior',
    about: 'What lives and a stated prior together say of a unit of some age: works with few deaths, or none.',
    source: 'Bayes’ rule with lognormal priors on shape and scale: Meeker and Escobar, ch. 14.',
    input: z.object({
      lives,
      shapePrior: prior('shape'),
      scalePrior: prior('scale'),
      age: age('Age it has reached; it must be among the lives'),
      span: age('Span ahead'),
    }),
    output: z.object({
      shape: answer('Middle of what is held of the shape'),
      scale: answer('Middle of what is held of the scale'),
      diesWithin: answer('Chance that it dies within the span'),
      tenPercentBy: answer('Age by which it has died with one chance in ten'),
      halfBy: answer('As likely as not'),
      ninetyPercentBy: answer('With nine chances in ten'),
    }),
    example: {
      lives: [
        ...[410, 690, 1_200].map((age) => ({ age, died: true })),
        ...[900, 900].map((age) => ({ age, died: false })),
      ],
      shapePrior: { median: 2, logSpread: 0.5 },
      scalePrior: { median: 1_000, logSpread: 0.5 },
      ...{ age: 900, span: 200 },
    },
    compute: ({ lives, shapePrior, scalePrior, age, span }) => {
      const belief = weibullBelief(lives, shapePrior, scalePrior);
      if (belief === null) throw new RangeError('"lives": give each an age beyond that at which its watch began.');
      const by = (share: number) => ageReachedByBelief(belief, age, share);
      return {
        ...{ shape: belief.shape, scale: belief.scale, diesWithin: deathWithinByBelief(belief, age, span) },
        ...{ tenPercentBy: by(0.1), halfBy: by(0.5), ninetyPercentBy: by(0.9) },
      };
    },
  }),
  computation({
    name: 'life-lower-bound',
    about: 'What a fleet in which hardly anything, or nothing, has died proves of its scale at a shape that is known.',
    source: 'Abernethy, The New Weibull Handbook, ch. 6; with deaths Meeker and Escobar, section 7.7.',
    input: z.object({ lives, shape, confidence: chance('Confidence') }),
    output: z.object({
      scale: answerOrNull('Best estimate at that shape'),
      scaleAtLeast: answerOrNull('The true scale is at least this'),
    }),
    example: {
      lives: [900, 700, 1_200, 450].map((age) => ({ age, died: false })),
      shape: 2,
      confidence: 0.9,
    },
    compute: ({ lives, shape, confidence }) => ({
      scale: scaleAtShape(lives, shape),
      scaleAtLeast: scaleLowerBound(lives, shape, confidence),
    }),
  }),
  computation({
    name: 'survival-curve',
    about: 'The share alive against age, with no law assumed.',
    source: 'Kaplan and Meier, J. Am. Stat. Assoc. 53 (1958); standard error after Greenwood (1926).',
    input: z.object({ lives }),
    output: z.object({
      steps: z
        .array(
          z.object({
            age: answer('Age at which units died'),
            atRisk: answer('Under watch just before'),
            died: answer('How many died'),
            survival: answer('Share alive after it'),
            standardError: answerOrNull('Standard error of that share'),
          }),
        )
        .describe('Each drop of the curve.'),
      medianAge: answerOrNull('Age by which half have died'),
    }),
    /** Remission of 21 patients, in weeks, as in many textbooks of survival analysis. */
    example: {
      lives: [
        ...[6, 6, 6, 7, 10, 13, 16, 22, 23].map((age) => ({ age, died: true })),
        ...[6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35].map((age) => ({ age, died: false })),
      ],
    },
    compute: ({ lives }) => {
      const early = lives.findIndex(({ age, watchedFrom }) => watchedFrom >= age);
      if (early >= 0) throw new RangeError(`"lives[${early}].watchedFrom" must be less than its age.`);
      const curve = survivalCurve(lives);
      return { steps: curve.map((step) => ({ ...step })), medianAge: ageReachedOnCurve(curve, 0.5) };
    },
  }),
  computation({
    name: 'failure-rate',
    about: 'A rate of failures from a prior and what was seen since, and between what it lies.',
    source: 'Gamma prior on the rate of a Poisson count: NIST/SEMATECH e-Handbook 8.4.6.',
    input: z.object({
      priorFailures: plain('Failures the prior is worth', z.number().gt(0).max(1e6)),
      priorExposure: plain('Exposure the prior is worth, such as trailer-years', z.number().gt(0).max(1e9)),
      failures: plain('Failures seen', z.int().min(0).max(1_000_000)),
      exposure: plain('Exposure in which they were seen', z.number().min(0).max(1e9)),
    }),
    output: z.object({
      rate: answer('Expected rate'),
      fivePercent: answer('The rate is below this with one chance in twenty'),
      ninetyFivePercent: answer('And below this with nineteen'),
    }),
    example: { priorFailures: 2, priorExposure: 40, failures: 3, exposure: 12 },
    compute: ({ priorFailures, priorExposure, ...seen }) => {
      const belief = updatedRate({ failures: priorFailures, exposure: priorExposure }, seen);
      return {
        rate: expectedRate(belief),
        fivePercent: rateQuantile(belief, 0.05),
        ninetyFivePercent: rateQuantile(belief, 0.95),
      };
    },
  }),
];
