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

/**
 * Independent axles on a rigid frame hinged at the coupler, worked out apart from this code; S5 and S8 a second way, as
 * the minimum of the springs' energy. Rates in pounds per inch of a whole axle, heights in inches, nose high positive.
 */
const TANDEM = {
  weights: [
    { pounds: 2_800, at: 165 },
    { pounds: 9_000, at: 160 },
  ],
  axles: [163.5, 196.5],
  rate: 2_000,
};
const TRIPLE = {
  weights: [
    { pounds: 4_200, at: 205 },
    { pounds: 14_000, at: 225 },
  ],
  axles: [210, 244, 278],
  rate: 1_800,
};

/** How far the springs are pressed when S4 stands level. */
export const S4_OFFSET = 2.64167;

export const SPRINGS = [
  { id: 'S4 level', ...TANDEM, raised: 0, ground: null, onAxles: [5_283.3, 5_283.3], tongue: 1_233.3 },
  { id: 'S5 nose 3 in high', ...TANDEM, raised: 3, ground: null, onAxles: [4_687.9, 5_778.8], tongue: 1_333.3 },
  { id: 'S6 nose 3 in low', ...TANDEM, raised: -3, ground: null, onAxles: [5_878.7, 4_787.9], tongue: 1_133.3 },
  { id: 'S7 a 2 in bump in front', ...TANDEM, raised: 0, ground: [2, 0], onAxles: [7_646.9, 3_316.7], tongue: 836.4 },
  { id: 'S8 a 6 in bump in front', ...TANDEM, raised: 0, ground: [6, 0], onAxles: [11_633, 0], tongue: 167 },
  {
    id: 'S9 level',
    ...TRIPLE,
    raised: 0,
    ground: null,
    onAxles: [5_479.5, 5_479.5, 5_479.5],
    tongue: 1_761.5,
  },
  {
    id: 'S9 nose 4 in high',
    ...TRIPLE,
    raised: 4,
    ground: null,
    onAxles: [4_397, 5_387.5, 6_378],
    tongue: 2_037.5,
  },
  {
    id: 'S10 a 3 in dip under the middle',
    ...TRIPLE,
    raised: 0,
    ground: [0, -3, 0],
    onAxles: [7_008.9, 1_856.5, 7_504.1],
    tongue: 1_830.5,
  },
];

/** The bump under S4's front axle at which the rear one leaves the ground. */
export const S8_LIFTS_AT = 5.373;

/** One axle whose load sits off centre. */
export const S12 = { onAxle: 5_000, offCentre: 4, track: 80, heavier: 2_750, lighter: 2_250 };
