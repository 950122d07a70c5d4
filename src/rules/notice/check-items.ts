import type { CivilDate } from '../calendar/civil-date.js';
import { dayNumber, daysAfter } from '../calendar/day-number.js';
import type { CheckKind } from '../facts/check.js';
import type { Due } from '../inspection/due.js';
import { isForTheRoad } from '../inspection/for-the-road.js';
import { yardDaysFrom } from '../inspection/yard-days.js';
import type { Answers } from './answers.js';
import { checkSubject, itemKey, mondayOf } from './item-key.js';
import type { Addressed, LetterItem, TrailerToday } from './letter.js';
import { type Readers, recipientsOf } from './who-is-told.js';

export interface CheckItems {
  readonly items: readonly Addressed[];
  /** What would have gone to somebody whose address has failed. */
  readonly missed: readonly Addressed[];
}

type CheckItem = Extract<LetterItem, { kind: 'due-soon' | 'overdue' }>;

/**
 * Checks of one trailer that somebody hears of today: once when within their lead time, once when overdue, then on
 * each Monday. A check nobody ever recorded is told only where someone can be hurt and a job is near: a new yard is not
 * greeted with a list of everything. What is done on the road when its miles come stands in the brief of whoever hauls.
 */
export function checkItems(today: TrailerToday, readers: Readers, answers: Answers, asOf: CivilDate): CheckItems {
  const items: Addressed[] = [];
  const missed: Addressed[] = [];
  if (today.assessment.readiness === 'down') return { items, missed };
  const kinds = new Map(today.checkKinds.map((kind) => [kind.id, kind]));
  for (const due of today.assessment.due) {
    const kind = kinds.get(due.checkKindId);
    const what = kind === undefined ? null : whatToSay(due, kind, today, asOf);
    if (kind === undefined || what === null) continue;
    const subject = checkSubject(today.trailer.id, due);
    const until = answers.putOffUntil(subject, kind.safety ? lastDayBeforeNextJob(today, asOf) : null);
    if (until !== null && asOf < until) continue;
    const again = until === null ? [] : [`again-${until}`];
    const about = {
      kind: what.kind,
      trailerId: today.trailer.id,
      due: { ...due, yardDays: yardDaysFrom(due.yardDays, daysAfter(asOf, 1)) },
      code: due.code,
      together: sameVisit(due, kind, today),
    };
    const keyFor = (personId: string) =>
      itemKey(what.kind === 'overdue' ? 'overdue' : 'due', subject, personId, ...what.week, ...again);
    for (const { reader, unowned } of recipientsOf(kind, readers, answers.handedOnBy(subject))) {
      const item: CheckItem = { ...about, key: keyFor(reader.personId), unowned };
      items.push({ personId: reader.personId, item });
    }
    const ownerId = kind.ownerPersonId;
    if (ownerId !== null && readers.reached(ownerId) === null) {
      missed.push({ personId: ownerId, item: { ...about, key: keyFor(ownerId), unowned: false } });
    }
  }
  return { items, missed };
}

/** A Monday this many days or fewer after the first word says nothing new. */
const FIRST_NUDGE_DAYS = 7;

function whatToSay(
  due: Due,
  kind: CheckKind,
  today: TrailerToday,
  asOf: CivilDate,
): { readonly kind: CheckItem['kind']; readonly week: readonly string[] } | null {
  switch (stateOn(due, kind, asOf)) {
    case 'overdue': {
      const monday = mondayOf(asOf);
      const isLate = due.dueOn !== null && monday > daysAfter(due.dueOn, FIRST_NUDGE_DAYS);
      return { kind: 'overdue', week: isLate ? [monday] : [] };
    }
    case 'due-soon':
      return isForTheRoad(kind, due) ? null : { kind: 'due-soon', week: [] };
    case 'never-done':
      return kind.safety && isJobNear(today, kind, asOf) ? { kind: 'due-soon', week: [] } : null;
    default:
      return null;
  }
}

/** A kept answer may be some days old; what a date says is read against today. */
function stateOn(due: Due, kind: CheckKind, asOf: CivilDate): Due['state'] {
  if (due.dueOn === null || due.state === 'never-done' || due.state === 'unknown') return due.state;
  if (due.dueOn < asOf) return 'overdue';
  return dayNumber(due.dueOn) - dayNumber(asOf) <= kind.leadDays ? 'due-soon' : 'later';
}

function isJobNear(today: TrailerToday, kind: CheckKind, asOf: CivilDate): boolean {
  const until = daysAfter(asOf, Math.max(1, kind.leadDays));
  return today.jobs.some(({ job }) => job.state === 'booked' && job.endsOn >= asOf && job.startsOn <= until);
}

function lastDayBeforeNextJob(today: TrailerToday, asOf: CivilDate): CivilDate | null {
  const starts = today.jobs
    .filter(({ job }) => job.state === 'booked' && job.endsOn >= asOf)
    .map(({ job }) => job.startsOn);
  const next = starts.sort()[0];
  return next === undefined ? null : daysAfter(next, -1);
}

/** Checks of the same bundle that fall due this soon after are done on the same visit. Two months; our choice. */
const SAME_VISIT_DAYS = 60;

/** Everything worth doing while the same hub is open: what the check itself names, and its bundle's checks due near it. */
function sameVisit(due: Due, kind: CheckKind, today: TrailerToday): readonly string[] {
  const { bundle, together } = kind.work;
  if (bundle === null) return together;
  const until = due.dueOn === null ? null : daysAfter(due.dueOn, SAME_VISIT_DAYS);
  const dueByKind = new Map(today.assessment.due.map((item) => [item.checkKindId, item]));
  const others = today.checkKinds.filter((other) => {
    const item = dueByKind.get(other.id);
    if (other.id === kind.id || other.work.bundle !== bundle || item === undefined) return false;
    return item.state === 'never-done' || (item.dueOn !== null && until !== null && item.dueOn <= until);
  });
  return [...together, ...others.map((other) => other.name).sort()];
}
