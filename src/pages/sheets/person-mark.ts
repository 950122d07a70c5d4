import type { Caller } from '../../use-cases/caller.js';

/** Tells whose pages and sheets lie on a phone: one person of one yard. */
export function personMark({ yardId, personId }: Pick<Caller, 'yardId' | 'personId'>): string {
  return `${yardId}.${personId ?? 'nobody'}`;
}
