import type { Assessment } from '../assess.js';
import type { CivilDate } from '../calendar/civil-date.js';
import { monthsAfter } from '../calendar/day-number.js';
import { chanceOfNewDeck } from '../deck/deck-outlook.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import { checksAhead } from './checks-ahead.js';
import { partsAhead } from './parts-ahead.js';
import type { Purpose, SpentOn } from './spent.js';
import type { Wanted } from './wanted.js';

/** What the next twelve months are expected to cost. */
export interface YearAhead {
  readonly from: CivilDate;
  readonly to: CivilDate;
  readonly expectedCents: number;
  /** Less than the first in one year of ten, more than the second in another. Never below nothing. */
  readonly p10Cents: number;
  readonly p90Cents: number;
  /** What it is made of, the dearest first. */
  readonly items: readonly ExpectedCost[];
  /** Falls due within the year, and nobody has said what it costs: not in the sum. */
  readonly unpriced: readonly Purpose[];
}

interface ExpectedCost {
  readonly purpose: Purpose;
  /** How often, on average: 0.3 is three in ten. */
  readonly times: number;
  readonly expectedCents: number;
  readonly deviationCents: number;
  /** Whether how often hangs on how much the trailer is used. */
  readonly byUse: boolean;
}

/** Of a normal distribution, 90 % lie below the mean and this many deviations (NIST/SEMATECH, table of the normal). */
const TENTH = 1.2816;

/**
 * Each check that falls due within twelve months and each part whose end can be foreseen, as often as it is likely to
 * come, at what it has cost this trailer on average.
 *
 * Spread: of how often (from the ranges of due dates and lives) and of the cost itself. What hangs on use goes up and down
 * together, since it is the same miles; the rest goes its own way. The sum is taken as normal, which is rough for a year
 * that hangs on one deck: then the items say more than the range.
 */
export function yearAhead(facts: TrailerFacts, assessment: Assessment, spent: readonly SpentOn[]): YearAhead {
  const from = assessment.asOf;
  const to = monthsAfter(from, 12);
  const wanted = [
    ...checksAhead(facts, assessment, to),
    ...partsAhead(facts, assessment, to),
    ...deckAhead(assessment, to),
  ];
  const items: ExpectedCost[] = [];
  const unpriced: Purpose[] = [];
  for (const one of wanted) {
    if (one.times.mean <= 0) continue;
    const price = spent.find(({ purpose }) => isSame(purpose, one.purpose));
    if (price === undefined || price.meanCents === null) {
      if (!unpriced.some((purpose) => isSame(purpose, one.purpose))) unpriced.push(one.purpose);
    } else items.push(expected(one, price.meanCents, price.deviationCents ?? 0));
  }
  items.sort((a, b) => b.expectedCents - a.expectedCents);
  const expectedCents = items.reduce((sum, one) => sum + one.expectedCents, 0);
  const together = items.reduce((sum, one) => sum + (one.byUse ? one.deviationCents : 0), 0);
  const apart = items.reduce((sum, one) => sum + (one.byUse ? 0 : one.deviationCents ** 2), 0);
  const deviation = Math.sqrt(together ** 2 + apart);
  return {
    from,
    to,
    expectedCents,
    p10Cents: Math.max(0, expectedCents - TENTH * deviation),
    p90Cents: expectedCents + TENTH * deviation,
    items,
    unpriced,
  };
}

/** Mean and deviation of a sum of a random number of costs: E N · m, and Var = E N · s² + Var N · m². */
function expected({ purpose, times, byUse }: Wanted, mean: number, deviation: number): ExpectedCost {
  return {
    purpose,
    times: times.mean,
    expectedCents: times.mean * mean,
    deviationCents: Math.sqrt(times.mean * deviation ** 2 + times.variance * mean ** 2),
    byUse,
  };
}

function deckAhead({ deckLife, asOf }: Assessment, to: CivilDate): readonly Wanted[] {
  if (deckLife.outlook === null) return [];
  const chance = chanceOfNewDeck(deckLife.outlook, asOf, to);
  return [
    { purpose: { kind: 'part', part: 'deck' }, times: { mean: chance, variance: chance * (1 - chance) }, byUse: false },
  ];
}

function isSame(a: Purpose, b: Purpose): boolean {
  return a.kind === 'check'
    ? b.kind === 'check' && a.checkKindId === b.checkKindId
    : b.kind === 'part' && a.part === b.part;
}
