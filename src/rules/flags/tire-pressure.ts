import { earliest } from '../calendar/civil-date.js';
import { order } from '../history/order.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';

/** A tire this far below what is wanted, as a share, is soft. Finer than that is the gauge and the morning's cold. Common practice, no source. */
const SOFT_SHARE = 0.05;

/**
 * Cold pressures last found below what the plate asks, or where the plate is silent, below the sidewall's pressure.
 * Severity `watch`: what a soft tire may still carry is held against each load (over-tire, and the fit of a job).
 * Source of the duty: 49 CFR 393.75(i)(1), cold pressure not below that for the load carried.
 */
export function tirePressureFlags({ trailer, pressures }: FlagContext): readonly Flag[] {
  const soft = [];
  for (const { position, tire } of trailer.tires) {
    const found = position === null ? undefined : pressures.get(position);
    const wantedKpa = trailer.build?.plate.coldPressureKpa ?? tire?.maxColdPressureKpa ?? null;
    if (found === undefined || wantedKpa === null || found.coldKpa >= wantedKpa * (1 - SOFT_SHARE)) continue;
    soft.push({ position: found.position, foundKpa: found.coldKpa, wantedKpa, on: found.on });
  }
  if (soft.length === 0) return [];
  soft.sort((a, b) => order(a.position, b.position));
  return [
    {
      key: 'tire-pressure',
      rule: 'tire-pressure',
      severity: 'watch',
      since: earliest(soft.map((tire) => tire.on)),
      evidence: {
        kind: 'tires-soft',
        tires: soft.map(({ on: _on, ...tire }) => tire),
      },
      clears: [{ kind: 'inflate-tires', positions: soft.map((tire) => tire.position) }],
    },
  ];
}
