import { z } from 'zod';
import { day } from '../../rules/calendar/civil-date.js';
import { BRAKES } from '../../rules/facts/build-sheet.js';
import { lawOnMeasure, passesWear } from '../../rules/law/wear.js';
import { distanceToWear, wearProcess, wornByProbability } from '../../rules/statistics/wear-process.js';
import { placeOfLimit, wearLine } from '../../rules/wear/wear-line.js';
import { practiceLimit, WEAR_KINDS, WEAR_QUANTITIES } from '../../rules/wear/wear-quantity.js';
import { cleanSeries } from '../../rules/wear/wear-series.js';
import { computation } from './computation.js';
import { answer, answerOrNull, chance, plain } from './values.js';

const quantity = z.enum(WEAR_QUANTITIES).describe('What is measured: the name ends with its unit.');
const VALUE = z.number().min(0).max(1_000);
/** Readings are placed by distance here; their days only label them in the rules. */
const ANY_DAY = day('2000-01-01');

const AMOUNT = z.number().gt(0).max(1e7);

/** Tread of a made-up tire, mm, against km: 9/32 in new and 6/32 in after 12,800 miles. */
const TREAD = [
  [0, 7.14375],
  [4_184.29, 6.6675],
  [8_368.59, 6.111875],
  [12_391.95, 5.794375],
  [16_576.24, 5.23875],
  [20_599.6, 4.7625],
] as const;

export const WEAR_COMPUTATIONS = [
  computation({
    name: 'wear-to-limit',
    about:
      'How a part wears by its readings, usual wear standing in while they are few, and where it comes to its limit.',
    source:
      'Bayes’ rule for a straight line (Gelman et al., section 14.8) and Fieller (1954); limits of the annual inspection, or common practice, no source.',
    input: z.object({
      quantity,
      brakes: z.enum(BRAKES).nullable().describe('Kind of brakes, for linings; null when unknown.'),
      readings: z
        .array(
          z.strictObject({
            at: plain(
              'Where it was read: km since the series began, or days for a battery',
              z.number().min(0).max(1e6),
            ),
            value: plain('What was read', VALUE),
          }),
        )
        .min(1)
        .max(200)
        .describe('In the order they were taken.'),
    }),
    output: z.object({
      perUnit: answerOrNull('Slope of the line, for one km or day'),
      now: answerOrNull('The line at the last reading'),
      priorShare: answerOrNull('Share of that slope that is usual wear, not this part’s'),
      speedsUp: z.boolean().nullable().describe('Whether the readings bend towards faster wear.'),
      leftOut: z.array(z.number()).describe('Where the readings were taken that the line does not rest on.'),
      limit: answerOrNull('Limit'),
      limitIs: z.enum(['law', 'practice']).nullable().describe('Whose limit it is.'),
      early: answerOrNull('Place at which it has come to the limit with one chance in ten'),
      middle: answerOrNull('As likely as not'),
      late: answerOrNull('With nine chances in ten'),
    }),
    example: {
      quantity: 'tread-depth-mm' as const,
      brakes: null,
      readings: TREAD.map(([at, value]) => ({ at, value })),
    },
    compute: ({ quantity, brakes, readings }) => {
      const kind = WEAR_KINDS[quantity];
      const inOrder = readings.every(({ at }, place) => place === 0 || at > (readings[place - 1]?.at ?? 0));
      if (!inOrder) throw new RangeError('"readings": give them in the order they were taken, each further on.');
      const told = readings.map(({ at, value }) => ({ on: ANY_DAY, x: at, value }));
      const clean = cleanSeries(told, kind);
      const law = lawOnMeasure(quantity, brakes);
      const first = clean.readings[0]?.value ?? 0;
      const limit = law === null ? practiceLimit(kind, first) : { ...law, origin: 'law' as const };
      const line = wearLine(clean.readings, kind, kind.by);
      const place = line === null || limit === null ? null : placeOfLimit(line, limit, kind.direction);
      const last = clean.readings.at(-1)?.x ?? 0;
      return {
        perUnit: line?.slope ?? null,
        now: line === null ? null : line.level + line.slope * (last - line.centre),
        priorShare: line?.priorShare ?? null,
        speedsUp: line?.speedsUp ?? null,
        leftOut: clean.leftOut.map(({ x }) => x),
        ...{ limit: limit?.value ?? null, limitIs: limit?.origin ?? null },
        ...{ early: place?.early ?? null, middle: place?.middle ?? null, late: place?.late ?? null },
      };
    },
  }),
  computation({
    name: 'wear-limit',
    about:
      'The annual inspection’s limit on tread or lining, or common practice’s on the rest, and whether a reading passes.',
    source: 'Appendix A to Part 396 of 49 CFR and 49 CFR 393.75(c); the rest common practice, no source.',
    input: z.object({
      quantity,
      brakes: z.enum(BRAKES).nullable().describe('Kind of brakes, for linings; null when unknown.'),
      first: plain('First reading of the part, new', VALUE),
      value: plain('What was read', VALUE),
    }),
    output: z.object({
      limit: answerOrNull('Limit'),
      limitIs: z.enum(['law', 'practice']).nullable().describe('Whose limit it is; null: none is known.'),
      passes: z.boolean().nullable().describe('Null where no limit is known.'),
    }),
    example: { quantity: 'lining-mm' as const, brakes: 'electric' as const, first: 5, value: 1.5875 },
    compute: ({ quantity, brakes, first, value }) => {
      const law = lawOnMeasure(quantity, brakes);
      const limit = law === null ? practiceLimit(WEAR_KINDS[quantity], first) : { ...law, origin: 'law' as const };
      return {
        ...{ limit: limit?.value ?? null, limitIs: limit?.origin ?? null },
        passes: limit === null ? null : passesWear(limit, value),
      };
    },
  }),
  computation({
    name: 'wear-process',
    about:
      'Wear that only ever grows, from what was worn between looks: when it has come to a limit, with what chance.',
    source: 'Gamma process by the method of moments: van Noortwijk, Reliab. Eng. Syst. Saf. 94 (2009) 2, section 4.2.',
    input: z.object({
      steps: z
        .array(
          z.strictObject({
            wear: plain('Worn between two looks', z.number().min(0).max(1e6)),
            distance: plain('Distance between them', AMOUNT),
          }),
        )
        .min(2)
        .max(450)
        .describe('In one unit of wear and one of distance.'),
      limit: plain('Wear asked for', AMOUNT),
      distance: plain('Distance asked for', AMOUNT),
      chance: chance('Chance asked for'),
    }),
    output: z.object({
      perDistance: answer('Shape for one unit of distance'),
      step: answer('Size of its steps'),
      wornBy: answer('Chance that the limit is reached by that distance'),
      reachedAt: answer('Distance by which it is reached with that chance'),
    }),
    /** The tread above, in 32nds of an inch and thousands of miles. */
    example: {
      steps: [
        { wear: 0.6, distance: 2.6 },
        { wear: 0.7, distance: 2.6 },
        { wear: 0.4, distance: 2.5 },
        { wear: 0.7, distance: 2.6 },
        { wear: 0.6, distance: 2.5 },
      ],
      ...{ limit: 7, distance: 30, chance: 0.5 },
    },
    compute: ({ steps, limit, distance, chance }) => {
      const process = wearProcess(steps);
      if (process === null) throw new RangeError('"steps" show no wear, or no spread of it: give more of them.');
      return {
        ...{ perDistance: process.perDistance, step: process.step },
        wornBy: wornByProbability(process, limit, distance),
        reachedAt: distanceToWear(process, limit, chance),
      };
    },
  }),
];
