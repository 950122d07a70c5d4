import { tooWide } from '../trailer/machine-room.js';
import type { Flag } from './flag.js';
import { clearedByTime, type FlagContext } from './flag-context.js';
import { faultsByMachine } from './machine-hauls.js';
import { tripsSeen } from './trips-seen.js';

/**
 * Machines of recent trips wider than what lies between the fenders of today's build, or than its deck where there are
 * none. The limit is the build sheet's own measure. Severity `limit`: it stands on the fenders, or beyond the deck.
 */
export function tooWideFlags(context: FlagContext): readonly Flag[] {
  const { build } = context.trailer;
  if (build === null) return [];
  return faultsByMachine(context, (machine) => tooWide(build, machine)).map(
    ({ machine, fault, trips }): Flag => ({
      key: `too-wide:${machine.id}`,
      rule: 'too-wide',
      severity: 'limit',
      since: trips[0]?.startedOn ?? null,
      evidence: { kind: 'too-wide', machineId: machine.id, ...fault, trips: tripsSeen(trips) },
      clears: [...clearedByTime(trips), { kind: 'correct', fact: 'machine' }, { kind: 'correct', fact: 'build-sheet' }],
    }),
  );
}
