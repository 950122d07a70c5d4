import type { CivilDate } from '../calendar/civil-date.js';
import type { CheckKind, Trigger } from '../facts/check.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import type { Kilometres } from '../units/distance.js';

/** When one check falls due, by which trigger, and how we know. */
export interface Due {
  readonly checkKindId: string;
  readonly code: string;
  /** `never-done`: no record to count from, so it is wanted now. `unknown`: what it counts is not known. */
  readonly state: 'overdue' | 'due-soon' | 'later' | 'never-done' | 'unknown';
  /** Last good day: from the day after, it is overdue. Null when it cannot be said. */
  readonly dueOn: CivilDate | null;
  readonly trigger: Trigger | null;
  readonly lastDoneOn: CivilDate | null;
  /** For distance and trips: how much is used, of how much. */
  readonly used: DueUse | null;
  /** The first booked job that would start after, or run past, the due date. */
  readonly firstJobAtRisk: { readonly jobId: string; readonly startsOn: CivilDate } | null;
  /**
   * Days before the due date on which the trailer is in the yard, as runs of first to last day. Starts the day after
   * `asOf`; whoever reads a kept answer on a later day cuts off the days that have passed with `yardDaysFrom`.
   */
  readonly yardDays: readonly { readonly from: CivilDate; readonly to: CivilDate }[];
  readonly unknown: 'no-distance-known' | 'no-last-done' | 'no-date-set' | null;
}

export type DueUse =
  | { readonly kind: 'distance'; readonly usedKm: Kilometres; readonly limitKm: Kilometres }
  | { readonly kind: 'trips'; readonly used: number; readonly limit: number };

/** When every check that applies to this build falls due, soonest first. */
export function dueChecks(_facts: TrailerFacts, _asOf: CivilDate): readonly Due[] {
  throw new Error('written next');
}

export function dueCheck(_kind: CheckKind, _facts: TrailerFacts, _asOf: CivilDate): Due {
  throw new Error('written next');
}
