import type { z } from 'zod';

export type JsonObject = Readonly<Record<string, unknown>>;

/** One computation that can be asked for by name, with no trailer and no database. SI in and out, units in the names. */
export interface Computation {
  readonly name: string;
  /** What it answers, in one sentence. */
  readonly about: string;
  /** Where the formula or the limit comes from. */
  readonly source: string;
  readonly input: z.ZodObject;
  readonly output: z.ZodObject;
  /** A published or worked case, ready to send. */
  readonly example: JsonObject;
  /** Takes what `input` has read. Throws RangeError, with the field and the fix in its message, for what it cannot take. */
  readonly compute: (input: never) => object;
}

/** A computation whose types fit together: what `input` reads is what `compute` takes, what it gives is what `output` says. */
export function computation<Input extends z.ZodObject, Output extends z.ZodObject>(one: {
  readonly name: string;
  readonly about: string;
  readonly source: string;
  readonly input: Input;
  readonly output: Output;
  readonly example: z.input<Input>;
  readonly compute: (input: z.output<Input>) => z.input<Output>;
}): Computation {
  return one;
}
