import type { CivilDate } from '../../../src/rules/calendar/civil-date.js';
import { dayFromNumber } from '../../../src/rules/calendar/day-number.js';
import type { Job, MeterReading, Trip } from '../../../src/rules/facts/use.js';
import { miles } from '../../../src/rules/units/distance.js';
import { job, reading, trip } from '../sample-trailer.js';
import type { Chance } from './chance.js';

/** Miles driven on each day to come, one call a day in order. */
type Use = (day: number) => number;

/**
 * Kinds of use, invented for this test: how a trailer that is used so goes out day by day. Sizes of hauls are gamma,
 * in miles.
 */
export const KINDS_OF_USE: Readonly<Record<string, (chance: Chance) => Use>> = {
  /** Most workdays. */
  steady: (chance) => {
    const often = chance.between(0.3, 0.8);
    const mi = chance.between(15, 60);
    return (day) => (day % 7 < 5 && chance.happens(often) ? chance.gamma(mi, 0.5) : 0);
  },
  weekend: (chance) => {
    const mi = chance.between(20, 70);
    return (day) => (day % 7 >= 5 && chance.happens(0.5) ? chance.gamma(mi, 0.6) : 0);
  },
  /** Two weeks or so on one site, then about five in the yard. */
  bursts: (chance) => {
    const mi = chance.between(15, 60);
    let isOut = chance.happens(0.3);
    return () => {
      isOut = chance.happens(isOut ? 14 / 15 : 1 / 35);
      return isOut && chance.happens(0.7) ? chance.gamma(mi, 0.5) : 0;
    };
  },
  /** Every three weeks to three months, farther. */
  rare: (chance) => {
    const days = chance.between(20, 90);
    const mi = chance.between(40, 160);
    return () => (chance.happens(1 / days) ? chance.gamma(mi, 0.6) : 0);
  },
  /** Nine times as often at the height of its season as six months later. */
  seasonal: (chance) => {
    const often = chance.between(0.2, 0.5);
    const mi = chance.between(15, 60);
    const height = chance.between(0, 365);
    return (day) =>
      chance.happens(often * (1 + 0.8 * Math.cos((2 * Math.PI * (day - height)) / 365))) ? chance.gamma(mi, 0.5) : 0;
  },
  /** Its work changes once or twice a year or so, to between a third and three times as much. */
  changing: (chance) => {
    const mi = chance.between(15, 60);
    let often = chance.between(0.15, 0.45);
    return () => {
      if (chance.happens(1 / 250)) often = Math.min(0.9, Math.max(0.05, often * 3 ** chance.between(-1, 1)));
      return chance.happens(often) ? chance.gamma(mi, 0.5) : 0;
    };
  },
  /** How often it goes out wanders off, about a quarter a month, and slowly comes back. */
  drifting: (chance) => {
    const mi = chance.between(15, 60);
    const usual = Math.log(0.3);
    let often = usual;
    return () => {
      often += (chance.normal() * 0.25) / Math.sqrt(30) - (often - usual) / 365;
      return chance.happens(Math.min(0.95, Math.exp(often))) ? chance.gamma(mi, 0.5) : 0;
    };
  },
};

/** What is known of one simulated trailer on a day, and what will come. */
export interface SimulatedTrailer {
  readonly readings: readonly MeterReading[];
  readonly trips: readonly Trip[];
  readonly jobs: readonly Job[];
  readonly asOf: number;
  /** Miles on the days from `firstDay` on, those after `asOf` included. */
  readonly mi: readonly number[];
  readonly firstDay: number;
}

const FIRST_DAY = 18_000;
const DAYS_AFTER = 2_500;

/** Two months to more than two years of records, of which short ones are more common. */
function daysKnown(chance: Chance): number {
  return Math.floor(60 + 100 * chance.uniform() + 700 * chance.uniform() * chance.uniform());
}

function dated(place: number): CivilDate {
  return dayFromNumber(FIRST_DAY + place);
}

/** Each haul logged, no meter. */
export function byTrips(use: Use, chance: Chance): SimulatedTrailer {
  const known = daysKnown(chance);
  const mi = Array.from({ length: known + DAYS_AFTER }, (_, day) => use(day));
  const trips = mi.slice(0, known + 1).flatMap((one, day) => (one > 0 ? trip(dated(day), one) : []));
  return { readings: [], trips, jobs: [], asOf: FIRST_DAY + known, mi, firstDay: FIRST_DAY };
}

/** A meter read every one to eight weeks, no haul logged. */
export function byMeter(use: Use, chance: Chance): SimulatedTrailer {
  const known = daysKnown(chance);
  const mi = Array.from({ length: known + DAYS_AFTER }, (_, day) => use(day));
  const readings: MeterReading[] = [];
  let shown = 0;
  let next = 0;
  for (let day = 0; day <= known; day++) {
    shown += mi[day] as number;
    if (day !== next) continue;
    readings.push(reading(dated(day), shown));
    next = day + Math.ceil(chance.between(7, 57));
  }
  return { readings, trips: [], jobs: [], asOf: FIRST_DAY + known, mi, firstDay: FIRST_DAY };
}

/** Steady own use, and jobs of one to four days every three weeks or so, booked three weeks ahead. */
export function withJobs(chance: Chance): SimulatedTrailer {
  const use = (KINDS_OF_USE.steady as (chance: Chance) => Use)(chance);
  const known = daysKnown(chance);
  const mi = Array.from({ length: known + DAYS_AFTER }, (_, day) => use(day));
  const trips: Trip[] = [];
  const jobs: Job[] = [];
  const isJob = new Set<number>();
  for (let first = Math.ceil(chance.between(1, 40)); first < mi.length - 5; ) {
    const days = Math.ceil(chance.between(0, 4));
    const distance = chance.gamma(150, 0.5);
    for (let day = first; day < first + days; day++) {
      mi[day] = distance / days;
      isJob.add(day);
    }
    const last = first + days - 1;
    const id = `job-${first}`;
    if (last <= known) trips.push(trip(dated(first), distance, { id, endedOn: dated(last), jobId: id }));
    else if (first <= known + 21)
      jobs.push(job(dated(first), { id, endsOn: dated(last), distanceKm: miles(distance) }));
    first = last + 1 + Math.ceil(chance.between(1, 40));
  }
  mi.slice(0, known + 1).forEach((one, day) => {
    if (one > 0 && !isJob.has(day)) trips.push(trip(dated(day), one));
  });
  trips.sort((a, b) => (a.startedOn < b.startedOn ? -1 : 1));
  return { readings: [], trips, jobs, asOf: FIRST_DAY + known, mi, firstDay: FIRST_DAY };
}
