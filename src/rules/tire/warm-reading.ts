import { exceeds } from '../units/compare.js';
import { type Kilograms, lb } from '../units/mass.js';
import { type Kilopascals, kPa, psi } from '../units/pressure.js';
import { type KilometresPerHour, mph } from '../units/speed.js';

/**
 * What running adds at least to a tire's pressure, after an hour at 41 to 55 mph.
 * Source: 49 CFR 393.75(i)(2), Table 1; numbers as in a public copy of the 2005 edition, where it is paragraph (h).
 */
const BUILD_UP = {
  upToKg: lb(4_000),
  lighterKpa: psi(5),
  heavierKpa: psi(15),
  fromSpeed: mph(41),
  toSpeed: mph(55),
} as const;

/**
 * What a tire read warm has cold, at most. There is no such thing as too much in it: a tire that reads above its cold
 * pressure because it ran is as it should be, and letting air out of it would leave it soft when it cools.
 */
export interface WarmReading {
  readonly coldAtMostKpa: Kilopascals;
  readonly takenOffKpa: Kilopascals;
  /** `table`: the regulation's row for this speed. `beyond-table`: faster than its row, so at least that much is off. `none`: too slow, or speed unknown: nothing may be taken off for certain. */
  readonly basis: 'table' | 'beyond-table' | 'none';
}

/**
 * The cold pressure behind a warm reading. `averageSpeed` is that of the last hour; null when nobody said.
 * The table gives the least that running adds, so the cold pressure is this or lower.
 */
export function coldFromWarm(
  measuredKpa: Kilopascals,
  tireRatedKg: Kilograms,
  averageSpeed: KilometresPerHour | null,
): WarmReading {
  if (averageSpeed === null || exceeds(BUILD_UP.fromSpeed, averageSpeed)) {
    return { coldAtMostKpa: measuredKpa, takenOffKpa: kPa(0), basis: 'none' };
  }
  const takenOffKpa = exceeds(tireRatedKg, BUILD_UP.upToKg) ? BUILD_UP.heavierKpa : BUILD_UP.lighterKpa;
  return {
    coldAtMostKpa: kPa(Math.max(0, measuredKpa - takenOffKpa)),
    takenOffKpa,
    basis: exceeds(averageSpeed, BUILD_UP.toSpeed) ? 'beyond-table' : 'table',
  };
}

/**
 * What a warm reading says for certain. `soft`: even what is left cold at most is less than the load needs. Otherwise
 * nothing: only a cold reading (parked three hours) shows that a tire is full, and none shows that a warm one is overfull.
 */
export function warmVerdict(reading: WarmReading, neededColdKpa: Kilopascals): 'soft' | 'read-it-cold' {
  return exceeds(neededColdKpa, reading.coldAtMostKpa) ? 'soft' : 'read-it-cold';
}
