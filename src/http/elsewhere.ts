/** Thrown by a guard to send a person's browser to another page of ours; programs are answered 401 or 403 instead. */
export class Elsewhere extends Error {
  override readonly name = 'Elsewhere';

  constructor(
    readonly path: string,
    /** What a program is told. */
    readonly status: 401 | 403,
  ) {
    super(path);
  }
}

/**
 * A path of ours that a person may be sent on to after signing in; anything else (another site, a scheme, a
 * backslash that browsers read as a slash) becomes the gate.
 */
export function ownPath(path: unknown): string {
  return typeof path === 'string' && /^\/(?![/\\])[^\\\s]*$/.test(path) && path.length < 500 ? path : '/';
}
