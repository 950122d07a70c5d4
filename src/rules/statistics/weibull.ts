import { logGamma } from './log-gamma.js';

/**
 * Weibull life: the share alive at age t is exp(−(t / scale)^shape). Shape below 1 is infant mortality, 1 chance,
 * above 1 wear-out. The scale, in the unit of the ages, is the age by which 63.2 % have died.
 * Source of the formulas here: NIST/SEMATECH e-Handbook of Statistical Methods, 8.1.6.2.
 */
export interface Weibull {
  readonly shape: number;
  readonly scale: number;
}

/** Share still alive at an age of 0 or more. */
export function survivalProbability({ shape, scale }: Weibull, age: number): number {
  return Math.exp(-((age / scale) ** shape));
}

/** Age by which a share (0 to 1) has died. */
export function ageReached(weibull: Weibull, share: number): number {
  return ageReachedBySurvivor(weibull, 0, share);
}

/**
 * Probability that a unit alive at `age` dies within the next `span`. This, not the share of all units dead by
 * age + span, is what the owner of a survivor asks.
 */
export function deathWithinProbability({ shape, scale }: Weibull, age: number, span: number): number {
  return -Math.expm1((age / scale) ** shape - ((age + span) / scale) ** shape);
}

/** Age by which a share (0 to 1) of the units that are alive at `age` will have died: never below `age`. */
export function ageReachedBySurvivor({ shape, scale }: Weibull, age: number, share: number): number {
  return Math.max(age, scale * ((age / scale) ** shape - Math.log1p(-share)) ** (1 / shape));
}

export function meanLife({ shape, scale }: Weibull): number {
  return scale * gamma(1 + 1 / shape);
}

/** Standard deviation of lives. */
export function spreadOfLife({ shape, scale }: Weibull): number {
  return scale * Math.sqrt(gamma(1 + 2 / shape) - gamma(1 + 1 / shape) ** 2);
}

function gamma(x: number): number {
  return Math.exp(logGamma(x));
}
