import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';

/** An open hold: the trailer must not go out. Only a recorded repair or a named person lifts it. Severity `stop`. */
export function onHoldFlags({ trailer }: FlagContext): readonly Flag[] {
  return trailer.openHolds.map((hold) => ({
    key: `on-hold:${hold.id}`,
    rule: 'on-hold',
    severity: 'stop',
    since: hold.openedOn,
    evidence: { kind: 'hold', holdId: hold.id, reason: hold.reason },
    clears: [{ kind: 'lift-hold', holdId: hold.id }],
  }));
}
