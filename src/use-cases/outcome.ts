import type { Role } from './caller.js';

/** One field that cannot stay as it is. `field` is the path of the fact (`plate.gvwrKg`); the message names the fix. */
export interface FieldProblem {
  readonly field: string;
  readonly message: string;
}

/** Why a use case did nothing. Expected, so a value; each door answers for every kind. */
export type Problem =
  | { readonly kind: 'invalid'; readonly fields: readonly FieldProblem[] }
  | { readonly kind: 'not-found'; readonly what: string }
  | { readonly kind: 'not-allowed'; readonly needs: Role }
  | { readonly kind: 'conflict'; readonly message: string };

export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

export function done<T>(value: T): Outcome<T> {
  return { ok: true, value };
}

function refused(problem: Problem): Outcome<never> {
  return { ok: false, problem };
}

export function invalid(fields: readonly FieldProblem[]): Outcome<never> {
  return refused({ kind: 'invalid', fields });
}

export function notFound(what: string): Outcome<never> {
  return refused({ kind: 'not-found', what });
}

export function notAllowed(needs: Role): Outcome<never> {
  return refused({ kind: 'not-allowed', needs });
}

export function conflict(message: string): Outcome<never> {
  return refused({ kind: 'conflict', message });
}
