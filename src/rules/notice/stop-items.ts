import { itemKey } from './item-key.js';
import type { Addressed, TrailerToday } from './letter.js';
import type { Readers } from './who-is-told.js';

/** Flags that say "do not load", at once, to everybody who can keep the trailer in. */
export function stopItems({ trailer, assessment }: TrailerToday, readers: Readers): readonly Addressed[] {
  return assessment.flags
    .filter((flag) => flag.severity === 'stop')
    .flatMap((flag) =>
      readers.ownersAndShop().map(({ personId }) => ({
        personId,
        item: {
          kind: 'stop-flag' as const,
          key: itemKey('stop', `${trailer.id}/${flag.key}/${flag.since}`, personId),
          trailerId: trailer.id,
          flag,
        },
      })),
    );
}
