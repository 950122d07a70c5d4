import { z } from 'zod';
import { chanceToUse, daysToUse, learnUseRate } from '../../rules/forecast/use-rate.js';
import { rareDemand, smoothedUnevenly } from '../../rules/statistics/smoothing.js';
import { computation } from './computation.js';
import { answer, answerOrNull, chance, plain } from './values.js';

const AMOUNT = z.number().gt(0).max(1e7);
const DAYS = z.number().gt(0).max(10_000);
const alpha = plain('Share by which each value pulls the level', z.number().gt(0).max(1));

export const USE_COMPUTATIONS = [
  computation({
    name: 'use-forecast',
    about: 'How soon so many more km, or trips, are used, as a range learned from what was used before.',
    source:
      'Hauls at random at a gamma-distributed rate, old use counted less: Smith, J. R. Statist. Soc. B 41 (1979) 375; Kerman (2011) for the prior.',
    input: z.object({
      windows: z
        .array(
          z.strictObject({
            amount: plain('Used in it', z.number().min(0).max(1e7)),
            days: plain('How many days it was', DAYS),
          }),
        )
        .min(1)
        .max(400)
        .describe('Stretches of days one after another, the newest first and ending today.'),
      haul: plain('Usual size of one haul, before any was seen', AMOUNT),
      memoryDays: plain('Days after which use counts half', DAYS),
      amount: plain('How much more is asked for', AMOUNT),
      withinDays: plain('Days ahead that are asked for', DAYS),
    }),
    output: z.object({
      perDay: answerOrNull('Used on a day; null when nothing was'),
      hauls: answerOrNull('Hauls’ worth that this was learned from'),
      tenPercentDays: answerOrNull('Days by which it is used with one chance in ten'),
      halfDays: answerOrNull('As likely as not'),
      ninetyPercentDays: answerOrNull('With nine chances in ten'),
      usedWithin: answerOrNull('Chance that it is used within the days asked for'),
    }),
    example: {
      windows: [90, 40, 120, 0, 75, 110].map((amount) => ({ amount, days: 7 })),
      ...{ haul: 64, memoryDays: 90, amount: 500, withinDays: 42 },
    },
    compute: ({ windows, haul, memoryDays, amount, withinDays }) => {
      let ended = 0;
      const seen = windows.map((one) => {
        ended += one.days;
        return { ...one, ago: ended - one.days / 2 };
      });
      const rate = learnUseRate(seen, { haul, memoryDays, overshoot: 1 / 3 });
      const by = (share: number) => (rate === null ? null : daysToUse(rate, amount, share));
      return {
        ...{ perDay: rate?.perDay ?? null, hauls: rate?.hauls ?? null },
        ...{ tenPercentDays: by(0.1), halfDays: by(0.5), ninetyPercentDays: by(0.9) },
        usedWithin: rate === null ? null : chanceToUse(rate, amount, withinDays),
      };
    },
  }),
  computation({
    name: 'rare-demand',
    about: 'What is wanted a period when it is seldom wanted at all: sizes and gaps smoothed apart.',
    source: 'Croston, Oper. Res. Q. 23 (1972) 289; correction of Syntetos and Boylan, Int. J. Forecast. 21 (2005) 303.',
    input: z.object({
      demands: z
        .array(z.strictObject({ size: plain('How much', AMOUNT), gap: plain('Periods since the one before', AMOUNT) }))
        .min(1)
        .max(450)
        .describe('In the order they came.'),
      alpha,
    }),
    output: z.object({
      size: answer('Size'),
      gap: answer('Periods from one to the next'),
      perPeriod: answer('A period'),
      corrected: answer('A period, less its usual bias upward'),
    }),
    example: {
      demands: [
        ...[
          [2, 2],
          [1, 2],
          [11, 2],
          [2, 5],
          [6, 2],
          [3, 1],
          [7, 6],
          [3, 8],
          [1, 1],
          [1, 3],
          [1, 2],
        ].map(([size = 0, gap = 0]) => ({ size, gap })),
      ],
      alpha: 0.1,
    },
    compute: ({ demands, alpha }) => {
      const found = rareDemand(
        demands.map(({ size }) => size),
        demands.map(({ gap }) => gap),
        alpha,
      );
      if (found === null) throw new RangeError('"demands": give at least one.');
      return { ...found };
    },
  }),
  computation({
    name: 'uneven-smoothing',
    about: 'The level of a value read at uneven times, the newer counting more.',
    source: 'Wright, Management Science 32 (1986) 499; at even times simple exponential smoothing.',
    input: z.object({
      values: z
        .array(
          z.strictObject({
            time: plain('When it was read', z.number().min(0).max(1e9)),
            value: plain('What was read', z.number().min(-1e9).max(1e9)),
          }),
        )
        .min(1)
        .max(450)
        .describe('In the order of time; the first is the start.'),
      alpha: chance('Share by which a value pulls after one usual gap'),
      usualGap: plain('Usual time between two', AMOUNT),
    }),
    output: z.object({ level: answer('Level after the last') }),
    example: {
      values: [100, 120, 90, 110, 130].map((value, place) => ({ time: place * 7, value })),
      ...{ alpha: 0.3, usualGap: 7 },
    },
    compute: ({ values, alpha, usualGap }) => {
      const late = values.findIndex(({ time }, place) => place > 0 && time < (values[place - 1]?.time ?? 0));
      if (late >= 0) throw new RangeError(`"values[${late}].time" must not lie before the one ahead of it.`);
      return { level: smoothedUnevenly(values, alpha, usualGap) ?? 0 };
    },
  }),
];
