/** How often one load came, and how often it could come before failure. */
export interface CycleBlock {
  readonly cycles: number;
  /** Cycles to failure at this load; Infinity below the cut-off. */
  readonly toFailure: number;
}

/**
 * Damage done by blocks of cycles, D = Σ n/N (Palmgren and Miner). Failure is expected at 1; tests have seen it from
 * 0.3 to 3, so it ranks use and foretells no day. Cycles from 0 on and lives above 0, else RangeError.
 */
export function minerSum(blocks: readonly CycleBlock[]): number {
  let damage = 0;
  for (const { cycles, toFailure } of blocks) {
    if (!(cycles >= 0) || !(toFailure > 0)) throw new RangeError(`${cycles} of ${toFailure} cycles is no damage`);
    damage += cycles / toFailure;
  }
  return damage;
}

/** How many times over a block of use can be repeated until its damage comes to 1; Infinity when it does none. */
export function repeatsToFailure(blocks: readonly CycleBlock[]): number {
  return 1 / minerSum(blocks);
}
