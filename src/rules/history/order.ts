/** Compares texts, and so days, ids and codes, by their characters: the same on every machine. */
export function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The list in this order: itself where it has it already. Facts mostly come in the order of time, and looking costs less than sorting. */
export function inOrder<T>(list: readonly T[], by: (a: T, b: T) => number): readonly T[] {
  for (let i = 1; i < list.length; i++) {
    if (by(list[i - 1] as T, list[i] as T) > 0) return list.toSorted(by);
  }
  return list;
}
