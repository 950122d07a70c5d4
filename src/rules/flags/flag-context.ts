import { latest } from '../calendar/civil-date.js';
import { daysAfter } from '../calendar/day-number.js';
import type { Trip } from '../facts/use.js';
import type { TrailerOn } from '../history/trailer-on.js';
import type { FoundPressure } from '../inspection/cold-pressures.js';
import type { Due } from '../inspection/due.js';
import type { ProbedDeck } from '../inspection/soft-boards.js';
import type { UseSoFar } from '../inspection/use-so-far.js';
import type { WearTrend } from '../inspection/wear-trends.js';
import type { Clearance } from './clearance.js';

/** What every flag rule may look at. */
export interface FlagContext {
  readonly trailer: TrailerOn;
  readonly use: UseSoFar;
  readonly due: readonly Due[];
  readonly pressures: ReadonlyMap<string, FoundPressure>;
  /** What probing last found of the deck that lies now. */
  readonly probed: ProbedDeck;
  readonly wear: readonly WearTrend[];
  /** Trips young enough to speak of the present, in the order of time. */
  readonly recentTrips: readonly Trip[];
}

/** Days for which a trip past a rating speaks of how the trailer is used now. One quarter; our choice. */
export const RECENT_DAYS = 90;

export function recentTrips(trailer: TrailerOn): readonly Trip[] {
  const from = daysAfter(trailer.asOf, -RECENT_DAYS);
  const { trips, tripsByEnd } = trailer;
  let first = tripsByEnd.length;
  while (first > 0 && (tripsByEnd[first - 1] as Trip).endedOn >= from) first--;
  return trips === tripsByEnd ? trips.slice(first) : trips.filter((trip) => trip.endedOn >= from);
}

/** What rests on these trips is gone once the last of them is no longer recent, or by a correction where one was entered wrong. */
export function clearedByTime(trips: readonly Pick<Trip, 'endedOn'>[]): readonly [Clearance, ...Clearance[]] {
  const correct = { kind: 'correct', fact: 'trip' } as const;
  const last = latest(trips.map((trip) => trip.endedOn));
  return last === null ? [correct] : [{ kind: 'no-more-until', clearsOn: daysAfter(last, RECENT_DAYS + 1) }, correct];
}
