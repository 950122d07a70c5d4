import { type Newtons, newtons } from '../units/force.js';
import { LIFE_EXPONENT, type RollingBody } from './dynamic-rating.js';

/**
 * How the lives of like bearings scatter about their rating life: a Weibull law in x = life over the rated revolutions,
 * R(x) = exp(−((x − least) / spread)^shape).
 */
export interface LifeScatter {
  /** Life, in rated lives, below which none fails. */
  readonly least: number;
  /** Characteristic life less the least, in rated lives: by then 63 % of the rest have failed. */
  readonly spread: number;
  readonly shape: number;
}

/** Taper bearings on the C90 base. Source: Budynas and Nisbett, Mechanical Engineering Design, chapter 11 (one maker's values). */
export const TAPER_SCATTER: LifeScatter = { least: 0, spread: 4.48, shape: 1.5 };

/** Ball and straight roller bearings on the C1 base. Source: the same book, chapter 11 (another maker's values). */
export const BALL_SCATTER: LifeScatter = { least: 0.02, spread: 4.459 - 0.02, shape: 1.483 };

/**
 * The life factor a1 for a reliability above 90 %, keyed by percent: L = a1 L10. Source: ISO 281:2007, table of a1.
 * From memory, unverified.
 */
export const LIFE_FACTOR: ReadonlyMap<number, number> = new Map([
  [90, 1],
  [95, 0.64],
  [96, 0.55],
  [97, 0.47],
  [98, 0.37],
  [99, 0.25],
  [99.5, 0.175],
  [99.9, 0.093],
]);

/** The same in the edition of 1990, which older catalogues print. From memory, unverified. */
export const OLDER_LIFE_FACTOR: ReadonlyMap<number, number> = new Map([
  [90, 1],
  [95, 0.62],
  [96, 0.53],
  [97, 0.44],
  [98, 0.33],
  [99, 0.21],
]);

/**
 * Life at a reliability over the life at 90 %, by the Weibull law with no least life:
 * (ln(1/R) / ln(1/0.9))^(1/shape). R above 0 and below 1, else RangeError.
 */
export function lifeAtReliability(reliability: number, shape: number = TAPER_SCATTER.shape): number {
  requireReliability(reliability);
  return (Math.log(1 / reliability) / Math.log(1 / 0.9)) ** (1 / shape);
}

/** Share of bearings still running at `x` rated lives: exp(−((x − least) / spread)^shape), and 1 up to the least life. */
export function reliabilityAt(x: number, scatter: LifeScatter): number {
  return x <= scatter.least ? 1 : Math.exp(-(((x - scatter.least) / scatter.spread) ** scatter.shape));
}

/** What is asked of a bearing: a load for a number of revolutions with a reliability. */
export interface Duty {
  readonly loadN: Newtons;
  /** Revolutions wanted over those the rating is referred to. */
  readonly ratedLives: number;
  readonly reliability: number;
}

/**
 * The rating a bearing must have for a duty, N, on the base that `ratedLives` is counted in:
 * C = P (x / x_R)^(1/p), where x_R is the life, in rated lives, at which the reliability stands at what is wanted.
 * `approximate` takes ln(1/R) as 1 − R, as the textbook's closed form does; near 1 the two agree.
 */
export function ratingForDuty(
  { loadN, ratedLives, reliability }: Duty,
  scatter: LifeScatter,
  body: RollingBody,
  approximate = false,
): Newtons {
  requireReliability(reliability);
  const rarity = approximate ? 1 - reliability : Math.log(1 / reliability);
  const lifeThere = scatter.least + scatter.spread * rarity ** (1 / scatter.shape);
  return newtons(loadN * (ratedLives / lifeThere) ** (1 / LIFE_EXPONENT[body]));
}

/** The reliability with which a bearing of a rating, N, bears a load for so many rated lives: x at the load is x (P/C)^p. */
export function reliabilityOfRating(
  ratingN: Newtons,
  { loadN, ratedLives }: Pick<Duty, 'loadN' | 'ratedLives'>,
  scatter: LifeScatter,
  body: RollingBody,
): number {
  return reliabilityAt(ratedLives * (loadN / ratingN) ** LIFE_EXPONENT[body], scatter);
}

function requireReliability(reliability: number): void {
  if (!(reliability > 0 && reliability < 1)) {
    throw new RangeError(`a reliability is above 0 and below 1, not ${reliability}`);
  }
}
