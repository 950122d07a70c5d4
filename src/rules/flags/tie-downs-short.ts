import type { Trip } from '../facts/use.js';
import type { TieDownCheck } from '../load/tie-downs.js';
import { tiedDown } from '../load/tied-down.js';
import type { Flag } from './flag.js';
import { clearedByTime, type FlagContext } from './flag-context.js';
import { tripsSeen } from './trips-seen.js';

/**
 * Recent trips whose recorded tie-downs were too few, or counted for too little. Severity `limit`: 49 CFR 393.106,
 * 393.110, 393.130. Trips on which nobody said what held the load say nothing, nor do tie-downs nobody rated.
 */
export function tieDownsShortFlags({ trailer, recentTrips }: FlagContext): readonly Flag[] {
  const past: Trip[] = [];
  let worst: { readonly trip: Trip; readonly tied: TieDownCheck } | null = null;
  for (const trip of recentTrips) {
    if (trip.load.tieDowns === null) continue;
    const tied = tiedDown(trip.load, trailer.facts.machines, trailer.judge(trip)?.cargoKg ?? null);
    if (tied === null || tied.standing !== 'short') continue;
    past.push(trip);
    if (worst === null || coverOf(tied) < coverOf(worst.tied)) worst = { trip, tied };
  }
  if (worst === null) return [];
  return [
    {
      key: 'tie-downs-short',
      rule: 'tie-downs-short',
      severity: 'limit',
      since: past[0]?.startedOn ?? null,
      evidence: { kind: 'tie-downs-short', on: worst.trip.startedOn, tied: worst.tied, trips: tripsSeen(past) },
      clears: clearedByTime(past),
    },
  ];
}

/** The lesser of what is there over what is wanted, by number and by strength. */
function coverOf({ need, count, workingLoadKg }: TieDownCheck): number {
  return Math.min(count / need.count, workingLoadKg / need.workingLoadKg);
}
