/** Worked cases of wear trends and of rare use. Tread in 32nds against miles is made up; sources of the rest beside them. */

export const TREAD = [
  { x: 0, y: 9.0 },
  { x: 2600, y: 8.4 },
  { x: 5200, y: 7.7 },
  { x: 7700, y: 7.3 },
  { x: 10300, y: 6.6 },
  { x: 12800, y: 6.0 },
] as const;

/** The fourth reading, 7.3, typed as 9.1. */
export const MISREAD = TREAD.map((point, place) => (place === 3 ? { ...point, y: 9.1 } : point));

export const TOO_FEW = [
  { x: 0, y: 7 },
  { x: 400, y: 6.9 },
  { x: 900, y: 6.9 },
] as const;

/** Certified values of NIST Statistical Reference Datasets, linear regression: Norris and Pontius. */
export const NORRIS_CERTIFIED = {
  intercept: -0.262323073774029,
  slope: 1.00211681802045,
  interceptError: 0.232818234301152,
  slopeError: 0.000429796848199937,
  scatter: 0.884796396144373,
  rSquared: 0.999993745883712,
} as const;

export const PONTIUS_CERTIFIED = {
  coefficients: [0.000673565789473684, 7.32059160401003e-7, -3.16081871345029e-15],
  errors: [0.000107938612033077, 1.57817399981659e-10, 4.86652849992036e-17],
  scatter: 0.000205177424076185,
  rSquared: 0.999999900178537,
} as const;

/** Rare demand and the gaps between: the worked example of Hyndman, Athanasopoulos, Forecasting: Principles and Practice, 2nd ed., section 12.2. */
export const RARE_DEMAND = {
  sizes: [2, 1, 11, 2, 6, 3, 7, 3, 1, 1, 1],
  gaps: [2, 2, 2, 5, 2, 1, 6, 8, 1, 3, 2],
} as const;
