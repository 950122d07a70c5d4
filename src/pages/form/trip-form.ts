import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { ROADS, type Trip } from '../../rules/facts/use.js';
import type { TripInput } from '../../use-cases/input/trip-input.js';
import { inMiles } from './fill-form.js';
import { typedDay } from './identity-form.js';
import { fillLoadForm, type ReadLoad } from './load-form.js';
import type { FormReader } from './read-form.js';

/** Reads the days, miles and roads of a haul, with the load read beside it. One day unless said otherwise. */
export function readTripForm(form: FormReader, { machineId, load }: ReadLoad): TripInput {
  const startedOn = typedDay(form.need('startedOn'));
  return {
    startedOn: startedOn as CivilDate,
    endedOn: typedDay(form.text('endedOn') ?? form.need('startedOn')) as CivilDate,
    distanceKm: form.miles('distance'),
    machineId,
    load,
    roads: readRoads(form),
  };
}

/** Nothing ticked is "nobody said"; dry pavement alone is an answer. */
export function readRoads(form: FormReader): Trip['roads'] {
  const ticked = form.list('roads');
  if (ticked.length === 0) return null;
  return ROADS.filter((road) => ticked.includes(road));
}

export function fillTripForm(trip: Trip): Record<string, string | readonly string[]> {
  return {
    startedOn: trip.startedOn,
    endedOn: trip.endedOn,
    distance: inMiles(trip.distanceKm),
    roads: trip.roads === null ? [] : trip.roads.length === 0 ? ['dry'] : trip.roads,
    ...fillLoadForm(trip.load, trip.machineId, true),
  };
}
