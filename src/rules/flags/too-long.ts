import { tooLong } from '../trailer/machine-room.js';
import type { Flag } from './flag.js';
import { clearedByTime, type FlagContext } from './flag-context.js';
import { faultsByMachine } from './machine-hauls.js';
import { tripsSeen } from './trips-seen.js';

/**
 * Machines of recent trips longer than the deck of today's build, or than its tilting part. The limit is the build
 * sheet's own measure. Severity `limit` when not even wheels or tracks have room, else `watch`: something sticks out.
 */
export function tooLongFlags(context: FlagContext): readonly Flag[] {
  const { build } = context.trailer;
  if (build === null) return [];
  return faultsByMachine(context, (machine) => tooLong(build, machine)).map(
    ({ machine, fault, trips }): Flag => ({
      key: `too-long:${machine.id}`,
      rule: 'too-long',
      severity: fault.stands === false ? 'limit' : 'watch',
      since: trips[0]?.startedOn ?? null,
      evidence: { kind: 'too-long', machineId: machine.id, ...fault, trips: tripsSeen(trips) },
      clears: [...clearedByTime(trips), { kind: 'correct', fact: 'machine' }, { kind: 'correct', fact: 'build-sheet' }],
    }),
  );
}
