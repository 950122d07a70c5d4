import { tooLong } from '../trailer/machine-room.js';
import type { Flag } from './flag.js';
import { clearedByTime, type FlagContext } from './flag-context.js';
import { tripsByMachine } from './machine-hauls.js';
import { tripsSeen } from './trips-seen.js';

/**
 * Machines of recent trips longer than the deck of today's build, or than its tilting part. The limit is the build
 * sheet's own measure. Severity `limit` when not even wheels or tracks have room, else `watch`: something sticks out.
 */
export function tooLongFlags(context: FlagContext): readonly Flag[] {
  const { build } = context.trailer;
  if (build === null) return [];
  return tripsByMachine(context).flatMap(({ machine, trips }) => {
    const long = tooLong(build, machine);
    if (long === null) return [];
    const byTime = clearedByTime(trips);
    return [
      {
        key: `too-long:${machine.id}`,
        rule: 'too-long' as const,
        severity: long.stands === false ? ('limit' as const) : ('watch' as const),
        since: trips[0]?.startedOn ?? null,
        evidence: { kind: 'too-long' as const, machineId: machine.id, ...long, trips: tripsSeen(trips) },
        clears: [...byTime, { kind: 'correct', fact: 'machine' }, { kind: 'correct', fact: 'build-sheet' }] as const,
      },
    ];
  });
}
