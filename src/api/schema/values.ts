import { z } from 'zod';
import type { Plausible } from '../../rules/facts/plausible.js';

/** An id of the yard. */
export const ID = z.string().meta({ format: 'uuid' });

/** A day of the calendar, with no hour and no zone. */
export const DAY = z.string().meta({ format: 'date', description: 'Day, YYYY-MM-DD.' });

/** A moment. */
export const INSTANT = z.string().meta({ format: 'date-time', description: 'Moment, in UTC.' });

/** A text of at most so many characters. */
export function text(longest: number, what: string): z.ZodString {
  return z.string().max(longest).describe(what);
}

/** A number with its unit and the range within which it is believed. */
export function quantity(range: Plausible): z.ZodNumber {
  const number = (range.whole ? z.int() : z.number()).min(range.low).max(range.high);
  return number.describe(range.unit === null ? sentence(range.what) : `${sentence(range.what)}, ${range.unit}`);
}

/** A number that was worked out, with its unit. */
export function computed(what: string): z.ZodNumber {
  return z.number().describe(what);
}

type Nullable<Shape extends z.ZodRawShape> = { [Key in keyof Shape]: z.ZodNullable<Shape[Key]> };
type Nullish<Shape extends z.ZodRawShape> = { [Key in keyof Shape]: z.ZodOptional<z.ZodNullable<Shape[Key]>> };

/** Fields of a fact as they are answered: all there, null where nobody knows. */
export function known<Shape extends z.ZodRawShape>(shape: Shape): Nullable<Shape> {
  return mapped(shape, (field) => z.nullable(field as z.ZodType)) as Nullable<Shape>;
}

/** Fields of a fact as they come in: left out or null where nobody knows. */
export function maybe<Shape extends z.ZodRawShape>(shape: Shape): Nullish<Shape> {
  return mapped(shape, (field) => z.nullish(field as z.ZodType)) as unknown as Nullish<Shape>;
}

function mapped(shape: z.ZodRawShape, change: (field: unknown) => z.ZodType): Record<string, z.ZodType> {
  return Object.fromEntries(Object.entries(shape).map(([name, field]) => [name, change(field)]));
}

function sentence(what: string): string {
  return what.charAt(0).toUpperCase() + what.slice(1);
}
