import type { CivilDate } from '../calendar/civil-date.js';
import { buildOn } from '../facts/build-on.js';
import { partsOn } from '../facts/parts-on.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import { order } from '../history/order.js';
import type { Comparison } from '../load/limit.js';
import { checkLoad } from '../load/load-check.js';
import { loadLimits } from '../trailer/load-limits.js';
import { daysOf, type Work } from './flagged-work.js';
import { byRoom } from './rank-trailers.js';
import { marginShare, tightestOf } from './ranked-trailer.js';

/** How another trailer would do some work. */
export interface WorkDoneBy {
  readonly trailerId: string;
  readonly yardNumber: string;
  /** Loads that keep within every limit that could be held against them, none too near to go unweighed. */
  readonly carries: number;
  readonly ofLoads: number;
  readonly tightest: Comparison | null;
  readonly marginShare: number | null;
  /** Of the days of that work, on how many it was out itself or is booked. */
  readonly busy: number;
  readonly ofDays: number;
}

export interface BetterTrailer {
  /** The one that should do this work; null when none carries all of it. */
  readonly best: WorkDoneBy | null;
  /** Every other trailer in service, the best first: the reason for each no is its tightest limit. */
  readonly all: readonly WorkDoneBy[];
}

/**
 * Which trailer of the yard should do the work that `own` is flagged for. By weight alone: whether the machine has room
 * on it and gets up its ramps is for a fit to say. Those that carry all of
 * it come first; of them the one that was free most often, then the smallest with room to spare. A trailer whose limits
 * are not known for a load carries it in no one's word, so it does not count.
 */
export function betterTrailer(
  own: Pick<TrailerFacts, 'trailer'>,
  work: Work,
  others: readonly TrailerFacts[],
  asOf: CivilDate,
): BetterTrailer {
  const all = others
    .filter(({ trailer }) => trailer.status === 'in-service' && trailer.id !== own.trailer.id)
    .map((facts) => doneBy(facts, work, asOf))
    .sort(better);
  const first = all[0];
  const carriesAll = first !== undefined && first.ofLoads > 0 && first.carries === first.ofLoads;
  return { best: carriesAll ? first : null, all };
}

function doneBy(facts: TrailerFacts, { loads, days }: Work, asOf: CivilDate): WorkDoneBy {
  const build = buildOn(facts.builds, asOf);
  const tires = partsOn(facts.parts, 'tire', asOf);
  const limits = build === null ? null : loadLimits({ build, tires, coldPressures: new Map(), towVehicle: null });
  const checks = limits === null ? [] : loads.map((load) => checkLoad(limits, load, facts.policy));
  const tightest = tightestOf(checks.flatMap((check) => check.comparisons));
  const out = [...facts.trips.map(daysOf), ...facts.jobs.filter((job) => job.state === 'booked').map(jobDays)];
  return {
    trailerId: facts.trailer.id,
    yardNumber: facts.trailer.yardNumber,
    carries: checks.filter(
      ({ grossKg, comparisons }) =>
        grossKg !== null &&
        comparisons.some((one) => one.limit.kind === 'plate') &&
        comparisons.every((one) => one.standing === 'inside'),
    ).length,
    ofLoads: loads.length,
    tightest,
    marginShare: tightest === null ? null : marginShare(tightest),
    busy: days.filter((day) => out.some((other) => other.from <= day.to && other.to >= day.from)).length,
    ofDays: days.length,
  };
}

function jobDays({ startsOn, endsOn }: TrailerFacts['jobs'][number]): Work['days'][number] {
  return { from: startsOn, to: endsOn };
}

function better(a: WorkDoneBy, b: WorkDoneBy): number {
  return (
    b.carries - a.carries ||
    a.busy - b.busy ||
    byRoom(a.marginShare, b.marginShare) ||
    order(a.yardNumber, b.yardNumber) ||
    order(a.trailerId, b.trailerId)
  );
}
