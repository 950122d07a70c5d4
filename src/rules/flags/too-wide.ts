import { tooWide } from '../trailer/machine-room.js';
import type { Flag } from './flag.js';
import { clearedByTime, type FlagContext } from './flag-context.js';
import { tripsByMachine } from './machine-hauls.js';
import { tripsSeen } from './trips-seen.js';

/**
 * Machines of recent trips wider than what lies between the fenders of today's build, or than its deck where there are
 * none. The limit is the build sheet's own measure. Severity `limit`: it stands on the fenders, or beyond the deck.
 */
export function tooWideFlags(context: FlagContext): readonly Flag[] {
  const { build } = context.trailer;
  if (build === null) return [];
  return tripsByMachine(context).flatMap(({ machine, trips }) => {
    const wide = tooWide(build, machine);
    if (wide === null) return [];
    const byTime = clearedByTime(trips);
    return [
      {
        key: `too-wide:${machine.id}`,
        rule: 'too-wide' as const,
        severity: 'limit' as const,
        since: trips[0]?.startedOn ?? null,
        evidence: { kind: 'too-wide' as const, machineId: machine.id, ...wide, trips: tripsSeen(trips) },
        clears: [...byTime, { kind: 'correct', fact: 'machine' }, { kind: 'correct', fact: 'build-sheet' }] as const,
      },
    ];
  });
}
