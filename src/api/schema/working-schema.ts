import { z } from 'zod';
import { INPUT_NAMES } from '../../rules/explain/working.js';
import { computed, DAY } from './values.js';

const VALUE = z.union([computed('In the unit beside it.'), DAY]);
const UNIT = z.string().describe('SI unit; `day` is a day of the calendar, `none` a plain number.');
const SUBJECT = z.string().nullable().describe('Which one, where there are several.');

/** How one answer was worked out. */
export const WORKING = z
  .object({
    of: z.string().describe('What was worked out.'),
    subject: SUBJECT,
    value: VALUE,
    unit: UNIT,
    inputs: z.array(
      z.object({
        name: z.enum(INPUT_NAMES),
        subject: SUBJECT,
        value: VALUE,
        unit: UNIT,
        basis: z.enum(['measured', 'stated', 'assumed', 'rated', 'published', 'setting']).describe('How it is known.'),
        sway: computed('How far the answer moves, in its own unit, when this input alone is off by its doubt.'),
      }),
    ),
    formula: z.string(),
    source: z.string().describe('Where the formula or the limit comes from.'),
    mattersMost: z.int().nullable().describe('Place among the inputs of the one that moves the answer furthest.'),
  })
  .meta({ id: 'Working' });
