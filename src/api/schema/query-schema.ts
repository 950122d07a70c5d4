import { z } from 'zod';

/** Far enough for any yard; beyond it somebody guesses. */
const LAST_PAGE = 100_000;

const PAGE = z.coerce
  .number({ error: 'Give the page as a whole number from 1.' })
  .int({ error: 'Give the page as a whole number from 1.' })
  .min(1, { error: 'Give the page as a whole number from 1.' })
  .max(LAST_PAGE, { error: `Give a page of at most ${LAST_PAGE}.` })
  .default(1)
  .describe('Which page of the list, from 1.');

const SEARCH = z.string().trim().max(80, { error: 'Shorten the text to 80 characters.' }).optional();

/** What may follow the question mark of a list. Anything else is refused: a misspelt filter would show everything. */
export function listQuery<Shape extends z.ZodRawShape>(shape: Shape) {
  return z.strictObject({ page: PAGE, ...shape });
}

/** Part of a number or name to look for. */
export function search(what: string) {
  return SEARCH.describe(what);
}

/** One of some words. */
export function oneOf<const Words extends readonly [string, ...string[]]>(words: Words, what: string) {
  return z
    .enum(words, { error: `Choose from: ${words.join(', ')}.` })
    .optional()
    .describe(what);
}

export const PAGE_QUERY = listQuery({});

export const BETTER_QUERY = z.strictObject({
  flag: z
    .string()
    .trim()
    .max(80, { error: 'Give the key of a flag that is up.' })
    .optional()
    .describe('The key of a class-drift or outgrown flag; the first that is up, when left out.'),
});
