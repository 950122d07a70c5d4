import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { dayFromNumber, dayNumber } from '../../../src/rules/calendar/day-number.js';
import type { Job, MeterReading, Trip } from '../../../src/rules/facts/use.js';
import { distanceToCome } from '../../../src/rules/forecast/distance-to-come.js';
import { distanceTravelled } from '../../../src/rules/forecast/distance-travelled.js';
import { useKnown } from '../../../src/rules/forecast/use-known.js';
import { type Kilometres, km, miles, toMiles } from '../../../src/rules/units/distance.js';
import { job, reading, trip } from '../sample-trailer.js';

function ahead(readings: MeterReading[], trips: Trip[], jobs: Job[], asOf: string, windowDays = 365) {
  const known = useKnown({ readings, trips, jobs, asOf: dayNumber(day(asOf)), inUseSince: null, windowDays });
  return distanceToCome(known, distanceTravelled(readings, trips));
}

function dayAt(toCome: ReturnType<typeof ahead>, distance: Kilometres): string | null {
  const reached = toCome.dayReaching(distance, toCome.from, 0.5);
  return reached === null ? null : dayFromNumber(reached.day);
}

// 12,400 mi on 1 March 2025, 14,290 on 20 June: the two meter cases U1 and U2, computed by hand for this project.
const READINGS = [reading('2025-03-01', 12_400), reading('2025-06-20', 14_290)];
const LEFT = miles(15_500 - 14_290);

describe('distance to come', () => {
  it('U1: 17.027 miles a day bring the meter to 15,500 on 31 August 2025', () => {
    const toCome = ahead(READINGS, [], [], '2025-06-20');
    expect(toMiles(km(toCome.kmPerDay ?? 0))).toBeCloseTo(17.027, 3);
    expect(dayAt(toCome, LEFT)).toBe('2025-08-31');
  });

  it('U2: 200 miles a day booked from 10 to 12 July bring it there on 29 July', () => {
    const booked = job('2025-07-10', { endsOn: day('2025-07-12'), distanceKm: miles(600) });
    expect(dayAt(ahead(READINGS, [], [booked], '2025-06-20'), LEFT)).toBe('2025-07-29');
  });

  it('says the same on a later day on which nobody has read the meter again', () => {
    expect(dayAt(ahead(READINGS, [], [], '2025-08-20'), LEFT)).toBe('2025-08-31');
  });

  it('names the booked job that crosses the limit on its way', () => {
    const booked = job('2025-07-10', { endsOn: day('2025-07-12'), distanceKm: miles(3_000) });
    const toCome = ahead(READINGS, [], [booked], '2025-06-20');
    const reached = toCome.dayReaching(LEFT, toCome.from, 0.5);
    expect(reached?.job?.id).toBe(booked.id);
  });

  it('leaves hauls that came from booked jobs out of the background, with their days', () => {
    const own = trip('2025-05-01', 90);
    const hired = trip('2025-05-10', 500, { jobId: 'job-x' });
    const toCome = ahead([], [own, hired, trip('2025-05-31', 0)], [], '2025-05-31', 31);
    expect(toMiles(km(toCome.kmPerDay ?? 0))).toBeCloseTo(90 / 30, 9);
  });

  it('does not book a job again that is already recorded as a trip', () => {
    const booked = job('2025-06-21', { distanceKm: miles(1_300) });
    const taken = trip('2025-06-21', 1_300, { jobId: booked.id });
    const toCome = ahead(READINGS, [taken], [booked], '2025-06-21');
    expect(toCome.dayReaching(miles(1), toCome.from, 0.5)?.job ?? null).toBeNull();
  });

  it('keeps the background on the days of a booked job whose miles nobody knows', () => {
    const booked = job('2025-07-10', { endsOn: day('2025-07-12') });
    expect(dayAt(ahead(READINGS, [], [booked], '2025-06-20'), LEFT)).toBe('2025-08-31');
  });

  it('lets the usual use fade while a trailer known by its trips stands still', () => {
    const trips = [trip('2025-01-10', 300), trip('2025-02-10', 300), trip('2025-03-10', 300)];
    const rates = ['2025-03-20', '2025-04-20', '2025-05-20', '2025-09-01', '2027-04-01'].map(
      (asOf) => ahead([], trips, [], asOf, 90).kmPerDay ?? -1,
    );
    expect(rates).toEqual(rates.toSorted((a, b) => b - a));
    expect(rates.at(-1)).toBe(0);
  });

  it('never arrives when nothing was driven for two years and nothing is booked', () => {
    expect(dayAt(ahead([], [trip('2022-01-10', 300)], [], '2025-06-20', 90), miles(10))).toBeNull();
  });
});
