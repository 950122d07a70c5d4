import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { daysBetween } from '../../rules/calendar/civil-date.js';
import { MOST_KM_A_DAY, PLAUSIBLE_USE } from '../../rules/facts/plausible.js';
import { ROADS, type Trip } from '../../rules/facts/use.js';
import type { Given } from './given.js';
import type { Incoming } from './incoming.js';
import { readLoad } from './load-input.js';
import { sayRange } from './say-range.js';

export type TripInput = Incoming<Omit<Trip, 'id' | 'jobId'>>;

/** A haul done, so all of it on or before today. */
export function readTrip(given: Given, today: CivilDate): Omit<Trip, 'id' | 'jobId'> {
  const startedOn = given.needDate('startedOn', 'the day the trip started', { notAfter: today, notAfterIs: 'today' });
  const endedOn = given.needDate('endedOn', 'the day the trip ended', {
    notBefore: startedOn,
    notBeforeIs: 'the day it started',
    notAfter: today,
    notAfterIs: 'today',
  });
  return {
    startedOn,
    endedOn,
    distanceKm: readDistance(given, startedOn, endedOn),
    machineId: given.id('machineId', 'the machine'),
    load: readLoad(given.object('load')),
    roads: given.choices('roads', 'what the trip went through', ROADS),
  };
}

/** A distance no trailer could cover in these days has a slipped digit. */
export function readDistance(given: Given, from: CivilDate, to: CivilDate): Trip['distanceKm'] {
  const distanceKm = given.number('distanceKm', PLAUSIBLE_USE.tripDistance);
  const days = Math.max(1, daysBetween(from, to) + 1);
  if (distanceKm !== null && distanceKm > MOST_KM_A_DAY * days) {
    const most = { ...PLAUSIBLE_USE.tripDistance, high: MOST_KM_A_DAY * days };
    given.refuse('distanceKm', `Enter a distance a trailer can cover in ${days} day(s): ${sayRange(most)}.`);
  }
  return distanceKm;
}
