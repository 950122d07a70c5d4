import type { z } from 'zod';
import { done, type FieldProblem, invalid, notFound, type Outcome } from '../outcome.js';
import type { Computation, JsonObject } from './computation.js';
import { COMPUTATIONS } from './computations.js';

/** The computation of that name; null when there is none. */
export function computationNamed(name: string): Computation | null {
  return COMPUTATIONS.find((one) => one.name === name) ?? null;
}

/**
 * Works out one computation. `input` may hold anything: what does not fit is refused by its field, with the fix, and
 * nothing is worked out.
 */
export function calculate(name: string, input: unknown): Outcome<JsonObject> {
  const found = computationNamed(name);
  if (found === null) return notFound('computation');
  const read = found.input.strict().safeParse(input);
  if (!read.success) return invalid(read.error.issues.flatMap((issue) => problemsOf(issue, found, input)));
  try {
    const answer = found.compute(read.data as never) as JsonObject;
    return isSayable(answer) ? done(answer) : invalid([{ field: 'input', message: BEYOND }]);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return invalid([{ field: 'input', message: error.message }]);
  }
}

const BEYOND =
  'These numbers, each in its range, lead together beyond what can be worked out: give values nearer to real ones.';

/** JSON has no infinity and no "not a number": either would arrive as an unknown, which it is not. */
function isSayable(answer: unknown): boolean {
  if (typeof answer === 'number') return Number.isFinite(answer);
  return typeof answer !== 'object' || answer === null || Object.values(answer).every(isSayable);
}

function problemsOf(issue: z.core.$ZodIssue, { input }: Computation, given: unknown): readonly FieldProblem[] {
  const field = pathOf(issue.path);
  if (issue.code === 'unrecognized_keys') {
    const known = Object.keys(issue.path.length === 0 ? input.shape : {});
    const instead = known.length === 0 ? '' : `, or use one of: ${known.join(', ')}`;
    return issue.keys.map((key) => ({
      field: pathOf([...issue.path, key]),
      message: `There is no field of this name. Leave it out${instead}.`,
    }));
  }
  return [{ field: field || 'input', message: messageOf(issue, isMissing(given, issue.path)) }];
}

function messageOf(issue: z.core.$ZodIssue, missing: boolean): string {
  switch (issue.code) {
    case 'invalid_type':
      return `${missing ? 'This is needed: give' : 'Give this as'} ${AS[issue.expected] ?? `a ${issue.expected}`}.`;
    case 'too_small':
      return `Give ${SIZED.has(issue.origin) ? 'more here:' : 'a number of'} ${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}.`;
    case 'too_big':
      return `Give ${SIZED.has(issue.origin) ? 'less here:' : 'a number of'} ${issue.inclusive ? 'at most' : 'less than'} ${issue.maximum}.`;
    case 'invalid_value':
      return `Use one of: ${issue.values.join(', ')}.`;
    case 'custom':
      return issue.message;
    default:
      return `This does not fit: ${issue.message}.`;
  }
}

const AS: Readonly<Record<string, string>> = {
  number: 'a finite number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object with named fields',
};

/** What is counted in entries or characters and not measured. */
const SIZED = new Set(['array', 'string', 'set']);

function isMissing(given: unknown, path: readonly PropertyKey[]): boolean {
  let value = given;
  for (const key of path) value = (value as Record<PropertyKey, unknown> | null | undefined)?.[key];
  return value === undefined;
}

/** `weights[0].massKg`, as everywhere else. */
function pathOf(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? String(key) : `${text}.${String(key)}`),
    '',
  );
}
