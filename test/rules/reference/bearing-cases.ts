/**
 * Worked cases of bearing life, worked out apart from this code from the formulas of ISO 281, unless a source is named.
 * Tolerances are relative and as close as the printed figures allow.
 */
export const CASES = {
  /** One bearing under a steady load, C90 base. */
  B1: { cone: 'L68149', ninetyLbf: 2_650, loadLbf: 1_225, turnsPerMile: 770, turns: 1.1783522e9, miles: 1_530_328 },
  /** The same from the catalogue's own rounding of C1. */
  B2: { millionLbf: 10_200, loadLbf: 1_225, turns: 1.1700748e9 },
  /** Three loads over shares of the miles; the plain average is the mistake. */
  B3: {
    loads: [
      { loadLbf: 500, share: 0.3 },
      { loadLbf: 1_000, share: 0.5 },
      { loadLbf: 1_600, share: 0.2 },
    ],
    meanLbf: 1_126.61,
    plainAverage: 970,
    miles: 2_023_000,
  },
  /** Life left when the load is that many times the first. */
  B4: [
    { times: 1.1, life: 0.7278 },
    { times: 1.2, life: 0.5446 },
  ],
  /** Radial load with thrust beyond and within e. */
  B5: {
    cone: 'L68149',
    radialN: 5_000,
    beyond: { thrustN: 3_000, loadN: 6_320, millionTurns: 720.52 },
    within: { thrustN: 1_500, loadN: 5_000 },
  },
  /**
   * Budynas and Nisbett, Mechanical Engineering Design, chapter 11, worked example of a taper pair: 800 rpm, 5,000 h,
   * reliability 0.995 each. The closed form takes ln(1/R) as 1 − R. 12,194 N is past the 12,100 N of the first choice.
   */
  B6: {
    radialN: { first: 2_170, second: 2_654 },
    thrustN: 1_690,
    rpm: 800,
    hours: 5_000,
    reliability: 0.995,
    ratedLives: 2.6667,
    byK: [
      { k: 1.5, loadN: 4_650.4, ratingN: 11_484 },
      { k: 1.67, loadN: 4_937.7, ratingN: 12_194 },
    ],
  },
  /** A published homework solution, ball bearing: 2.5 kN × 1.2, 350 rpm, 25,000 h, reliability 0.90. */
  B7: { loadN: 3_000, rpm: 350, hours: 25_000, ratedLives: 525, ratingN: 24_255, chosenN: 25_500, reliability: 0.9195 },
  /** Two bearings on one shaft. */
  B8: {
    lives: [900e6, 1_600e6],
    byExponent: [
      { exponent: 9 / 8, life: 619.05e6 },
      { exponent: 1.5, life: 711.76e6 },
    ],
  },
};

/** The catalogue values of each cone: C90 in both units as printed. Origin of each in `src/rules/bearing/bearing-table.ts`. */
export const PRINTED_RATINGS = [
  { cone: 'L68149', ninetyN: 11_800, ninetyLbf: 2_650, millionN: 45_500 },
  { cone: 'L44649', ninetyN: 7_210, ninetyLbf: 1_621, millionN: 27_800 },
  { cone: '15123', ninetyN: 12_100, ninetyLbf: 2_720, millionN: 46_700 },
  { cone: '02475', ninetyN: 15_300, ninetyLbf: 3_440, millionN: 59_000 },
  { cone: 'LM67048', ninetyN: 12_000, ninetyLbf: 2_698, millionN: 46_300 },
  { cone: '14125A', ninetyN: 12_900, ninetyLbf: 2_900, millionN: 49_800 },
  { cone: '25580', ninetyN: 20_900, ninetyLbf: 4_699, millionN: 80_600 },
  { cone: '387A', ninetyN: 23_100, ninetyLbf: 5_193, millionN: 89_100 },
];

/** a1 of ISO 281, edition of 2007, which reckons with a least life. From memory, unverified. */
export const LIFE_FACTORS_2007 = [
  { percent: 95, factor: 0.64 },
  { percent: 96, factor: 0.55 },
  { percent: 97, factor: 0.47 },
  { percent: 98, factor: 0.37 },
  { percent: 99, factor: 0.25 },
];

/** a1 of the edition of 1990, which is the Weibull law of shape 1.5 without a least life. From memory, unverified. */
export const LIFE_FACTORS_1990 = [
  { percent: 95, factor: 0.62 },
  { percent: 96, factor: 0.53 },
  { percent: 97, factor: 0.44 },
  { percent: 98, factor: 0.33 },
  { percent: 99, factor: 0.21 },
];
