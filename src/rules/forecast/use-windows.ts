import { dayNumber } from '../calendar/day-number.js';
import type { MeterReading, Trip } from '../facts/use.js';
import { tripDays } from './trip-days.js';
import type { UseWindow } from './use-rate.js';

/** Stretches of days back from the last day known, as their edges, newest first. */
export type Edges = readonly number[];

/** Four weeks, so that every window has the same weekends. Our choice. */
const WINDOW_DAYS = 28;

/** Readings closer together than this share a window: a reading before and after one haul tells of no habit. Our choice. */
const LEAST_METER_DAYS = 7;

/** Windows of four weeks from `to` back to `start`; what is left over is a window of its own, or joins if short. */
export function evenEdges(to: number, start: number): Edges {
  const edges = [to];
  for (let edge = to - WINDOW_DAYS; edge >= start; edge -= WINDOW_DAYS) edges.push(edge);
  const oldest = edges.at(-1) as number;
  if (oldest > start) {
    if (edges.length > 1 && oldest - start < WINDOW_DAYS / 2) edges[edges.length - 1] = start;
    else edges.push(start);
  }
  return edges;
}

/** Windows between meter readings: what a meter ran between two of them is known, how it spread over the days is not. */
export function meterEdges(readings: readonly MeterReading[], to: number, start: number): Edges {
  const edges = [to];
  for (let i = readings.length - 1; i >= 0; i--) {
    const on = dayNumber((readings[i] as MeterReading).takenOn);
    if (on < start) break;
    if ((edges.at(-1) as number) - on >= LEAST_METER_DAYS) edges.push(on);
  }
  if (edges.length === 1) edges.push(start);
  return edges;
}

/**
 * Use in each window, newest first, without those of the trips that came from booked jobs and without their days.
 * `used` says how much was used on the days after the first day given, up to the second.
 */
export function backgroundWindows(
  edges: Edges,
  trips: readonly Trip[],
  used: (after: number, upTo: number) => number,
): readonly UseWindow[] {
  const newest = edges[0] as number;
  const amounts: number[] = [];
  const days: number[] = [];
  for (let i = 1; i < edges.length; i++) {
    amounts.push(used(edges[i] as number, edges[i - 1] as number));
    days.push((edges[i - 1] as number) - (edges[i] as number));
  }
  takeOutBooked(trips, edges, amounts, days, used);
  const windows: UseWindow[] = [];
  for (let i = 0; i < amounts.length; i++) {
    const left = days[i] as number;
    if (left <= 0) continue;
    const middle = ((edges[i] as number) + (edges[i + 1] as number)) / 2;
    windows.push({ amount: Math.max(0, amounts[i] as number), days: left, ago: newest - middle });
  }
  return windows;
}

function takeOutBooked(
  trips: readonly Trip[],
  edges: Edges,
  amounts: number[],
  days: number[],
  used: (after: number, upTo: number) => number,
): void {
  const { first, last } = tripDays(trips);
  const oldest = edges.at(-1) as number;
  for (let trip = 0; trip < trips.length; trip++) {
    const end = last[trip] as number;
    if ((trips[trip] as Trip).jobId === null || end <= oldest) continue;
    const start = (first[trip] as number) - 1;
    for (let i = windowOf(end, edges); i < edges.length && (edges[i - 1] as number) > start; i++) {
      const after = Math.max(start, edges[i] as number);
      const upTo = Math.min(end, edges[i - 1] as number);
      amounts[i - 1] = (amounts[i - 1] as number) - used(after, upTo);
      days[i - 1] = (days[i - 1] as number) - (upTo - after);
    }
  }
}

/** The first place `i`, counted from the newest, whose window, edges i to i − 1, reaches back before this day. */
function windowOf(day: number, edges: Edges): number {
  let low = 1;
  let high = edges.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((edges[middle] as number) < day) high = middle;
    else low = middle + 1;
  }
  return low;
}
