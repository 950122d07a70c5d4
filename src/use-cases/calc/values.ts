import { z } from 'zod';
import { type CivilDate, parseCivilDate } from '../../rules/calendar/civil-date.js';
import { km } from '../../rules/units/distance.js';
import { newtons } from '../../rules/units/force.js';
import { metres } from '../../rules/units/length.js';
import { kg } from '../../rules/units/mass.js';
import { kPa } from '../../rules/units/pressure.js';

/** A quantity that goes in: a finite number in SI with its unit said, read into its type. `number` may bound it. */
export const kilograms = (what: string, number = z.number().min(0).max(1e6)) =>
  number.describe(`${what}, kg.`).transform(kg);
export const force = (what: string, number = z.number().min(-1e7).max(1e7)) =>
  number.describe(`${what}, N.`).transform(newtons);
export const length = (what: string, number = z.number().min(-100).max(100)) =>
  number.describe(`${what}, m.`).transform(metres);
export const road = (what: string, number = z.number().min(0).max(1e7)) =>
  number.describe(`${what}, km.`).transform(km);
export const pressure = (what: string, number = z.number().min(0).max(1e6)) =>
  number.describe(`${what}, kPa.`).transform(kPa);
/** Any other number: `what` says its unit, if it has one. */
export const plain = (what: string, number = z.number()) => number.describe(`${what}.`);
export const count = (what: string) => z.int().min(0).max(1_000_000).describe(`${what}.`);
/** A share of the whole, 0 to 1. */
export const share = (what: string) => z.number().min(0).max(1).describe(`${what}, 0 to 1.`);
/** A probability, or a share that is asked for: neither none nor all. */
export const chance = (what: string) => z.number().gt(0).lt(1).describe(`${what}, above 0 and below 1.`);
export const words = (what: string) => z.string().max(200).describe(`${what}.`);

/** As in everything else that is read (`input/given.ts`): earlier is a slipped century. */
const FIRST_DAY = '1930-01-01';

/** A day of the calendar. */
export const civilDay = (what: string) =>
  z
    .string()
    .refine(
      (text) => parseCivilDate(text) !== null && text >= FIRST_DAY,
      `Give a day of the calendar since ${FIRST_DAY}, written as 2026-06-02.`,
    )
    .transform((text) => text as CivilDate)
    .meta({ format: 'date', description: `${what}, YYYY-MM-DD.` });

/** A quantity that comes out. */
export const answer = (what: string) => z.number().describe(`${what}.`);
/** A quantity that comes out, null where it cannot be worked out. */
export const answerOrNull = (what: string) => z.number().nullable().describe(`${what}; null where it cannot be said.`);
