import type { CivilDate } from '../../calendar/civil-date.js';
import { daysAfter } from '../../calendar/day-number.js';
import type { CheckEvent } from '../../facts/check.js';
import type { TrailerOn } from '../../history/trailer-on.js';
import type { CheckSoFar } from './falls.js';
import { roadEvents } from './road-events.js';

/** Without any record of the check, older events than this are past mending by a look. Our choice. */
const EVENT_DAYS = 90;

/** The first event on the road since the check was last passed. A pass on the day of the event is after it. */
export function firstOpenEvent(event: CheckEvent, { trailer, lastPass }: CheckSoFar): CivilDate | null {
  if (event === 'wheel-off' || event === 'brakes-new') {
    const last = lastWorkshopEvent(event, trailer);
    return last !== null && (lastPass === null || lastPass.doneOn < last) ? last : null;
  }
  const after = lastPass?.doneOn ?? daysAfter(trailer.asOf, -EVENT_DAYS - 1);
  return roadEvents(trailer).firstAfter(event, after);
}

export function lastEvent(event: CheckEvent, { trailer }: CheckSoFar): CivilDate | null {
  if (event === 'wheel-off' || event === 'brakes-new') return lastWorkshopEvent(event, trailer);
  return roadEvents(trailer).last(event);
}

/** Work behind a hub takes the wheel off. */
const HUB_BUNDLE = 'hub';

/** Last day a wheel came off (tires, hub bearings or brakes changed, or work behind the hub), or brakes were fitted. */
function lastWorkshopEvent(event: 'wheel-off' | 'brakes-new', trailer: TrailerOn): CivilDate | null {
  let last: CivilDate | null = null;
  const see = (on: CivilDate | null) => {
    if (on !== null && on <= trailer.asOf && (last === null || on > last)) last = on;
  };
  for (const part of trailer.facts.parts) {
    if (part.kind === 'brake-set') see(part.fittedOn);
    if (event === 'brakes-new' || part.position === 'spare') continue;
    if (part.kind !== 'tire' && part.kind !== 'hub-bearings' && part.kind !== 'brake-set') continue;
    see(part.fittedOn);
    see(part.removedOn);
  }
  if (event === 'wheel-off') {
    const hubKinds = trailer.facts.checkKinds.filter((kind) => kind.work.bundle === HUB_BUNDLE);
    const ids = new Set(hubKinds.map((kind) => kind.id));
    for (const record of trailer.records) if (ids.has(record.checkKindId)) see(record.doneOn);
  }
  return last;
}
