import type { Role } from '../../use-cases/caller.js';

/** What each role may do, in a sentence. */
export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  owner: 'An owner may do everything, settings and people too.',
  shop: 'The shop records checks and repairs, and opens and lifts holds.',
  hand: 'A hand records checks, loads and trips.',
  viewer: 'A viewer reads everything and changes nothing.',
};
