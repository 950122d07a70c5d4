import type { CivilDate } from '../calendar/civil-date.js';
import { dayFromNumber, dayNumber } from '../calendar/day-number.js';
import type { Due } from '../inspection/due.js';

/**
 * Keys under which items are told once. Parts are joined by `|`, which occurs in no id, code or day:
 *
 *     due|<trailer>/<check kind>/<round>|<person>
 *     overdue|<trailer>/<check kind>/<round>|<person>|<week>
 *     gate|<job>/<its first day>/<eve or ahead>|<person>
 *     stop|<trailer>/<flag>/<since>|<person>
 *
 * The subject in the middle is what an answer is about; the person is part of the key, so that whoever takes an item
 * over hears of it though another was told before.
 */
export type ItemSubject = string;

/** One round of a check: from one time it is done to the next. Told again when the round is another. */
export function checkSubject(trailerId: string, due: Due): ItemSubject {
  return `${trailerId}/${due.checkKindId}/${roundOf(due)}`;
}

/**
 * What makes a round of a check. A due date that moves with use, or when a job is rescheduled, is no new round, or
 * people would be told again each time somebody reads a meter.
 */
function roundOf(due: Due): string {
  const since = due.lastDoneOn ?? 'never';
  const { trigger } = due;
  if (due.failed) return `failed-${due.dueOn}`;
  if (trigger === null) return since;
  switch (trigger.kind) {
    case 'fixed-date':
    case 'days':
    case 'months':
      return due.dueOn ?? since;
    case 'distance':
    case 'trips':
      return `${trigger.kind}-since-${since}`;
    case 'event': {
      if (trigger.event === 'idle' || trigger.event === 'idle-half-year') return `idle-${due.dueOn ?? 'next-use'}`;
      const limitKm = due.used?.kind === 'distance' ? Math.round(due.used.limitKm) : null;
      return limitKm === null ? `${trigger.event}-${due.dueOn}` : `${trigger.event}-${limitKm}-since-${since}`;
    }
  }
}

export function itemKey(kind: string, subject: ItemSubject, personId: string, ...more: readonly string[]): string {
  return [kind, subject, personId, ...more].join('|');
}

/** What a key is about; null for keys of other makes. */
export function subjectOf(key: string): ItemSubject | null {
  return key.split('|')[1] ?? null;
}

/** The Monday of a day's week: nudges about different checks then come in one letter. */
export function mondayOf(date: CivilDate): CivilDate {
  const number = dayNumber(date);
  // Day 0, 1 January 1970, was a Thursday.
  return dayFromNumber(number - ((((number + 3) % 7) + 7) % 7));
}
