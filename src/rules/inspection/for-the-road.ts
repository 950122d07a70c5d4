import type { CheckKind } from '../facts/check.js';
import type { Due } from './due.js';

/** Asked for some miles after an event, and done where those miles fall: a wheel's nuts ten miles on. Late, it is like any other. */
export function isForTheRoad(kind: CheckKind, due: Due): boolean {
  return kind.work.place === 'road' && due.trigger?.kind === 'event' && due.state !== 'overdue';
}
