import { z } from 'zod';
import { leastSquares } from '../../rules/statistics/least-squares.js';
import { crossing, type Range, readingRange } from '../../rules/statistics/line.js';
import { parabola, straightProbability } from '../../rules/statistics/parabola.js';
import { theilSen, theilSenRange } from '../../rules/statistics/theil-sen.js';
import { computation } from './computation.js';
import { answer, answerOrNull, chance, plain } from './values.js';

const WITHIN = z.number().min(-1e9).max(1e9);
const point = z.strictObject({
  x: plain('Place: distance or days, in one unit', WITHIN),
  y: plain('What was read there', WITHIN),
});
const points = (least: number) => z.array(point).min(least).max(450).describe('Each reading and where it was taken.');
const confidence = chance('Confidence of every range');
const range = (what: string) =>
  z
    .object({ low: answer('Low end'), high: answer('High end') })
    .nullable()
    .describe(`${what}; null where there is none.`);

const SAME_PLACE = '"points" all lie at one place: give readings from more than one.';

/** Tread in 32nds of an inch against miles, made up; the fourth may be misread as 9.1. */
const tread = (fourth: number) => [
  { x: 0, y: 9 },
  { x: 2_600, y: 8.4 },
  { x: 5_200, y: 7.7 },
  { x: 7_700, y: fourth },
  { x: 10_300, y: 6.6 },
  { x: 12_800, y: 6 },
];

export const TREND_COMPUTATIONS = [
  computation({
    name: 'trend-line',
    about: 'The straight line through readings, where the next will lie, and where the line comes to a limit.',
    source:
      'Least squares: NIST/SEMATECH e-Handbook 4.4.3.1. Where it crosses: Fieller, J. R. Stat. Soc. B 16 (1954), refused where the slope may be none.',
    input: z.object({
      points: points(3),
      at: plain('Place of a reading to come', WITHIN),
      limit: plain('Value asked for', WITHIN),
      confidence,
    }),
    output: z.object({
      intercept: answer('Line at place 0'),
      slope: answer('Slope'),
      interceptError: answer('Standard error'),
      slopeError: answer('Standard error'),
      scatter: answer('Standard deviation of readings around the line'),
      rSquared: answer('Share of the scatter that the line takes up'),
      reading: range('Between what a reading to come lies'),
      reaches: z
        .object({ at: answer('Where the line is there'), low: answer('Low end'), high: answer('High end') })
        .nullable()
        .describe('Where the limit is reached; null while the slope cannot be told from none.'),
      doubt: answerOrNull('Fieller’s g: from 1 on no place can be named'),
    }),
    example: { points: tread(7.3), at: 20_000, limit: 2, confidence: 0.95 },
    compute: ({ points, at, limit, confidence }) => {
      const line = leastSquares(points);
      if (line === null) throw new RangeError(SAME_PLACE);
      const found = crossing(line, limit, confidence);
      const { intercept, slope, interceptError, slopeError, scatter, rSquared } = line;
      return {
        ...{ intercept, slope, interceptError, slopeError, scatter, rSquared },
        reading: readingRange(line, at, confidence),
        reaches: found.kind === 'at' ? { at: found.at, low: found.low, high: found.high } : null,
        doubt: Number.isFinite(found.doubt) ? found.doubt : null,
      };
    },
  }),
  computation({
    name: 'trend-line-robust',
    about: 'The straight line that a few wrong readings cannot move.',
    source: 'Sen, J. Am. Stat. Assoc. 63 (1968) 1379: the median of all pairs’ slopes.',
    input: z.object({ points: points(2), limit: plain('Value asked for', WITHIN), confidence }),
    output: z.object({
      intercept: answer('Line at place 0'),
      slope: answer('Slope'),
      slopeRange: range('Between what the slope lies'),
      reachesAt: answerOrNull('Where the line comes to the limit'),
    }),
    example: { points: tread(9.1), limit: 2, confidence: 0.9 },
    compute: ({ points, limit, confidence }) => {
      const line = theilSen(points);
      if (line === null) throw new RangeError(SAME_PLACE);
      const { slope, intercept } = line;
      const slopeRange: Range | null = theilSenRange(line, confidence);
      return { intercept, slope, slopeRange, reachesAt: slope === 0 ? null : (limit - intercept) / slope };
    },
  }),
  computation({
    name: 'trend-bend',
    about: 'Whether readings bend: the parabola through them, and the chance of such a bend were they straight.',
    source: 'Least squares in orthogonal polynomials: Forsythe, J. SIAM 5 (1957) 74; Student’s t for the bend.',
    input: z.object({ points: points(4) }),
    output: z.object({
      constant: answer('At place 0'),
      linear: answer('Times x'),
      square: answer('Times x²'),
      errors: z.array(z.number()).describe('Standard error of each.'),
      scatter: answer('Standard deviation of readings around it'),
      rSquared: answer('Share of the scatter that it takes up'),
      straightProbability: answer('Small: a line would hide a bend'),
    }),
    example: { points: tread(7.3) },
    compute: ({ points }) => {
      const found = parabola(points);
      if (found === null) throw new RangeError('"points" lie at fewer than three places: give readings from more.');
      const { constant, linear, square, errors, scatter, rSquared } = found;
      return {
        ...{ constant, linear, square, errors: [...errors], scatter, rSquared },
        straightProbability: straightProbability(found),
      };
    },
  }),
];
