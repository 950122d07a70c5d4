import type { Assessment } from '../assess.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import { miles } from '../units/distance.js';
import { type SpentOn, spentOn } from './spent.js';
import { type YearAhead, yearAhead } from './year-ahead.js';

/**
 * What a trailer has cost and is expected to cost, in cents of the yard's currency. Sums are of what was entered: where a
 * cost was left out they are at least so much, and `unpriced` says how many were.
 */
interface Costs {
  /** By check and by kind of part, the dearest first. */
  readonly spent: readonly SpentOn[];
  readonly totalCents: number;
  /** Checks done and parts fitted of which nobody said what they cost. */
  readonly unpriced: number;
  /** Over all that was driven; null while no distance is known, or no cost. */
  readonly centsPerMile: number | null;
  readonly centsPerTrip: number | null;
  readonly ahead: YearAhead;
}

/** From the facts and what they came to. Apart from `assess`, since hardly anyone asks and it would be kept for all. */
export function costs(facts: TrailerFacts, assessment: Assessment): Costs {
  const spent = spentOn(facts, assessment.asOf);
  const totalCents = spent.reduce((sum, one) => sum + one.totalCents, 0);
  const priced = spent.some((one) => one.priced > 0);
  const { totalKm, trips } = assessment.use;
  return {
    spent,
    totalCents,
    unpriced: spent.reduce((sum, one) => sum + one.unpriced, 0),
    centsPerMile: priced && totalKm !== null && totalKm > 0 ? totalCents / (totalKm / miles(1)) : null,
    centsPerTrip: priced && trips > 0 ? totalCents / trips : null,
    ahead: yearAhead(facts, assessment, spent),
  };
}
