import { gammaQuantile } from './distributions.js';

/** What is held of a rate of failures: a gamma distribution, worth `failures` seen over `exposure` (trailer-years, km …). */
interface RateBelief {
  readonly failures: number;
  readonly exposure: number;
}

/**
 * A prior and what was seen since, together. A gamma prior on the rate of a Poisson count stays gamma.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.6.
 */
export function updatedRate(prior: RateBelief, seen: RateBelief): RateBelief {
  return { failures: prior.failures + seen.failures, exposure: prior.exposure + seen.exposure };
}

/** The expected rate, per unit of exposure. */
export function expectedRate({ failures, exposure }: RateBelief): number {
  return failures / exposure;
}

/** The rate that the true one is below with this probability. */
export function rateQuantile({ failures, exposure }: RateBelief, probability: number): number {
  return gammaQuantile(probability, failures, exposure);
}
