import type { Role } from '../caller.js';

/** A person's place in one yard, as every door needs it. */
export interface Standing {
  readonly yardId: string;
  readonly personId: string;
  readonly name: string;
  readonly role: Role;
  readonly timeZone: string;
}
