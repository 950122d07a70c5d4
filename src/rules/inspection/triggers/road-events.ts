import type { CivilDate } from '../../calendar/civil-date.js';
import type { CheckEvent } from '../../facts/check.js';
import type { Trip } from '../../facts/use.js';
import type { TrailerOn } from '../../history/trailer-on.js';

/** What happens to a trailer on its trips, by the last day of each. */
interface RoadEvents {
  /** The first after a day; null when there was none, and for an event that no trip tells of. */
  firstAfter(event: CheckEvent, day: CivilDate): CivilDate | null;
  last(event: CheckEvent): CivilDate | null;
}

const read = new WeakMap<TrailerOn, RoadEvents>();

/** Once for all checks of a trailer: many of them ask for the same event, each since another day. */
export function roadEvents(trailer: TrailerOn): RoadEvents {
  const known = read.get(trailer);
  if (known !== undefined) return known;
  const events = new EventsOfTrips(trailer);
  read.set(trailer, events);
  return events;
}

class EventsOfTrips implements RoadEvents {
  private readonly kept = new Map<CheckEvent, TripsAsked>();

  constructor(private readonly trailer: TrailerOn) {}

  firstAfter(event: CheckEvent, day: CivilDate): CivilDate | null {
    const { tripsByEnd } = this.trailer;
    const asked = this.of(event);
    for (let i = firstEndedAfter(tripsByEnd, day); i < tripsByEnd.length; i++) {
      if (asked.happenedOn(i)) return (tripsByEnd[i] as Trip).endedOn;
    }
    return null;
  }

  last(event: CheckEvent): CivilDate | null {
    const { tripsByEnd } = this.trailer;
    const asked = this.of(event);
    for (let i = tripsByEnd.length - 1; i >= 0; i--) {
      if (asked.happenedOn(i)) return (tripsByEnd[i] as Trip).endedOn;
    }
    return null;
  }

  private of(event: CheckEvent): TripsAsked {
    const known = this.kept.get(event);
    if (known !== undefined) return known;
    const asked = new TripsAsked(this.trailer, event);
    this.kept.set(event, asked);
    return asked;
  }
}

/** Whether one event happened on each trip, asked of no more trips than anybody wants to know. */
class TripsAsked {
  /** 0 not asked yet, 1 no, 2 yes. */
  private readonly answers: Uint8Array;

  constructor(
    private readonly trailer: TrailerOn,
    private readonly event: CheckEvent,
  ) {
    this.answers = new Uint8Array(trailer.tripsByEnd.length);
  }

  happenedOn(place: number): boolean {
    if (this.answers[place] === 0) this.answers[place] = this.ask(place) ? 2 : 1;
    return this.answers[place] === 2;
  }

  private ask(place: number): boolean {
    const trip = this.trailer.tripsByEnd[place] as Trip;
    switch (this.event) {
      case 'submerged':
        return trip.roads?.includes('water') ?? false;
      case 'salted':
        return trip.roads?.includes('salt') ?? false;
      case 'overloaded':
        return this.trailer.passedALimit(trip);
      default:
        return false;
    }
  }
}

function firstEndedAfter(tripsByEnd: readonly Trip[], day: CivilDate): number {
  let low = 0;
  let high = tripsByEnd.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((tripsByEnd[middle] as Trip).endedOn > day) high = middle;
    else low = middle + 1;
  }
  return low;
}
