import { betaCdf, betaQuantile } from '../statistics/beta-distribution.js';

/** What was used in a stretch of days: kilometres, or trips. */
export interface UseWindow {
  readonly amount: number;
  readonly days: number;
  /** Days from the middle of the stretch to the last day known. */
  readonly ago: number;
}

/** What is taken to be so before much has been seen. */
interface UsePrior {
  /** Size of a haul, in the unit of the amounts. Weighs as much as one window. */
  readonly haul: number;
  /** Days after which use counts half as much as today's. */
  readonly memoryDays: number;
  /**
   * How far a haul passes a limit, in hauls. 0 for trips. For distances, which are passed on the way, about ½; ⅓ is
   * taken, so that the median is the plain sum anyone can redo: what is left over what is used a day.
   */
  readonly overshoot: number;
}

/** How fast a trailer is used, and how surely that is known. */
export interface UseRate {
  /** Amount a day. */
  readonly perDay: number;
  /** How lumpy it comes: variance of what is used in a stretch over its mean. Hauls at random, all alike, give their size. */
  readonly haul: number;
  /** Hauls' worth of use that the rate was learned from, old ones counted less, and a third of one for not knowing. */
  readonly hauls: number;
  /** Days they came in, old ones counted less. */
  readonly days: number;
  readonly overshoot: number;
}

/**
 * Learns a rate of use from windows, newest first. Null when nothing was used in any of them.
 *
 * Model: hauls of size `haul` come at random at a rate that is not known for sure. Seen `hauls` of them in `days`, the
 * rate has a gamma distribution with shape `hauls` and scale 1/`days` (Poisson process; neutral prior of shape ⅓, Kerman,
 * Electron. J. Statist. 5 (2011) 1450, under which the median is what was seen). Old windows are discounted by half for each `memoryDays`, so that use may change (gamma–Poisson with a discount: Smith,
 * J. R. Statist. Soc. B 41 (1979) 375; Harvey and Fernandes, J. Bus. Econ. Statist. 7 (1989) 407). A trailer that
 * goes out seldom is remembered by hauls instead, as Croston smooths (see `HAULS_REMEMBERED`).
 */
export function learnUseRate(windows: readonly UseWindow[], prior: UsePrior): UseRate | null {
  let amount = 0;
  let days = 0;
  for (const window of windows) {
    amount += window.amount;
    days += window.days;
  }
  if (amount <= 0 || days <= 0) return null;
  const haul = Math.max(
    lumpiness(windows, amount / days, prior.haul, 1),
    lumpiness(windows, amount / days, prior.haul, 3),
  );
  const memory = Math.max(prior.memoryDays, (HAULS_REMEMBERED * haul * days) / amount);
  let seenAmount = 0;
  let seenDays = 0;
  for (const window of windows) {
    const weight = 2 ** (-window.ago / memory);
    seenAmount += weight * window.amount;
    seenDays += weight * window.days;
  }
  return {
    perDay: seenAmount / seenDays,
    haul,
    hauls: seenAmount / haul + NEUTRAL,
    days: seenDays,
    overshoot: prior.overshoot,
  };
}

/** Hauls after which one counts half: a smoothing constant of 0.1 a haul, as Croston's method is commonly run. */
const HAULS_REMEMBERED = Math.log(0.5) / Math.log(0.9);

/** Shape of the neutral prior. */
const NEUTRAL = 1 / 3;

/**
 * Variance over mean of windows, `together` of them at a time, drawn to the prior haul with the weight of one window.
 * Several together see what one by one hides: weeks of work and weeks of standing. The greater of both is taken, which
 * also makes up for having only an estimate. Moment estimate of a gamma or compound Poisson process from uneven windows.
 */
function lumpiness(windows: readonly UseWindow[], perDay: number, priorHaul: number, together: number): number {
  let sum = 0;
  let count = 0;
  for (let first = 0; first + together <= windows.length; first += together) {
    let amount = 0;
    let days = 0;
    for (let i = first; i < first + together; i++) {
      amount += (windows[i] as UseWindow).amount;
      days += (windows[i] as UseWindow).days;
    }
    sum += (amount - perDay * days) ** 2 / (perDay * days);
    count++;
  }
  return (priorHaul + sum) / Math.max(1, count);
}

/**
 * Days by whose end `amount` has been used with chance `chance`: the time to `k` more hauls at a rate with a gamma
 * distribution, days · Gamma(k) / Gamma(hauls), which is a beta prime distribution. `k` is the amount in hauls, and the
 * overshoot, since a limit is passed in the midst of one. Above 0, not rounded.
 */
export function daysToUse(rate: UseRate, amount: number, chance: number): number {
  const share = betaQuantile(chance, amount / rate.haul + rate.overshoot, rate.hauls);
  return (rate.days * share) / (1 - share);
}

/** Chance that `amount` has been used by the end of that many days: the inverse of `daysToUse`. */
export function chanceToUse(rate: UseRate, amount: number, days: number): number {
  return days <= 0 ? 0 : betaCdf(days / (days + rate.days), amount / rate.haul + rate.overshoot, rate.hauls);
}
