import type { Kilometres } from '../units/distance.js';

/** How much of what a check counts is used. */
export type DueUse =
  | {
      readonly kind: 'distance';
      /** As counted toward the limit, harsh service and overloaded axles more than once. */
      readonly usedKm: Kilometres;
      readonly limitKm: Kilometres;
      /** How much of `usedKm` was added for harsh service. */
      readonly harshKm: Kilometres;
      /** How much more was added because an axle carried more than its rating; for hub bearings only. */
      readonly loadKm: Kilometres;
    }
  | { readonly kind: 'trips'; readonly used: number; readonly limit: number };

/** Why a trigger cannot say when. */
export type DueUnknown = 'no-distance-known' | 'no-last-done' | 'no-date-set';
