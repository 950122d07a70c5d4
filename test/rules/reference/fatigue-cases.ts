/** Worked cases of damage sums and road equivalents. Relative tolerances stand in the tests, by how the figures are printed. */
export const CASES = {
  /** EN 1993-1-9, category 71, worked out apart from this code from the slopes. */
  F1: [
    { range: 120, cycles: 414_249 },
    { range: 100, cycles: 715_822 },
    { range: 60, cycles: 3_313_991 },
    { range: 40, cycles: 19_130_593 },
    { range: 25, cycles: Number.POSITIVE_INFINITY },
  ],
  /** A spectrum on the same detail. */
  F2: {
    blocks: [
      { cycles: 20_000, range: 120 },
      { cycles: 300_000, range: 60 },
      { cycles: 1_500_000, range: 40 },
      { cycles: 9_000_000, range: 25 },
    ],
    damage: 0.21721,
  },
  /** A published problem (homeworksource.com/p/974669): a block of 1 cycle that breaks in 10,000 and 4 that break in 100,000. */
  F3: {
    blocks: [
      { cycles: 1, toFailure: 1e4 },
      { cycles: 4, toFailure: 1e5 },
    ],
    repeats: 7_143,
  },
  /** Published form N = ½ (σa / 1000)^-10, figures worked out from it. */
  F4: {
    strength: 1_000,
    exponent: -0.1,
    blocks: [
      { amplitude: 250, cycles: 5_000, toFailure: 524_288 },
      { amplitude: 200, cycles: 10_000, toFailure: 4_882_813 },
    ],
    damage: 0.011585,
  },
  /** pavementinteractive.org, flexible pavement equivalent axle loads: published 7.9; SN 3, p_t 2.5. */
  R1: { kip: 30, factor: 7.935, published: 7.9, fourthPower: 7.716 },
  R2: { kip: 12, factor: 0.2288, fourthPower: 0.1975 },
  /** The limits of a category as shares of it (EN 1993-1-9, figure 7.1). */
  limits: { constantAmplitude: 0.737, cutOff: 0.404 },
};
