import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { daysBetween } from '../../rules/calendar/civil-date.js';
import type { CheckEvent, CheckKind, Trigger } from '../../rules/facts/check.js';
import type { Due } from '../../rules/inspection/due.js';
import { yardDaysFrom } from '../../rules/inspection/yard-days.js';
import { showCount, showDate, showDistance, showNearDate, showNumber } from '../components/show-quantity.js';
import { listWords } from './build-words.js';

const EVENT_WORDS: Readonly<Record<CheckEvent, string>> = {
  'wheel-off': 'a wheel came off',
  'brakes-new': 'new brakes',
  overloaded: 'a load over a rating',
  submerged: 'the hubs were under water',
  salted: 'a trip over road salt',
  'salt-half-time': 'half the time, once it went over road salt',
  idle: 'standing idle',
  'idle-half-year': 'standing idle for half a year',
};

export function eventWords(event: CheckEvent): string {
  return EVENT_WORDS[event];
}

const FIXED_WORDS = { registration: 'the registration runs out', insurance: 'the insurance runs out' } as const;

/** What makes a check fall due: `every 12 months`, `10, 25 and 50 mi after a wheel came off`. */
export function triggerWords(trigger: Trigger): string {
  switch (trigger.kind) {
    case 'days':
      return every(trigger.every, 'day');
    case 'months':
      return `${every(trigger.every, 'month')}${trigger.toMonthEnd ? ', to the end of the month' : ''}`;
    case 'distance':
      return `every ${showDistance(trigger.everyKm)}`;
    case 'trips':
      return every(trigger.every, 'trip');
    case 'event':
      return trigger.atKm.length === 0
        ? `at once after ${EVENT_WORDS[trigger.event]}`
        : `${listWords(trigger.atKm.map(showDistance))} after ${EVENT_WORDS[trigger.event]}`;
    case 'fixed-date':
      return `before ${FIXED_WORDS[trigger.date]}`;
  }
}

function every(count: number, what: string): string {
  return count === 1 ? `every ${what}` : `every ${showCount(count, what)}`;
}

/** When: `Overdue by 12 days (since Mon 1 Jun 2026)`, `Due Tue 2 Jun 2026, in 21 days`. */
export function dueWhen(due: Due, today: CivilDate): string {
  switch (due.state) {
    case 'overdue': {
      if (due.dueOn === null) return 'Overdue: wanted before the next trip';
      const days = daysBetween(due.dueOn, today);
      return days > 0
        ? `Overdue by ${showCount(days, 'day')}, last good day ${showDate(due.dueOn)}`
        : `Wanted now, last good day ${showDate(due.dueOn)}`;
    }
    case 'never-done':
      return 'No record of it, so wanted now';
    case 'unknown':
      return `Cannot say: ${unknownWords(due)}`;
    case 'due-soon':
    case 'later': {
      if (due.dueOn === null) return 'No day yet';
      const days = daysBetween(today, due.dueOn);
      if (days === 0) return `Due today, ${showDate(due.dueOn)}`;
      return `Due ${showDate(due.dueOn)}, in ${showCount(days, 'day')}`;
    }
  }
}

/** Why then: which trigger came first and from what it counts. */
export function dueWhy(due: Due): string | null {
  const parts: string[] = [];
  if (due.trigger !== null) parts.push(`Counted ${triggerWords(due.trigger)}`);
  if (due.used?.kind === 'distance')
    parts.push(`${showDistance(due.used.usedKm)} of ${showDistance(due.used.limitKm)} used${soonerWords(due.used)}`);
  if (due.used?.kind === 'trips')
    parts.push(`${showNumber(due.used.used)} of ${showCount(due.used.limit, 'trip')} used`);
  if (due.lastDoneOn !== null) parts.push(`last done ${showDate(due.lastDoneOn)}`);
  if (parts.length === 0) return null;
  const sentence = parts.join('; ');
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
}

/** Less than this added distance is not told. Our choice. */
const WORTH_TELLING_KM = 1;

/** How sure the day is: `With eight chances in ten between 3 Aug and 29 Oct 2025`. Null where it is sure, or cannot be said. */
export function rangeWords({ range }: Due): string | null {
  if (range === null || range.p10 === null || range.p10 === range.p90) return null;
  return range.p90 === null
    ? `With nine chances in ten not before ${showDate(range.p10)}`
    : `With eight chances in ten between ${showDate(range.p10)} and ${showDate(range.p90)}, going by its use so far`;
}

/** Looks at distances after an event: which were missed, and after how many miles to stop for the others. */
export function stopWords({ stops }: Due): string | null {
  if (stops === null) return null;
  const missed = stops.missedKm.map(showDistance);
  const ahead = stops.aheadKm.map(showDistance);
  return [
    ...(missed.length > 0
      ? [`Missed at ${listWords(missed)}; one look now settles ${missed.length > 1 ? 'them all' : 'it'}`]
      : []),
    ...(ahead.length > 0 ? [`On the road: stop for it after ${listWords(ahead)}`] : []),
  ].join('. ');
}

/** Why more is used than was driven: ` (400 mi added for …, so it is due sooner)`. */
function soonerWords({ harshKm, loadKm }: Extract<NonNullable<Due['used']>, { kind: 'distance' }>): string {
  const reasons: string[] = [];
  if (harshKm >= WORTH_TELLING_KM)
    reasons.push(`${showDistance(harshKm)} added for salt, gravel or loads over the plate`);
  if (loadKm >= WORTH_TELLING_KM)
    reasons.push(`${showDistance(loadKm)} added because an axle carried more than its rating`);
  return reasons.length === 0 ? '' : ` (${listWords(reasons)}, so it is due sooner)`;
}

/** The days on which it can be done: `Thu 20 Nov to Mon 24 Nov or Thu 27 Nov`. Null when none is known. */
export function yardDayWords(due: Due, today: CivilDate): string | null {
  const days = yardDaysFrom(due.yardDays, today);
  if (days.length === 0) return null;
  const runs = days
    .slice(0, 3)
    .map(({ from, to }) => (from === to ? showNearDate(from) : `${showNearDate(from)} to ${showNearDate(to)}`));
  return `In the yard ${runs.join(', or ')}`;
}

/** What the work asks for: `2 h in the shop; 4 seals, grease`. */
export function workWords(kind: Pick<CheckKind, 'work'>): string {
  const { hours, place, parts, together } = kind.work;
  const time = hours < 1 ? `${Math.round(hours * 60)} min` : `${showNumber(hours, 1)} h`;
  const where = { shop: 'in the shop', yard: 'in the yard', road: 'on the road' }[place];
  const pieces = [`${time} ${where}`];
  if (parts.length > 0) pieces.push(`bring ${listWords(parts)}`);
  if (together.length > 0) pieces.push(`same visit: ${listWords(together)}`);
  return pieces.join('; ');
}

function unknownWords(due: Due): string {
  switch (due.unknown) {
    case 'no-distance-known':
      return 'no miles are known for this trailer. Record trips with miles, or a hub meter reading';
    case 'no-last-done':
      return 'nobody has said when it was last done. Record the last one';
    case 'no-date-set':
      return 'the date is not on file. Enter it on the trailer, under Change the papers';
    case null:
      return 'a fact is missing';
  }
}
