import type { CivilDate } from '../rules/calendar/civil-date.js';

/** Widest first: an owner may do all a shop may, a shop all a hand may, a hand all a viewer may. */
export const ROLES = ['owner', 'shop', 'hand', 'viewer'] as const;
export type Role = (typeof ROLES)[number];

/** The way a fact came in. `mail` is an answer to a notice, `job` is work done on a timer. */
const DOORS = ['page', 'api', 'seed', 'mail', 'job', 'import'] as const;
export type Door = (typeof DOORS)[number];

/**
 * Who asks, for which yard, from which door and on which day.
 * Only doors and jobs know the time: what they hand down here is the one "today" of the whole run.
 */
export interface Caller {
  readonly yardId: string;
  /** Null when no person stands behind it, such as work on a timer. */
  readonly personId: string | null;
  readonly name: string;
  readonly role: Role;
  readonly door: Door;
  /** The day it is in the yard's time zone. */
  readonly today: CivilDate;
  readonly now: Date;
  readonly timeZone: string;
}

/** Whether the caller's role reaches `needs` or wider. */
export function may(caller: Pick<Caller, 'role'>, needs: Role): boolean {
  return ROLES.indexOf(caller.role) <= ROLES.indexOf(needs);
}

/** The mark a caller leaves on a fact: from which door, by whom and when. */
export function recordedBy(caller: Caller): {
  readonly door: Door;
  readonly recordedBy: string | null;
  readonly recordedAt: Date;
} {
  return { door: caller.door, recordedBy: caller.personId, recordedAt: caller.now };
}

/** The mark a caller leaves in the audit: who did it, from which door. */
export function signed(caller: Caller): {
  readonly personId: string | null;
  readonly who: string;
  readonly door: Door;
} {
  return { personId: caller.personId, who: caller.name, door: caller.door };
}
