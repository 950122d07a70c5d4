import type { CivilDate } from '../calendar/civil-date.js';
import { dayNumber, daysAfter } from '../calendar/day-number.js';
import type { CheckKind, Trigger } from '../facts/check.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import { order } from '../history/order.js';
import { type TrailerOn, trailerOn } from '../history/trailer-on.js';
import { applies } from './applies.js';
import { certain, type DueRange, firstOf } from './due-range.js';
import type { DueUnknown, DueUse } from './due-use.js';
import type { EventStops } from './event-stops.js';
import { fallsByDays } from './triggers/days.js';
import { fallsByDistance } from './triggers/distance.js';
import { fallsByEvent } from './triggers/event.js';
import type { CheckSoFar, Falls } from './triggers/falls.js';
import { fallsOnFixedDate } from './triggers/fixed-date.js';
import { fallsByMonths } from './triggers/months.js';
import { fallsByTrips } from './triggers/trips.js';
import { type UseSoFar, useSoFar } from './use-so-far.js';
import { type DayRun, yardDays } from './yard-days.js';

/** When one check falls due, by which trigger, and how we know. */
export interface Due {
  readonly checkKindId: string;
  readonly code: string;
  /** `never-done`: no record to count from, so it is wanted now. `unknown`: what it counts is not known. */
  readonly state: 'overdue' | 'due-soon' | 'later' | 'never-done' | 'unknown';
  /**
   * Last good day: from the day after, it is overdue. Null when it cannot be said, and for a `due-soon` check that is
   * wanted before the next use, whenever that is.
   */
  readonly dueOn: CivilDate | null;
  readonly trigger: Trigger | null;
  readonly lastDoneOn: CivilDate | null;
  /** For distance and trips: how much is used, of how much. */
  readonly used: DueUse | null;
  /**
   * For a check by distance or trips: the days by which it falls due with a chance of 10, 50 and 90 %, its other triggers
   * taken in. Null for a check by the calendar or an event alone, and where its use cannot be said.
   */
  readonly range: DueRange | null;
  /** For looks at distances after an event: which were missed and how far it is to the others. */
  readonly stops: EventStops | null;
  /** The first booked job that would start after, or run past, the due date. */
  readonly firstJobAtRisk: { readonly jobId: string; readonly startsOn: CivilDate } | null;
  /**
   * Days on which the trailer is in the yard, up to the due date or, when that has passed, to the first job at risk; as
   * runs of first to last day. Starts the day after `asOf`; whoever reads a kept answer on a later day cuts off the
   * days that have passed with `yardDaysFrom`.
   */
  readonly yardDays: readonly DayRun[];
  readonly unknown: DueUnknown | null;
  /** True when the latest record of it is a fail: it is due until a pass is recorded. */
  readonly failed: boolean;
}

/** When every check that applies to this build falls due, soonest first. */
export function dueChecks(facts: TrailerFacts, asOf: CivilDate): readonly Due[] {
  const trailer = trailerOn(facts, asOf);
  return dueChecksOn(trailer, useSoFar(trailer));
}

export function dueCheck(kind: CheckKind, facts: TrailerFacts, asOf: CivilDate): Due {
  const trailer = trailerOn(facts, asOf);
  return dueOf(kind, trailer, useSoFar(trailer)).due;
}

/** The same for facts already laid out. */
export function dueChecksOn(trailer: TrailerOn, use: UseSoFar): readonly Due[] {
  return scheduleOn(trailer, use).due;
}

/** What is due, and every day on which a check comes within its lead time or goes past its last good day. */
export interface Schedule {
  readonly due: readonly Due[];
  readonly turnsOn: readonly CivilDate[];
}

/** A check without triggers, such as the walk before each tow, never falls due by itself. */
export function scheduleOn(trailer: TrailerOn, use: UseSoFar): Schedule {
  const found = trailer.facts.checkKinds
    .filter((kind) => kind.triggers.length > 0 && applies(kind.appliesTo, trailer.build))
    .map((kind) => dueOf(kind, trailer, use));
  return {
    due: found.map(({ due }) => due).sort(bySoonest),
    turnsOn: found.flatMap(({ turnsOn }) => turnsOn),
  };
}

function dueOf(
  kind: CheckKind,
  trailer: TrailerOn,
  use: UseSoFar,
): { readonly due: Due; readonly turnsOn: readonly CivilDate[] } {
  const lastPass = use.lastPass.get(kind.id) ?? null;
  const fail = use.failed.get(kind.id) ?? null;
  const check: CheckSoFar = {
    kind,
    trailer,
    use,
    lastPass,
    passes: () => trailer.records.filter((record) => record.checkKindId === kind.id && record.outcome === 'pass'),
  };
  const all = kind.triggers.map((trigger) => ({ trigger, falls: fallsBy(trigger, check) })).sort(byPlainness);
  const first = fail !== null ? failedOn(fail.doneOn) : soonest(all, lastPass !== null, kind.leadDays, trailer.asOf);
  const { state, dueOn } = first;
  const atRisk = state === 'later' && dueOn === null ? undefined : firstAtRisk(trailer, dueOn);
  const until = dueOn !== null && dueOn >= trailer.asOf ? dueOn : atRisk ? daysAfter(atRisk.startsOn, -1) : null;
  const due: Due = {
    checkKindId: kind.id,
    code: kind.code,
    state,
    dueOn,
    trigger: first.trigger,
    lastDoneOn: lastPass?.doneOn ?? null,
    used: first.used,
    range: fail === null ? rangeOf(all) : null,
    stops: all.find(({ falls }) => falls.stops !== null)?.falls.stops ?? null,
    firstJobAtRisk: atRisk === undefined ? null : { jobId: atRisk.id, startsOn: atRisk.startsOn },
    yardDays: until === null ? [] : yardDays(trailer.jobs, daysAfter(trailer.asOf, 1), until),
    unknown: first.unknown,
    failed: fail !== null,
  };
  // Every trigger's day, not only the first one's: one that was never done hides days that still lie ahead.
  const days = [dueOn, ...all.map(({ falls }) => falls.dueOn)].filter((date) => date !== null);
  return { due, turnsOn: days.flatMap((date) => [daysAfter(date, -kind.leadDays), daysAfter(date, 1)]) };
}

