import { earliest } from '../calendar/civil-date.js';
import { dayNumber } from '../calendar/day-number.js';
import type { MeterReading, Trip } from '../facts/use.js';
import { type Kilometres, km } from '../units/distance.js';
import { tripDays } from './trip-days.js';

/**
 * How far a trailer has gone, day by day, with no mile counted twice.
 *
 * Where two readings of one meter span a period, the meter is right and the trips inside only say on which days its
 * distance was driven. Days outside such periods (before the first reading, after the last, across a change of meter)
 * take the distance of their trips, spread evenly over each trip's days. A reading counts as taken at the end of its
 * day, so a trip that ends on that day is already in it. Within a metered period: if the trips say less than the
 * meter, the rest is spread evenly over its days; if they say more, they are scaled down to the meter.
 * All of this is our rule; a reading taken in the morning before a trip on the same day is the case it gets wrong.
 */
export interface DistanceTravelled {
  /** Distance up to the end of a day. */
  upTo(day: number): Kilometres;
  /** Distance on the days after `from`, up to and with `to`. */
  between(from: number, to: number): Kilometres;
  /** First day by whose end the distance since `from` is at least `distance`; null while it is not. */
  dayReaching(from: number, distance: Kilometres): number | null;
  /** Whether anything at all is known: two readings, or a trip with its distance. */
  readonly known: boolean;
  readonly lastDay: number | null;
  readonly total: Kilometres;
}

/** What one trip's distance counts for, as a factor: 1, or more where service was harsh. */
export type TripWeight = (trip: Trip) => number;

/** Readings and trips in the order of time. */
export function distanceTravelled(readings: readonly MeterReading[], trips: readonly Trip[]): DistanceTravelled {
  return distancesTravelled(readings, trips, () => 1).driven;
}

/** The distance driven, and the same with each trip's share counted for as much as it weighs. */
export function distancesTravelled(
  readings: readonly MeterReading[],
  trips: readonly Trip[],
  weight: TripWeight,
): { readonly driven: DistanceTravelled; readonly counted: DistanceTravelled } {
  const span = daysSpanned(readings, trips);
  if (span === null) {
    const nothing = new DailyDistance(0, new Float64Array(0), false);
    return { driven: nothing, counted: nothing };
  }
  const { first, last } = span;
  const driven = new Float64Array(last - first + 1);
  const counted = new Float64Array(last - first + 1);
  let known = false;
  let isWeighted = false;
  const days = tripDays(trips);
  for (let i = 0; i < trips.length; i++) {
    const trip = trips[i] as Trip;
    if (trip.distanceKm === null) continue;
    known = true;
    const from = (days.first[i] as number) - first;
    const to = (days.last[i] as number) - first;
    const aDay = trip.distanceKm / (to - from + 1);
    const factor = weight(trip);
    if (factor !== 1) isWeighted = true;
    const extra = aDay * factor;
    for (let day = from; day <= to; day++) {
      driven[day] = (driven[day] ?? 0) + aDay;
      counted[day] = (counted[day] ?? 0) + extra;
    }
  }
  for (let i = 1; i < readings.length; i++) {
    const before = readings[i - 1] as MeterReading;
    const reading = readings[i] as MeterReading;
    const metered = meteredKm(before, reading);
    if (metered === null) continue;
    known = true;
    fitToMeter(driven, counted, dayNumber(before.takenOn) - first, dayNumber(reading.takenOn) - first, metered);
  }
  const plain = new DailyDistance(first, driven, known);
  return { driven: plain, counted: isWeighted ? new DailyDistance(first, counted, known) : plain };
}

/** What the meter ran between two readings; null where it cannot say: another meter, or a meter that ran backwards. */
export function meteredKm(before: MeterReading, reading: MeterReading): Kilometres | null {
  if (reading.kind === 'replaced') return null;
  const rolled = reading.kind === 'rolled-over' ? (reading.meterSpanKm ?? Number.NaN) : 0;
  const ran = reading.shownKm + rolled - before.shownKm;
  return ran >= 0 ? km(ran) : null;
}

/** Makes the days after `from`, up to `to`, add up to what the meter ran; harsh shares stay as they are. */
function fitToMeter(driven: Float64Array, counted: Float64Array, from: number, to: number, metered: Kilometres): void {
  if (from === to) {
    driven[to] = (driven[to] ?? 0) + metered;
    counted[to] = (counted[to] ?? 0) + metered;
    return;
  }
  let logged = 0;
  for (let day = from + 1; day <= to; day++) logged += driven[day] ?? 0;
  const scale = logged > metered ? metered / logged : 1;
  const unlogged = logged > metered ? 0 : (metered - logged) / (to - from);
  for (let day = from + 1; day <= to; day++) {
    driven[day] = (driven[day] ?? 0) * scale + unlogged;
    counted[day] = (counted[day] ?? 0) * scale + unlogged;
  }
}

/** Compared as text, which is the order of time, and counted only once. */
function daysSpanned(
  readings: readonly MeterReading[],
  trips: readonly Trip[],
): { first: number; last: number } | null {
  const starts = [trips[0]?.startedOn, readings[0]?.takenOn].filter((day) => day !== undefined);
  const first = earliest(starts);
  let last = readings.at(-1)?.takenOn ?? first;
  for (const trip of trips) if (last === null || trip.endedOn > last) last = trip.endedOn;
  return first === null || last === null ? null : { first: dayNumber(first), last: dayNumber(last) };
}

class DailyDistance implements DistanceTravelled {
  private readonly sums: Float64Array;
  readonly lastDay: number | null;
  readonly total: Kilometres;

  constructor(
    private readonly first: number,
    aDay: Float64Array,
    readonly known: boolean,
  ) {
    this.sums = new Float64Array(aDay.length);
    let sum = 0;
    for (let i = 0; i < aDay.length; i++) {
      sum += aDay[i] ?? 0;
      this.sums[i] = sum;
    }
    this.total = km(sum);
    this.lastDay = aDay.length === 0 ? null : first + aDay.length - 1;
  }

  upTo(day: number): Kilometres {
    const index = Math.min(day - this.first, this.sums.length - 1);
    return km(index < 0 ? 0 : (this.sums[index] ?? 0));
  }

  between(from: number, to: number): Kilometres {
    return km(this.upTo(to) - this.upTo(from));
  }

  dayReaching(from: number, distance: Kilometres): number | null {
    const target = this.upTo(from) + distance - NOISE_KM;
    if (this.lastDay === null || this.total < target) return null;
    let low = Math.max(from + 1 - this.first, 0);
    let high = this.sums.length - 1;
    if (low > high) return null;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.sums[middle] ?? 0) >= target) high = middle;
      else low = middle + 1;
    }
    return (this.sums[low] ?? 0) >= target ? this.first + low : null;
  }
}

/** A tenth of a millimetre: sums of fractions must not miss a limit that was reached exactly. */
const NOISE_KM = 1e-7;
