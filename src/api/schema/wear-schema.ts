import { z } from 'zod';
import { WEAR_QUANTITIES } from '../../rules/wear/wear-quantity.js';
import { computed, DAY, ID, known } from './values.js';

// How measured parts wear: shared by assessments and flags. Values are in the unit at the end of the quantity's name.

export const WEAR_QUANTITY = z.enum(WEAR_QUANTITIES);

const WEAR_LIMIT = z
  .object({
    value: computed('In the unit of the quantity.'),
    fails: z.enum(['at', 'past']).describe('Whether exactly this is past it too, or only beyond it.'),
    worse: z.enum(['less', 'more']),
    origin: z.enum(['law', 'practice']),
    source: z.string(),
  })
  .meta({ id: 'WearLimit' });

/** Days by which a limit is reached with a chance of 10, 50 and 90 %. */
const REACHED_ON = z
  .object(known({ early: DAY, middle: DAY, late: DAY }))
  .describe(
    'Days by which it is reached with a chance of 10, 50 and 90 %; null beyond ten years or where no use is known.',
  );

export const WEARING_PART = z.object({
  position: z.string().nullable(),
  value: computed('The newest reading, in the unit of the quantity.'),
  on: DAY,
  limit: WEAR_LIMIT,
  reachedOn: REACHED_ON.nullable().describe('Null where it is past a limit of practice.'),
  leansOnUsualWear: z.boolean(),
  jobId: ID.nullable().describe('The next job, where the limit may come before its end.'),
});

const WEAR_READING = {
  on: DAY,
  x: computed('Place: km or days since `since`, by `by`.'),
  value: computed('In the unit of the quantity.'),
};

const WEAR_LINE = z
  .object({
    centre: computed('Place at which level and slope are told.'),
    level: computed('The line there.'),
    slope: computed('Change for each km or day.'),
    levelVariance: computed('Of the level.'),
    slopeVariance: computed('Of the slope.'),
    scatter: computed('Standard deviation of one reading around the line.'),
    freedom: computed('Degrees of freedom for Student’s t.'),
    priorShare: computed('Share of the slope that is usual wear, not this part’s: 0 to 1.'),
    speedsUp: z.boolean().describe('The readings bend towards faster wear than the line.'),
  })
  .meta({ id: 'WearLine' });

const TO_LIMIT = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('reached-by'),
    km: z
      .object({ early: computed('km'), middle: computed('km'), late: computed('km') })
      .nullable()
      .describe('Still to drive, with a chance of 10, 50 and 90 %; null for what passes by days.'),
    on: REACHED_ON,
    leansOnUsualWear: z.boolean().describe('Few readings: most of it is usual wear.'),
  }),
  z.object({ kind: z.literal('past') }),
  z.object({ kind: z.literal('refused'), because: z.enum(['no-limit', 'one-reading', 'no-slope']) }),
]);

export const WEAR_TREND = z
  .object({
    key: z.string(),
    quantity: WEAR_QUANTITY,
    since: DAY,
    by: z.enum(['distance', 'days']),
    readings: z.array(z.object(WEAR_READING)),
    leftOut: z.array(z.object({ ...WEAR_READING, because: z.enum(['better-than-before', 'unconfirmed', 'far-off']) })),
    latest: z.object(WEAR_READING),
    isPast: z.boolean(),
    toLimit: TO_LIMIT,
    ...known({ position: z.string(), partId: ID, setBackOn: DAY, limit: WEAR_LIMIT, line: WEAR_LINE }),
  })
  .meta({ id: 'WearTrend', description: 'How one part wears, from what was measured on it since it was fitted.' });
