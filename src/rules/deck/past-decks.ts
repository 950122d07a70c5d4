/** What decks that wore out lasted, as they are, with no law behind it. It leaves out every deck still in use. */
export interface PastDecks {
  readonly decks: number;
  readonly medianYears: number;
  /** Medians of the lower and the upper half; null below four decks, where halves say nothing. */
  readonly lowerYears: number | null;
  readonly upperYears: number | null;
}

/** Fewest decks whose halves have a median worth the name. Our choice. */
const FEWEST_FOR_HALVES = 4;

/**
 * Median and quartiles by medians of the halves; with an odd number the middle one belongs to neither half.
 * Source: D. S. Moore, G. P. McCabe, Introduction to the Practice of Statistics. Null without any deck.
 */
export function pastDecks(years: readonly number[]): PastDecks | null {
  if (years.length === 0) return null;
  const sorted = years.toSorted((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const halves = sorted.length >= FEWEST_FOR_HALVES;
  return {
    decks: sorted.length,
    medianYears: medianOf(sorted),
    lowerYears: halves ? medianOf(sorted.slice(0, half)) : null,
    upperYears: halves ? medianOf(sorted.slice(-half)) : null,
  };
}

function medianOf(sorted: readonly number[]): number {
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2;
}
