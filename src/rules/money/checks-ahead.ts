import type { Assessment } from '../assess.js';
import type { CivilDate } from '../calendar/civil-date.js';
import { dayNumber, monthsAfter } from '../calendar/day-number.js';
import type { CheckKind, CheckRecord } from '../facts/check.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import { trailerOn } from '../history/trailer-on.js';
import type { Due } from '../inspection/due.js';
import { countedFor } from '../inspection/triggers/distance.js';
import { type UseSoFar, useSoFar } from '../inspection/use-so-far.js';
import { type Kilometres, km } from '../units/distance.js';
import { CHANCES, type Counts, countsIn, timesOf } from './times.js';
import type { Wanted } from './wanted.js';

/** Each check as often as it will fall due by `to`: by the calendar, or by miles where those make it come more often. */
export function checksAhead(facts: TrailerFacts, assessment: Assessment, to: CivilDate): readonly Wanted[] {
  const kinds = new Map(facts.checkKinds.map((kind) => [kind.id, kind]));
  const use = useSoFar(trailerOn(facts, assessment.asOf));
  return assessment.due.flatMap((due) => {
    const kind = kinds.get(due.checkKindId);
    if (kind === undefined) return [];
    const byDate = countsIn(firstDays(due, assessment.asOf), usualDays(kind, assessment.asOf), assessment.asOf, to);
    const byMiles = countsByDistance(kind, use, to);
    return {
      purpose: { kind: 'check' as const, checkKindId: due.checkKindId, code: due.code },
      times: timesOf(byMiles === null ? byDate : more(byDate, byMiles)),
      byUse: due.range !== null,
    };
  });
}

function firstDays(due: Due, asOf: CivilDate): NonNullable<Due['range']> {
  const { state, dueOn } = due;
  const isWanted = state === 'overdue' || state === 'never-done' || (state === 'due-soon' && dueOn === null);
  if (isWanted) return { p10: asOf, p50: asOf, p90: asOf };
  return due.range ?? { p10: dueOn, p50: dueOn, p90: dueOn };
}

/** Days from one time to the next by the calendar: the shortest of its triggers. Null where none comes round again. */
function usualDays(kind: CheckKind, asOf: CivilDate): number | null {
  const all = kind.triggers.flatMap((trigger) => {
    if (trigger.kind === 'days') return trigger.every;
    if (trigger.kind === 'months') return dayNumber(monthsAfter(asOf, trigger.every)) - dayNumber(asOf);
    return trigger.kind === 'fixed-date' ? dayNumber(monthsAfter(asOf, 12)) - dayNumber(asOf) : [];
  });
  return all.length === 0 ? null : Math.max(1, Math.min(...all));
}

/** By miles alone, each time done on its day. Null where it does not go by miles, or nothing is known to count from. */
function countsByDistance(kind: CheckKind, use: UseSoFar, to: CivilDate): Counts | null {
  const trigger = kind.triggers.find((one) => one.kind === 'distance');
  const lastPass = use.lastPass.get(kind.id);
  if (trigger === undefined || lastPass === undefined || !use.travelled.known) return null;
  const [early, middle, late] = CHANCES.map((chance) => timesReached(kind, trigger.everyKm, lastPass, use, to, chance));
  return [early ?? 0, middle ?? 0, late ?? 0];
}

function timesReached(
  kind: CheckKind,
  everyKm: Kilometres,
  lastPass: CheckRecord,
  use: UseSoFar,
  to: CivilDate,
  chance: number,
): number {
  const { counted, toCome } = countedFor(kind, use);
  const done = dayNumber(lastPass.doneOn);
  // What is over its miles already is done now, and counts from now.
  const left = Math.max(0, everyKm - counted.between(done, toCome.from));
  let times = 0;
  while (times < MOST_TIMES) {
    const reached = toCome.dayReaching(km(left + times * everyKm), done, chance);
    if (reached === null || reached.day > dayNumber(to)) break;
    times++;
  }
  return times;
}

/** Once a week; more often than that no check by miles is meant. */
const MOST_TIMES = 52;

function more(a: Counts, b: Counts): Counts {
  return [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])];
}
