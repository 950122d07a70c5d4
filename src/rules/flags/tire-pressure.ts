import { earliest } from '../calendar/civil-date.js';
import type { TireMarks } from '../facts/part.js';
import { order } from '../history/order.js';
import type { TrailerOn } from '../history/trailer-on.js';
import type { FoundPressure } from '../inspection/cold-pressures.js';
import { tireCapacity } from '../tire/tire-capacity.js';
import { mountingAt } from '../trailer/wheel-positions.js';
import { exceeds } from '../units/compare.js';
import { massHeldUpBy } from '../units/force.js';
import type { Kilograms } from '../units/mass.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';

/** A tire this far below what is wanted, as a share, is soft. Finer than that is the gauge and the morning's cold. Common practice, no source. */
const SOFT_SHARE = 0.05;

/**
 * Cold pressures last found below what the plate asks, or where the plate is silent, below the sidewall's pressure.
 * `limit` when a trip since has put more on such a tire than the published row carries at the pressure found: 49 CFR
 * 393.75(i)(1), cold pressure not below that for the load carried. `watch` otherwise: what a soft tire may still carry
 * is held against each load to come by the fit of its job. Clears when a check finds the pressure wanted.
 */
export function tirePressureFlags({ trailer, pressures }: FlagContext): readonly Flag[] {
  const soft = [];
  for (const { position, tire } of trailer.tires) {
    const found = position === null ? undefined : pressures.get(position);
    const wantedKpa = trailer.build?.plate.coldPressureKpa ?? tire?.maxColdPressureKpa ?? null;
    if (found === undefined || wantedKpa === null || found.coldKpa >= wantedKpa * (1 - SOFT_SHARE)) continue;
    const carriesKg = tire === null ? null : carriesAt(tire, found, trailer);
    const carriedKg = heaviestSince(found, trailer);
    soft.push({ position: found.position, foundKpa: found.coldKpa, wantedKpa, carriesKg, carriedKg, on: found.on });
  }
  if (soft.length === 0) return [];
  soft.sort((a, b) => order(a.position, b.position));
  const overloaded = soft.some(
    ({ carriesKg, carriedKg }) => carriesKg !== null && carriedKg !== null && exceeds(carriedKg, carriesKg),
  );
  return [
    {
      key: 'tire-pressure',
      rule: 'tire-pressure',
      severity: overloaded ? 'limit' : 'watch',
      since: earliest(soft.map((tire) => tire.on)),
      evidence: {
        kind: 'tires-soft',
        tires: soft.map(({ on: _on, ...tire }) => tire),
      },
      clears: [{ kind: 'inflate-tires', positions: soft.map((tire) => tire.position) }],
    },
  ];
}

function carriesAt(tire: TireMarks, { position, coldKpa }: FoundPressure, { build }: TrailerOn): Kilograms | null {
  const mounting = build === null ? null : mountingAt(position, build);
  const capacity = mounting === null ? null : tireCapacity(tire, mounting, coldKpa);
  return capacity?.kind === 'known' ? capacity.massKg : null;
}

/** The most any trip has put on a wheel since its pressure was found; a load known only as a bound or a range does not count. */
function heaviestSince({ position, on }: FoundPressure, trailer: TrailerOn): Kilograms | null {
  let most: Kilograms | null = null;
  for (let i = trailer.trips.length - 1; i >= 0; i--) {
    const trip = trailer.trips[i];
    if (trip === undefined || trip.startedOn < on) break;
    const check = trailer.judge(trip);
    if (check?.method !== 'scale' && check?.method !== 'statics') continue;
    const wheel = check.comparisons.find(({ limit }) => limit.kind === 'tire' && limit.subject === position);
    const carriedKg = wheel === undefined ? null : massHeldUpBy(wheel.loadN);
    if (carriedKg !== null && (most === null || carriedKg > most)) most = carriedKg;
  }
  return most;
}
