/** Who wrote a fact down, and through which door; and which earlier fact it mends, if it mends one. */
export interface Recorded {
  readonly door: 'page' | 'api' | 'seed' | 'mail' | 'job' | 'import';
  /** Null when no person stands behind it. */
  readonly recordedBy: string | null;
  /** The moment of writing; the database's own when left out. */
  readonly recordedAt?: Date | undefined;
  /** The standing fact of the same trailer that this one takes the place of. */
  readonly correctsId?: string | null | undefined;
}

/** A fact about to be kept. Its id is made here unless the caller has one. */
export type New<Fact extends { readonly id: string }> = Omit<Fact, 'id'> & { readonly id?: string | undefined };

/** A fact as the history shows it: those that were mended or taken back are there too. */
export interface HistoryOf<Fact> {
  readonly fact: Fact;
  readonly correctsId: string | null;
  /** True for the row that took another back: its own fact never held. */
  readonly withdrawn: boolean;
  /** False when a later row mended it or took it back. */
  readonly standing: boolean;
  readonly recordedAt: Date;
  readonly recordedBy: string | null;
  readonly door: string;
}

/** The columns that every fact's row carries about its writing. */
export function recordedColumns(recorded: Recorded) {
  return {
    door: recorded.door,
    recordedBy: recorded.recordedBy,
    recordedAt: recorded.recordedAt,
    correctsId: recorded.correctsId,
  };
}
