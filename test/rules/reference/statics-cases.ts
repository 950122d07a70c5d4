/**
 * Worked cases of statics, in pounds and inches rearward from the coupler; each was worked out apart from this code
 * and checked a second way (moments about the coupler). Tolerance: they are printed to a tenth of a pound or less.
 */
export const S1 = {
  weights: [
    { pounds: 2_800, at: 165 },
    { pounds: 9_000, at: 168 },
  ],
  axleCentre: 180,
  tongue: 833.3,
  share: 0.0706,
  onAxles: 10_966.7,
};

/** S1's load, placed for a tongue of 12 % of the whole. */
export const S2 = { share: 0.12, at: 156.35 };

/** S1's load moved forward. */
export const S3 = { forward: 6, tongueGains: 300 };

/** A machine on the tail while it loads: the hitch is pulled up. */
export const S11 = {
  weights: [
    { pounds: 8_000, at: 252 },
    { pounds: 2_800, at: 165 },
  ],
  axleCentre: 180,
  tongue: -2_967,
};
