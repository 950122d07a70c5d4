import { z } from 'zod';
import { FIT } from './fit-schema.js';
import { COMPARISON, FLAG, READINESS } from './result-schema.js';
import { computed, DAY, ID } from './values.js';

const COUNT = z.int();
const TRAILER = { trailerId: ID, yardNumber: z.string() };
const TIGHTEST = {
  tightest: COMPARISON.nullable().describe(
    'The limit with least left, as a share of it; null when none could be held.',
  ),
  marginShare: computed('What is left of that limit, as a share of it; negative when over.').nullable(),
};
const CLASH = z
  .object({ jobId: ID, name: z.string(), startsOn: DAY, endsOn: DAY })
  .meta({ id: 'Clash', description: 'A job booked on the trailer for some of the same days.' });

const PASSED_OVER = z
  .object({
    counts: z.object({ gone: COUNT, down: COUNT, booked: COUNT, 'too-small': COUNT }),
    nearest: z
      .array(
        z.object({
          ...TRAILER,
          why: z.discriminatedUnion('kind', [
            z.object({ kind: z.enum(['gone', 'down']) }),
            z.object({ kind: z.literal('booked'), clashes: z.array(CLASH) }),
            z.object({ kind: z.literal('too-small'), payloadKg: computed('kg'), shortKg: computed('kg') }),
          ]),
        }),
      )
      .describe('Those nearest to a yes; a long list is cut short.'),
  })
  .meta({ id: 'PassedOver', description: 'Trailers that what is kept of them already rules out.' });
const NOT_ASKED = COUNT.describe('Worth asking, but enough likelier ones came first.');

export const RANKING = z
  .object({
    ranked: z
      .array(
        z.object({
          ...TRAILER,
          inService: z.boolean(),
          fit: FIT,
          ...TIGHTEST,
          clashes: z.array(CLASH),
          hoursFirst: computed('Hours of work on the checks that must be done first.'),
        }),
      )
      .describe('Best first.'),
    passedOver: PASSED_OVER,
    notAsked: NOT_ASKED,
  })
  .meta({ id: 'TrailerRanking' });

const DONE_BY = z
  .object({
    ...TRAILER,
    carries: COUNT.describe('Loads that keep well within every known limit.'),
    ofLoads: COUNT,
    ...TIGHTEST,
    busy: COUNT.describe('Of the days of that work, on how many it was out itself or is booked.'),
    ofDays: COUNT,
  })
  .meta({ id: 'WorkDoneBy' });

export const BETTER_TRAILER = z.object({
  flag: FLAG.nullable().describe(
    'The flag whose work is meant; null when none is up, and then nothing else is answered.',
  ),
  best: DONE_BY.nullable().describe('Null when no trailer carries all of it.'),
  all: z.array(DONE_BY.extend({ readiness: READINESS })).describe('By weight alone, best first.'),
  passedOver: PASSED_OVER,
  notAsked: NOT_ASKED,
});
