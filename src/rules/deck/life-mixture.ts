import type { Lifetime } from '../statistics/lifetime.js';

/**
 * What is believed of lives after some were seen, with all the doubt that few decks leave: Weibull lives of unknown
 * shape and scale. For each shape the scale is integrated out exactly, so that
 *
 *     S(x) = Σ weight · (rate / (rate + x^shape))^count
 *
 * Ages are shares of the life expected beforehand, so decks of unlike wood or shelter can be counted together.
 * Source: the conjugate analysis of Weibull lives of known shape (scale^−shape is gamma distributed), e.g. R. M. Soland,
 * IEEE Trans. Reliability R-18 (1969), who also takes the shape from a list of values, each with its weight.
 */
export interface LifeMixture {
  readonly components: readonly LifeComponent[];
  /** Deaths that the estimate beforehand counts for, and those seen. */
  readonly count: number;
}

interface LifeComponent {
  readonly shape: number;
  readonly weight: number;
  readonly rate: number;
}

/** The estimate beforehand counts as much as two decks worn out. Our choice: it must yield to a yard's own handful. */
const PRIOR_DEATHS = 2;

/** Puts the median of S at an age of 1 for every shape: (rate / (rate + 1))^count = 1/2. */
const PRIOR_RATE = 1 / (2 ** (1 / PRIOR_DEATHS) - 1);

/**
 * Wear-out beforehand: shape about 3, between 1.1 and 8 with 95 %. Our choice; decay is wear-out, so above 1, and boards
 * of one deck go together, so steeper than for chance. Listed from 2.5 deviations below to 3 above.
 */
export const SHAPE_PRIOR = { median: 3, logSpread: 0.5 } as const;
const DEVIATIONS = [-2.5, -2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3] as const;
const SHAPES: readonly { readonly shape: number; readonly logWeight: number }[] = DEVIATIONS.map((deviation) => ({
  shape: SHAPE_PRIOR.median * Math.exp(SHAPE_PRIOR.logSpread * deviation),
  logWeight: -(deviation ** 2) / 2,
}));

/** What lives told, for every shape listed: enough to learn from, and quick to add one more to. */
export interface ToldByLives {
  readonly deaths: number;
  readonly sumLogDeathAge: number;
  /** Σ age^shape − watchedFrom^shape, by shape. */
  readonly exposures: readonly number[];
}

export function toldBy(lives: readonly Lifetime[]): ToldByLives {
  const exposures = SHAPES.map(() => 0);
  let deaths = 0;
  let sumLogDeathAge = 0;
  for (const { age, died, watchedFrom = 0, count = 1 } of lives) {
    if (!(age > watchedFrom)) continue;
    for (let i = 0; i < SHAPES.length; i++) {
      const { shape } = SHAPES[i] as (typeof SHAPES)[number];
      exposures[i] = (exposures[i] as number) + count * (age ** shape - watchedFrom ** shape);
    }
    if (!died) continue;
    deaths += count;
    sumLogDeathAge += count * Math.log(age);
  }
  return { deaths, sumLogDeathAge, exposures };
}

/** From what lives told to what is believed of the next one. */
export function learnt({ deaths, sumLogDeathAge, exposures }: ToldByLives): LifeMixture {
  const count = PRIOR_DEATHS + deaths;
  const logs = SHAPES.map(({ shape, logWeight }, i) => {
    const rate = PRIOR_RATE + (exposures[i] as number);
    return logWeight + deaths * Math.log(shape) + (shape - 1) * sumLogDeathAge - count * Math.log(rate);
  });
  const most = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return {
    count,
    components: SHAPES.map(({ shape }, i) => ({
      shape,
      weight: (weights[i] as number) / total,
      rate: PRIOR_RATE + (exposures[i] as number),
    })),
  };
}

/**
 * Probability that one who was alive at `from` (its life until then is among those told) is alive at `age`, from there
 * on. Ages at or before `from` give 1.
 */
export function aliveAt({ components, count }: LifeMixture, from: number, age: number): number {
  if (age <= from) return 1;
  return components.reduce(
    (sum, { shape, weight, rate }) => sum + weight * (rate / (rate + age ** shape - from ** shape)) ** count,
    0,
  );
}

/** Age by which a share (0 to 1) of those alive at `now` will have died; `from` as in `aliveAt`, not after `now`. */
export function ageOfShare(mixture: LifeMixture, from: number, now: number, share: number): number {
  const wanted = (1 - share) * aliveAt(mixture, from, now);
  let low = now;
  let high = Math.max(now, 1) * 2;
  while (aliveAt(mixture, from, high) > wanted) high *= 2;
  for (let i = 0; i < 60 && high - low > 1e-7; i++) {
    const middle = (low + high) / 2;
    if (aliveAt(mixture, from, middle) > wanted) low = middle;
    else high = middle;
  }
  return high;
}
