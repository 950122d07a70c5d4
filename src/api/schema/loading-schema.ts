import { z } from 'zod';
import { computed, DAY, ID } from './values.js';

// What getting a machine on, and holding it there, comes to: shared by fits and flags.

export const TOO_WIDE = {
  machineM: computed('m'),
  roomM: computed('m'),
  between: z.enum(['fenders', 'deck-edges']),
};

export const TOO_LONG = {
  machineM: computed('m'),
  roomM: computed('m'),
  of: z.enum(['tilt', 'deck']),
  stands: z.boolean().nullable().describe('Whether its wheels or tracks have room all the same.'),
};

export const REAR_SUPPORT = z
  .enum(['stabilizers', 'knee-brace', 'deck-on-ground', 'none', 'unknown'])
  .describe('What keeps the tail up while a machine comes on.');

export const TIE_DOWN_NEED = z.object({
  workingLoadKg: computed('Working load limits must count for this, kg.'),
  count: z.int(),
  because: z.enum(['heavy-machine', 'length', 'length-unknown']),
});

export const TIE_DOWN_CHECK = z.object({
  need: TIE_DOWN_NEED,
  count: z.int(),
  workingLoadKg: computed('What they count for, kg.'),
  unrated: z.int().describe('How many have no known limit.'),
  standing: z.enum(['enough', 'short', 'unrated']),
});

export const TRIPS_SEEN = z.array(z.object({ tripId: ID, endedOn: DAY }));

export const JACK_CHECK = z.object({
  loadN: computed('What would stand on the jacks unhitched, N.'),
  isLeast: z.boolean().describe('Where the jacks stand is unknown: it is at least this.'),
  count: z.int().nullable(),
  liftN: computed('What they lift together, N.').nullable(),
  supportN: computed('What they hold together, N.').nullable(),
  short: z.enum(['lift', 'support']).nullable(),
});