/** Whichever trigger comes first, as far as it depends on use to come. */
function rangeOf(all: readonly { readonly falls: Falls }[]): DueRange | null {
  if (all.every(({ falls }) => falls.range === null)) return null;
  return all.flatMap(({ falls: { range, dueOn } }) => range ?? (dueOn === null ? [] : certain(dueOn))).reduce(firstOf);
}

type First = Pick<Due, 'state' | 'dueOn' | 'trigger' | 'used' | 'unknown'>;

function failedOn(day: CivilDate): First {
  return { state: 'overdue', dueOn: daysAfter(day, -1), trigger: null, used: null, unknown: null };
}

/** The trigger that comes first. What cannot be said is passed on beside it. */
function soonest(
  all: readonly { readonly trigger: Trigger; readonly falls: Falls }[],
  everDone: boolean,
  leadDays: number,
  asOf: CivilDate,
): First {
  const dated = all
    .filter(({ falls }) => falls.dueOn !== null)
    .reduce<(typeof all)[number] | null>(
      (best, next) =>
        best === null || (next.falls.dueOn as CivilDate) < (best.falls.dueOn as CivilDate) ? next : best,
      null,
    );
  const unknown = all.find(({ falls }) => falls.unknown !== null)?.falls.unknown ?? null;
  const neverDone = !everDone && all.some(({ falls }) => falls.unknown === 'no-last-done');
  const wanted = all.find(({ falls }) => falls.wanted);
  const dueOn = dated?.falls.dueOn ?? null;
  const state = dueOn === null ? null : stateOn(dueOn, leadDays, asOf);
  if (dated !== null && state !== null && (state !== 'later' || (!neverDone && wanted === undefined))) {
    return { state, dueOn, trigger: dated.trigger, used: dated.falls.used, unknown };
  }
  if (neverDone) return { state: 'never-done', dueOn: null, trigger: null, used: null, unknown: 'no-last-done' };
  if (wanted !== undefined) {
    return { state: 'due-soon', dueOn: null, trigger: wanted.trigger, used: wanted.falls.used, unknown };
  }
  const counting = all.find(({ falls }) => falls.used !== null);
  return {
    state: unknown === null ? 'later' : 'unknown',
    dueOn: null,
    trigger: counting?.trigger ?? null,
    used: counting?.falls.used ?? null,
    unknown,
  };
}

function stateOn(dueOn: CivilDate, leadDays: number, asOf: CivilDate): 'overdue' | 'due-soon' | 'later' {
  if (dueOn < asOf) return 'overdue';
  return dayNumber(dueOn) - dayNumber(asOf) <= leadDays ? 'due-soon' : 'later';
}

function fallsBy(trigger: Trigger, check: CheckSoFar): Falls {
  switch (trigger.kind) {
    case 'days':
      return fallsByDays(trigger, check);
    case 'months':
      return fallsByMonths(trigger, check);
    case 'distance':
      return fallsByDistance(trigger, check);
    case 'trips':
      return fallsByTrips(trigger, check);
    case 'event':
      return fallsByEvent(trigger, check);
    case 'fixed-date':
      return fallsOnFixedDate(trigger, check);
  }
}

/** Two triggers on one day: the plainer one is named. */
const TRIGGER_ORDER: readonly Trigger['kind'][] = ['fixed-date', 'months', 'days', 'distance', 'trips', 'event'];

function byPlainness(
  { trigger: a }: { readonly trigger: Trigger },
  { trigger: b }: { readonly trigger: Trigger },
): number {
  const apart = TRIGGER_ORDER.indexOf(a.kind) - TRIGGER_ORDER.indexOf(b.kind);
  return apart !== 0 ? apart : order(JSON.stringify(a), JSON.stringify(b));
}

function firstAtRisk(trailer: TrailerOn, dueOn: CivilDate | null) {
  return trailer.jobs.find((job) => dueOn === null || job.endsOn > dueOn);
}

const STATE_ORDER: Readonly<Record<Due['state'], number>> = {
  overdue: 0,
  'never-done': 1,
  'due-soon': 2,
  later: 2,
  unknown: 3,
};

function bySoonest(a: Due, b: Due): number {
  const wantedNow = (due: Due) => (due.state === 'due-soon' && due.dueOn === null ? '0000' : (due.dueOn ?? '9999'));
  return STATE_ORDER[a.state] - STATE_ORDER[b.state] || order(wantedNow(a), wantedNow(b)) || order(a.code, b.code);
}
