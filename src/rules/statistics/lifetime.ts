/**
 * How long one unit has lasted, in any unit of age (years, km, hours) as long as all of a list share it.
 * A unit that still runs, was sold or was replaced for another reason has not died: it is censored, and says that such
 * units last at least so long. Leaving it out, or counting it as a death, are the two usual mistakes.
 */
export interface Lifetime {
  /** Age at its death, or when last seen alive. */
  readonly age: number;
  readonly died: boolean;
  /**
   * Age at which it came under watch, 0 when from new. Units that were old when records began are here because they had
   * lasted (left truncation); counting their early years would make lives look longer than they are.
   */
  readonly watchedFrom?: number;
  /** How many units of just this history; 1 when left out. */
  readonly count?: number;
}
