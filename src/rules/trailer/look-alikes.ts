/**
 * The number as it is compared: people write `t-07` for what is painted `T 07`. Spaces, dashes and case tell no two
 * trailers apart.
 */
function paintedAs(yardNumber: string): string {
  return yardNumber
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
}

/** Whether a number somebody read off a trailer is this trailer's. */
export function isSameNumber(read: string, yardNumber: string): boolean {
  return paintedAs(read) === paintedAs(yardNumber);
}

/**
 * Whether two painted numbers differ by one character: one other, one more, one fewer, or two neighbours swapped.
 * Those are what a tired eye and a thumb in a glove get wrong; that one character is enough is our choice.
 */
export function looksAlike(a: string, b: string): boolean {
  const [one, two] = [[...paintedAs(a)], [...paintedAs(b)]];
  const [short, long] = one.length <= two.length ? [one, two] : [two, one];
  if (long.length - short.length > 1) return false;
  const from = long.findIndex((letter, place) => letter !== short[place]);
  if (from === -1) return false;
  const rest = (of: readonly string[], start: number) => of.slice(start).join('');
  if (short.length < long.length) return rest(short, from) === rest(long, from + 1);
  const swapped = long[from] === short[from + 1] && long[from + 1] === short[from];
  return rest(short, from + 1) === rest(long, from + 1) || (swapped && rest(short, from + 2) === rest(long, from + 2));
}

/** The other numbers of a yard that could be taken for this one, in the order given. */
export function lookAlikes(yardNumber: string, others: readonly string[]): readonly string[] {
  return others.filter((other) => looksAlike(yardNumber, other));
}
