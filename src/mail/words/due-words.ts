import { addDays, type CivilDate, daysBetween } from '../../rules/calendar/civil-date.js';
import type { CheckEvent, CheckKind, Trigger } from '../../rules/facts/check.js';
import type { Due } from '../../rules/inspection/due.js';
import { count, list, milesOf, number, onDay } from './show.js';

const AFTER: Readonly<Record<CheckEvent, string>> = {
  'wheel-off': 'a wheel was off',
  'brakes-new': 'brakes were fitted',
  overloaded: 'a load over a rating',
  submerged: 'the hubs were under water',
  salted: 'a trip over salt',
  'salt-half-time': 'half the time, once it went over salt',
  idle: 'standing for long',
  'idle-half-year': 'standing for half a year',
};

function every(trigger: Trigger): string {
  switch (trigger.kind) {
    case 'days':
      return `every ${count(trigger.every, 'day')}`;
    case 'months':
      return `every ${count(trigger.every, 'month')}`;
    case 'distance':
      return `every ${milesOf(trigger.everyKm)}`;
    case 'trips':
      return `every ${count(trigger.every, 'trip')}`;
    case 'event':
      return trigger.atKm.length === 0
        ? `before the next trip after ${AFTER[trigger.event]}`
        : `${list(trigger.atKm.map(milesOf))} after ${AFTER[trigger.event]}`;
    case 'fixed-date':
      return trigger.date === 'registration' ? 'by the end of the registration' : 'by the end of the insurance';
  }
}

/** The interval with everything that may end it: `every 12 months or every 12,000 mi, whichever comes first`. */
function intervalWords(kind: Pick<CheckKind, 'triggers'>): string {
  const all = kind.triggers.map(every);
  const last = all.at(-1) ?? '';
  return all.length > 1 ? `${all.slice(0, -1).join(', ')} or ${last}, whichever comes first` : last;
}

/** When it is due, in a few words, as a mark: `Overdue since Mon 2 Jun`, `By Mon 2 Jun`, `Before the next trip`. */
export function dueMark(due: Due, asOf: CivilDate): string {
  if (due.failed) return 'Failed';
  switch (due.state) {
    case 'overdue':
      return due.dueOn === null ? 'Overdue' : `Overdue since ${onDay(due.dueOn, asOf)}`;
    case 'never-done':
      return 'No record of it';
    case 'unknown':
      return 'Cannot say when';
    case 'due-soon':
    case 'later':
      return due.dueOn === null ? 'Before the next trip' : `By ${onDay(due.dueOn, asOf)}`;
  }
}

/** The same inside a sentence: `overdue since Mon 2 Jun`, `due by Mon 2 Jun`, `no record of it`. */
export function duePhrase(due: Due, asOf: CivilDate): string {
  if (due.failed) return 'failed, and not put right since';
  switch (due.state) {
    case 'overdue':
      return due.dueOn === null ? 'overdue' : `overdue since ${onDay(due.dueOn, asOf)}`;
    case 'never-done':
      return 'no record of it';
    case 'unknown':
      return 'nobody can say when it is due';
    case 'due-soon':
    case 'later':
      return due.dueOn === null ? 'wanted before the next trip' : `due by ${onDay(due.dueOn, asOf)}`;
  }
}

/** Where the work is done. */
export const PLACE: Readonly<Record<CheckKind['work']['place'], string>> = {
  shop: 'in the shop',
  yard: 'in the yard',
  road: 'on the road',
};

/** Why then: `Last done Sun 2 Jun 2024; due every 12 months or …. By the calendar that is Mon 2 Jun.` */
export function dueReason(due: Due, kind: CheckKind, asOf: CivilDate): string {
  if (due.failed && due.dueOn !== null) {
    return `It failed on ${onDay(addDays(due.dueOn, 1), asOf)} and stays due until a pass is recorded.`;
  }
  const last = due.lastDoneOn === null ? 'There is no record of it' : `Last done ${onDay(due.lastDoneOn, asOf)}`;
  const sum = `${last}; due ${intervalWords(kind)}.`;
  if (due.dueOn === null) return due.state === 'due-soon' ? `${sum} It is wanted before the next trip.` : sum;
  const over = due.state === 'overdue' ? `, ${count(daysBetween(due.dueOn, asOf), 'day')} ago` : '';
  return `${sum} ${due.trigger === null ? 'That' : `${BY_WHICH[due.trigger.kind]} that`} is ${onDay(due.dueOn, asOf)}${over}.`;
}

/** How much of it is used: `3,100 of 12,000 mi`. Null where nothing is counted. */
export function usedWords(due: Due): string | null {
  if (due.used === null) return null;
  return due.used.kind === 'distance'
    ? `${milesOf(due.used.usedKm).replace(' mi', '')} of ${milesOf(due.used.limitKm)}${soonerWords(due.used)}`
    : `${number(due.used.used)} of ${count(due.used.limit, 'trip')}`;
}

/** Less than this added distance is not told. Our choice. */
const WORTH_TELLING_KM = 1;

/** Why more is used than was driven, so that it is due sooner. */
function soonerWords({ harshKm, loadKm }: Extract<NonNullable<Due['used']>, { kind: 'distance' }>): string {
  const reasons: string[] = [];
  if (harshKm >= WORTH_TELLING_KM) reasons.push(`${milesOf(harshKm)} added for salt, gravel or loads over the plate`);
  if (loadKm >= WORTH_TELLING_KM) reasons.push(`${milesOf(loadKm)} added for axles over their rating`);
  return reasons.length === 0 ? '' : ` (${list(reasons)})`;
}

/** What happens if it is left undone. */
export function ifNot(kind: Pick<CheckKind, 'blocks' | 'safety'>, state: Due['state'], yardNumber: string): string {
  const undone = state === 'due-soon' || state === 'later' ? 'If it is not done by then' : 'Until it is done';
  const hurt = kind.safety ? ' Somebody can be hurt if it is left out.' : '';
  switch (kind.blocks) {
    case 'all-jobs':
      return `${undone}, ${yardNumber} is not ready for any job.${hurt}`;
    case 'commercial-jobs':
      return `${undone}, ${yardNumber} may not go out on a commercial job.${hurt}`;
    case 'none':
      return `${undone}, it shows as overdue; it stops no job.${hurt}`;
  }
}

const BY_WHICH: Readonly<Record<Trigger['kind'], string>> = {
  days: 'By the calendar',
  months: 'By the calendar',
  distance: 'By the miles',
  trips: 'By the trips',
  event: 'By what happened',
  'fixed-date': 'By the paper',
};
