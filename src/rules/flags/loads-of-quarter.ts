import type { CivilDate } from '../calendar/civil-date.js';
import { dayNumber, daysAfter } from '../calendar/day-number.js';
import type { Trip } from '../facts/use.js';
import { type DamagedPart, loadFactor } from '../fatigue/trip-damage.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { type Kilograms, kg } from '../units/mass.js';
import { RECENT_DAYS } from './flag-context.js';

/** A trip whose load is known, against the payload of the build of its day. */
export interface LoadedTrip {
  readonly trip: Trip;
  /** Cargo over payload. */
  readonly share: number;
  readonly cargoKg: Kilograms;
  readonly grossKg: Kilograms;
  readonly payloadKg: Kilograms;
}

/**
 * The loads by which a trailer's use is judged, in the order of time: those of the quarter that ends with the latest of
 * them, and in any case the last `least`. It ends with a trip and not with today, so that standing still neither mends
 * nor worsens anything.
 */
export function loadsOfQuarter(trailer: TrailerOn, least: number): readonly LoadedTrip[] {
  const loads: LoadedTrip[] = [];
  let from: CivilDate | null = null;
  for (let i = trailer.trips.length - 1; i >= 0; i--) {
    const trip = trailer.trips[i] as Trip;
    if (from !== null && trip.startedOn < from && loads.length >= least) break;
    const loaded = loadOf(trip, trailer);
    if (loaded === null) continue;
    from ??= daysAfter(trip.startedOn, -RECENT_DAYS);
    loads.push(loaded);
  }
  return loads.reverse();
}

function loadOf(trip: Trip, trailer: TrailerOn): LoadedTrip | null {
  const payloadKg = trailer.ratingsOn(trip.startedOn)?.payloadKg ?? null;
  if (payloadKg === null || payloadKg <= 0) return null;
  const check = trailer.judge(trip);
  if (check === null || check.cargoKg === null || check.grossKg === null) return null;
  const { cargoKg, grossKg } = check;
  return { trip, share: cargoKg / payloadKg, cargoKg, grossKg, payloadKg };
}

/** The share that nine loads in ten keep below, between neighbours in proportion (Hyndman and Fan, type 7). At least one load. */
export function ninetiethShare(loads: readonly LoadedTrip[]): number {
  const shares = loads.map((one) => one.share).sort((a, b) => a - b);
  const at = 0.9 * (shares.length - 1);
  const below = shares[Math.floor(at)] as number;
  const above = shares[Math.ceil(at)] as number;
  return below + (at - Math.floor(at)) * (above - below);
}

export interface LoadTrend {
  /** Change of the share of payload in 30 days. */
  readonly shareAMonth: number;
  /** More than two standard errors from level; with less it may be chance. Common practice. */
  readonly isClear: boolean;
}

/** Fewer loads than this show no trend. Our choice. */
const LEAST_FOR_TREND = 6;

/** Least squares of share over days. Null for too few loads, or all on one day. */
export function loadTrend(loads: readonly LoadedTrip[]): LoadTrend | null {
  const count = loads.length;
  if (count < LEAST_FOR_TREND) return null;
  const days = loads.map((one) => dayNumber(one.trip.startedOn));
  const meanDay = days.reduce((sum, day) => sum + day, 0) / count;
  const meanShare = loads.reduce((sum, one) => sum + one.share, 0) / count;
  let spread = 0;
  let together = 0;
  for (const [i, one] of loads.entries()) {
    const away = (days[i] as number) - meanDay;
    spread += away * away;
    together += away * (one.share - meanShare);
  }
  if (spread === 0) return null;
  const slope = together / spread;
  let left = 0;
  for (const [i, one] of loads.entries()) {
    left += (one.share - meanShare - slope * ((days[i] as number) - meanDay)) ** 2;
  }
  const error = Math.sqrt(left / (count - 2) / spread);
  return { shareAMonth: slope * 30, isClear: Math.abs(slope) > 2 * error };
}

/** How fast a part is used up by these loads. 1: as fast as by the same miles at the load its class is meant for. */
export interface PartDamage {
  readonly part: Exclude<DamagedPart, 'road'>;
  readonly onThis: number;
  /** The same loads on a trailer of the class they look like; null where that class is not known. */
  readonly onNext: number | null;
}

/**
 * Damage of these loads over that of the same miles, each at `usualShare` of the payload, by each part's exponent.
 * Of the other class only the rated gross is known, so its empty mass is taken to be in the same proportion to it.
 * Null while no trip has a distance. Ranks use against use; no life follows from it.
 */
export function damageOf(
  loads: readonly LoadedTrip[],
  usualShare: number,
  nextGrossKg: Kilograms | null,
): readonly PartDamage[] | null {
  if (!loads.some((one) => (one.trip.distanceKm ?? 0) > 0)) return null;
  return (['bearing', 'weld', 'spring'] as const).map((part) => ({
    part,
    onThis: damageRatio(loads, usualShare, part, null),
    onNext: nextGrossKg === null ? null : damageRatio(loads, usualShare, part, nextGrossKg),
  }));
}

function damageRatio(
  loads: readonly LoadedTrip[],
  usualShare: number,
  part: DamagedPart,
  nextGrossKg: Kilograms | null,
): number {
  let done = 0;
  let driven = 0;
  for (const { trip, cargoKg, grossKg, payloadKg } of loads) {
    const distance = trip.distanceKm ?? 0;
    const emptyKg = grossKg - cargoKg;
    const ownGrossKg = emptyKg + payloadKg;
    const usualKg = kg((emptyKg + usualShare * payloadKg) * (nextGrossKg === null ? 1 : nextGrossKg / ownGrossKg));
    done += distance * loadFactor(grossKg, usualKg, part);
    driven += distance;
  }
  return done / driven;
}
