import type { Hitch } from '../facts/build-sheet.js';

/** Share of the gross weight that the tongue should carry, 0 to 1. A target for steady towing, not a limit and no promise of safety. */
export interface TongueBand {
  readonly low: number;
  readonly high: number;
}

/**
 * Bumper pull 10 to 15 %: several car and trailer makers' manuals. No federal percentage was found.
 * Pintle: the same, since it too tows from behind the axle; common practice, no source.
 * Gooseneck 15 % or more: a trade list; its upper end, 25 %, is from memory, unverified.
 */
const BANDS: Readonly<Record<Hitch, TongueBand>> = {
  'bumper-pull': { low: 0.1, high: 0.15 },
  pintle: { low: 0.1, high: 0.15 },
  gooseneck: { low: 0.15, high: 0.25 },
};

/** With the hitch unknown, the span in which every kind may lie. */
const ANY_HITCH: TongueBand = { low: 0.1, high: 0.25 };

export function tongueBand(hitch: Hitch | null): TongueBand {
  return hitch === null ? ANY_HITCH : BANDS[hitch];
}
