import type { Trip } from '../facts/use.js';
import { checkJacks, type JackCheck } from '../trailer/jacks.js';
import type { Clearance } from './clearance.js';
import type { Flag } from './flag.js';
import { clearedByTime, type FlagContext } from './flag-context.js';
import { tripsSeen } from './trips-seen.js';

/**
 * The jacks of today's build under less than the weight that would come onto them unhitched. `limit` when the empty
 * trailer alone is too much for them; `watch` when a recent load was, since nobody records whether it stood unhitched
 * with it. Limits: the jacks' own lift and support capacity; what comes onto them is plane statics (`load/jack-load.ts`).
 */
export function jackLoadFlags({ trailer, recentTrips }: FlagContext): readonly Flag[] {
  const { build } = trailer;
  const limits = trailer.limitsOn(trailer.asOf);
  if (build === null || limits === null) return [];
  const empty = limits.emptyTongueN === null ? null : checkJacks(build, limits.emptyTongueN, limits.axleCentreM);
  if (empty !== null && empty.short !== null) {
    return [flagOf(empty, 'empty', [], [{ kind: 'correct', fact: 'build-sheet' }], build.effectiveFrom)];
  }
  const past: Trip[] = [];
  let worst: JackCheck | null = null;
  for (const trip of recentTrips) {
    const tongueN = trailer.judge(trip)?.tongueN ?? null;
    const check = tongueN === null ? null : checkJacks(build, tongueN, limits.axleCentreM);
    if (check === null || check.short === null) continue;
    past.push(trip);
    if (worst === null || check.loadN > worst.loadN) worst = check;
  }
  return worst === null ? [] : [flagOf(worst, 'loaded', past, clearedByTime(past), past[0]?.startedOn ?? null)];
}

function flagOf(
  check: JackCheck,
  when: 'empty' | 'loaded',
  trips: readonly Trip[],
  otherwise: readonly Clearance[],
  since: Flag['since'],
): Flag {
  return {
    key: 'jack-load',
    rule: 'jack-load',
    severity: when === 'empty' ? 'limit' : 'watch',
    since,
    evidence: { kind: 'jack-load', when, check, trips: tripsSeen(trips) },
    clears: [{ kind: 'part-of-at-least', part: 'jack', ratingN: check.loadN }, ...otherwise],
  };
}
