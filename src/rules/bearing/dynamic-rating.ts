import { type Newtons, newtons } from '../units/force.js';

/**
 * The exponent of the life law, by the kind of rolling body. Source: ISO 281:2007, clauses 5 and 7 (10/3 for line
 * contact, 3 for point contact).
 */
export const LIFE_EXPONENT = { roller: 10 / 3, ball: 3 } as const;
export type RollingBody = keyof typeof LIFE_EXPONENT;

/** Revolutions to which a C1 rating is referred: 500 h at 33⅓ rpm. Source: ISO 281, basic dynamic load rating. */
export const MILLION_REVOLUTIONS = 1e6;

/** Revolutions to which a C90 rating is referred: 3,000 h at 500 rpm. Source: catalogues of inch taper bearings. */
const NINETY_MILLION_REVOLUTIONS = 90e6;

/** C1 over C90 of a roller bearing, 90^(3/10) = 3.857: the load that gives 1 million turns against the one that gives 90. */
const MILLION_OVER_NINETY = (NINETY_MILLION_REVOLUTIONS / MILLION_REVOLUTIONS) ** (1 / LIFE_EXPONENT.roller);

/**
 * The rating on the base of 1 million revolutions, N, of a roller bearing rated at 90 million.
 * Mixing the two bases is wrong by 90 times in life, so the base stands in every name here.
 */
export function millionRating(ninetyMillionN: Newtons): Newtons {
  return newtons(ninetyMillionN * MILLION_OVER_NINETY);
}

/** The rating on the base of 90 million revolutions, N, of a roller bearing rated at 1 million. */
export function ninetyMillionRating(millionN: Newtons): Newtons {
  return newtons(millionN / MILLION_OVER_NINETY);
}
