import { isDeepStrictEqual } from 'node:util';
import type { Handover } from '../../rules/facts/handover.js';
import type { SeenNow } from '../input/handover-input.js';

/**
 * Whether a handover that is kept says what came in: a button pressed twice, or a phone that sent again. Photos are not
 * compared; they come with what they show.
 */
export function saysTheSame(
  kept: Handover,
  sent: Pick<Handover, 'way' | 'on' | 'customer' | 'hitch' | 'signature'> & { readonly seen: readonly SeenNow[] },
): boolean {
  const seen = kept.seen.map(({ photoIds: _, ...one }) => one);
  return isDeepStrictEqual(
    [kept.way, kept.on, kept.customer, kept.hitch, kept.signature, seen],
    [sent.way, sent.on, sent.customer, sent.hitch, sent.signature, sent.seen],
  );
}
