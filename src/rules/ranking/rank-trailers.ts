import type { CivilDate } from '../calendar/civil-date.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import type { Verdict } from '../fit/fit.js';
import { order } from '../history/order.js';
import { type Haul, type RankedTrailer, rankedTrailer } from './ranked-trailer.js';

/**
 * Share of its tightest limit that a trailer should have to spare. Common practice, no source: buy for the payload
 * needed and 15 %.
 */
const ROOM_TO_SPARE = 0.15;

/** Best first. What can be mended with a known outcome stands before what a weighing may turn into a no. */
const VERDICT_ORDER: readonly Verdict[] = ['go', 'go-after', 'weigh-first', 'cannot-say', 'no-go'];

/**
 * Every trailer of a yard for a haul, best first, each with its margin on the tightest limit, what must be done first,
 * what clashes, and the reason for each no.
 *
 * First those free and in service; then by verdict; then by less work to do first; of the rest, those with room to
 * spare before those without. Of those with room the smallest comes first, so that the big ones stay free for what
 * only they carry; of those without, the one with the most.
 */
export function rankTrailers(trailers: readonly TrailerFacts[], haul: Haul, asOf: CivilDate): readonly RankedTrailer[] {
  return bestFirst(trailers.map((facts) => rankedTrailer(facts, haul, asOf)));
}

/** Answers of several rankings of one haul as one ranking. */
export function bestFirst(answers: readonly RankedTrailer[]): readonly RankedTrailer[] {
  return answers.toSorted(better);
}

/** Whether it could take the haul: free, in service, and with an answer that work or a scale can turn into a yes. */
export function couldTake(answer: RankedTrailer): boolean {
  return !isBusy(answer) && ['go', 'go-after', 'weigh-first'].includes(answer.fit.verdict);
}

/** Negative when the first of two is the better answer. */
function better(a: RankedTrailer, b: RankedTrailer): number {
  return (
    Number(isBusy(a)) - Number(isBusy(b)) ||
    VERDICT_ORDER.indexOf(a.fit.verdict) - VERDICT_ORDER.indexOf(b.fit.verdict) ||
    a.hoursFirst - b.hoursFirst ||
    byRoom(a.marginShare, b.marginShare) ||
    order(a.yardNumber, b.yardNumber) ||
    order(a.trailerId, b.trailerId)
  );
}

function isBusy({ inService, clashes }: RankedTrailer): boolean {
  return !inService || clashes.length > 0;
}

/** By what is left of the tightest limit; what is not known comes last. */
export function byRoom(a: number | null, b: number | null): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  const roomy = Number(b >= ROOM_TO_SPARE) - Number(a >= ROOM_TO_SPARE);
  return roomy !== 0 ? roomy : a >= ROOM_TO_SPARE ? a - b : b - a;
}
