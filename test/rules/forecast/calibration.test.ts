import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { dayNumber } from '../../../src/rules/calendar/day-number.js';
import type { Trip } from '../../../src/rules/facts/use.js';
import { distanceToCome } from '../../../src/rules/forecast/distance-to-come.js';
import { distanceTravelled } from '../../../src/rules/forecast/distance-travelled.js';
import { useKnown } from '../../../src/rules/forecast/use-known.js';
import { rareDemand } from '../../../src/rules/statistics/smoothing.js';
import { km, miles, toMiles } from '../../../src/rules/units/distance.js';
import { reading } from '../sample-trailer.js';
import { Chance } from './chance.js';
import { byMeter, byTrips, KINDS_OF_USE, type SimulatedTrailer, withJobs } from './simulated-yard.js';

/**
 * Whether the ranges of the due dates hold, on trailers whose use is known to the end because it is made up. Fixed seeds,
 * so the shares below are the same on every machine; a change of the rules moves them.
 */
const TRAILERS = 400;

interface Outcome {
  readonly inside: boolean;
  /** Days by which the median, average miles of the last 90 days and average miles of all days known were off. */
  readonly median: number;
  readonly recent: number;
  readonly average: number;
  /** The same by Croston's method, corrected; null with fewer than two hauls. */
  readonly croston: number | null;
}

/** Far misses count as two years at most, or a few of them would be the whole mean. */
const capped = (days: number) => Math.min(days, 730);

function outcomeOf(trailer: SimulatedTrailer, chance: Chance): Outcome | null {
  const { readings, trips, jobs, asOf, mi, firstDay } = trailer;
  const travelled = distanceTravelled(readings, trips);
  if (!travelled.known) return null;
  const toCome = distanceToCome(useKnown({ readings, trips, jobs, asOf, inUseSince: null, windowDays: 90 }), travelled);
  const aDay = mi.reduce((sum, one) => sum + one, 0) / mi.length;
  // Limits from days to most of a year ahead, near ones more common.
  const limit = aDay * (5 + 300 * chance.uniform() * chance.uniform());
  let left = limit;
  let on = toCome.from;
  while (left > 1e-9) {
    on++;
    const driven = mi[on - firstDay];
    if (driven === undefined) return null;
    left -= driven;
  }
  const at = (share: number) => toCome.dayReaching(miles(limit), toCome.from, share)?.day ?? Number.POSITIVE_INFINITY;
  const off = (guess: number) => Math.abs(capped(guess) - capped(on - toCome.from));
  const atRate = (from: number) => off(miles(limit) / (travelled.between(from, toCome.from) / (toCome.from - from)));
  const first = Math.min(
    ...readings.slice(0, 1).map(({ takenOn }) => dayNumber(takenOn)),
    ...trips.slice(0, 1).map(({ startedOn }) => dayNumber(startedOn) - 1),
  );
  return {
    inside: at(0.1) <= on && on <= at(0.9),
    median: off(at(0.5) - toCome.from),
    recent: atRate(Math.max(Math.min(first, toCome.from - 30), toCome.from - 90)),
    average: atRate(Math.min(first, toCome.from - 30)),
    croston: trips.length < 2 ? null : off(limit / crostonMiADay(trips)),
  };
}

/** Sizes and gaps smoothed apart with 0.1, as in the published case of it (`use-and-wear.test.ts`). */
function crostonMiADay(trips: readonly Trip[]): number {
  const days = trips.map(({ endedOn }) => dayNumber(endedOn));
  const gaps = days.slice(1).map((on, place) => on - (days[place] as number));
  return (
    rareDemand(
      trips.slice(1).map(({ distanceKm }) => toMiles(distanceKm ?? km(0))),
      gaps,
      0.1,
    )?.corrected ?? 0
  );
}

function simulate(seed: number, makeTrailer: (chance: Chance) => SimulatedTrailer): readonly Outcome[] {
  const chance = new Chance(seed);
  return Array.from({ length: TRAILERS }, () => outcomeOf(makeTrailer(chance), chance)).filter((one) => one !== null);
}

const ways = Object.entries(KINDS_OF_USE).flatMap(([name, kind]) => [
  [`${name}, each trip logged`, (chance: Chance) => byTrips(kind(chance), chance)] as const,
  [`${name}, by meter`, (chance: Chance) => byMeter(kind(chance), chance)] as const,
]);
const outcomes = new Map(
  [...ways, ['with jobs', withJobs] as const].map(([name, make], place) => [name, simulate(1_000 + place, make)]),
);

const share = (all: readonly Outcome[]) => (100 * all.filter(({ inside }) => inside).length) / all.length;
const mean = (all: readonly Outcome[], what: 'median' | 'recent' | 'average') =>
  all.reduce((sum, one) => sum + one[what], 0) / all.length;

describe('due ranges', () => {
  const all = [...outcomes.values()].flat();

  // 80 of 100 by their definition; ±4 is 6 standard errors of so many trailers, so what is left is the model's own fault.
  it('hold 80 of 100 limits between their 10 % and their 90 % date, over all kinds of use', () => {
    expect(share(all)).toBeGreaterThan(76);
    expect(share(all)).toBeLessThan(84);
  });

  // Worse and better kinds, as the docstring of `distanceToCome` tells them; two to three standard errors to each side.
  it.each([
    ['steady', 84, 94],
    ['weekend', 83, 93],
    ['bursts', 65, 77],
    ['rare', 72, 84],
    ['seasonal', 61, 73],
    ['changing', 74, 84],
    ['drifting', 70, 82],
    ['with jobs', 86, 96],
  ])('of %s use hold between %d and %d of 100', (kind, least, most) => {
    const ofKind = [...outcomes].filter(([name]) => name.startsWith(kind)).flatMap(([, found]) => found);
    expect(share(ofKind)).toBeGreaterThan(least);
    expect(share(ofKind)).toBeLessThan(most);
  });

  it('have a median nearer the truth than average miles, of the last 90 days by a quarter and of all days known', () => {
    expect(mean(all, 'median')).toBeLessThan(0.75 * mean(all, 'recent'));
    expect(mean(all, 'median')).toBeLessThan(mean(all, 'average'));
  });

  it('of rare use have a median nearer the truth than the method made for it', () => {
    const rare = (outcomes.get('rare, each trip logged') ?? []).filter(({ croston }) => croston !== null);
    const byCroston = rare.reduce((sum, { croston }) => sum + (croston ?? 0), 0) / rare.length;
    expect(mean(rare, 'median')).toBeLessThan(byCroston);
  });

  it('narrow as the limit nears', () => {
    const readings = [reading('2025-01-01', 0), reading('2025-02-03', 700), reading('2025-03-20', 1_250)];
    const width = (left: number) => {
      const travelled = distanceTravelled(readings, []);
      const asOf = dayNumber(day('2025-03-20'));
      const toCome = distanceToCome(
        useKnown({ readings, trips: [], jobs: [], asOf, inUseSince: null, windowDays: 90 }),
        travelled,
      );
      const at = (chance: number) => toCome.dayReaching(miles(left), asOf, chance)?.day ?? Number.NaN;
      return at(0.9) - at(0.1);
    };
    const widths = [2_000, 1_000, 500, 250, 100].map(width);
    expect(widths).toEqual(widths.toSorted((a, b) => b - a));
    expect(widths[4]).toBeLessThan((widths[0] as number) / 4);
  });
});
