import { z } from 'zod';

/** What every refused request is answered with. */
export const PROBLEM = z
  .object({
    problem: z.object({
      kind: z.enum([
        'invalid',
        'not-found',
        'not-allowed',
        'conflict',
        'unreadable',
        'not-signed-in',
        'not-accepted',
        'method-not-allowed',
        'too-large',
        'wrong-media-type',
        'too-many-requests',
        'failed',
      ]),
      title: z.string(),
      message: z.string().describe('What is wrong and what mends it, for a person to read.'),
      fields: z
        .array(
          z.object({
            field: z.string().describe('Path of the field, such as build.axles[0].gawrKg.'),
            message: z.string().describe('What to give instead.'),
          }),
        )
        .optional()
        .describe('There when the kind is invalid: every field to mend.'),
    }),
  })
  .meta({ id: 'Problem' });
