import type { CivilDate } from '../calendar/civil-date.js';
import { daysAfter } from '../calendar/day-number.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { exceeds } from '../units/compare.js';
import type { Kilograms } from '../units/mass.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';

/** A payload less by no more than this is a rounding of two sidewalls, not a loss. One hundredth; our choice. */
const WORTH_TELLING = 0.01;

/**
 * Tires were fitted that leave less payload than the ones before: the trailer looks the same and carries less. Severity
 * `watch`; what is then loaded past them is `over-tire`. The lesser tire sets the group's limit: 49 CFR 393.75(g).
 * Says nothing while a tire before or after has no known rating, nor across a rebuild, which means to change payload.
 */
export function loweredFlags({ trailer }: Pick<FlagContext, 'trailer'>): readonly Flag[] {
  const nowKg = payloadByAllTires(trailer, trailer.asOf);
  if (nowKg === null) return [];
  for (const on of fittingDays(trailer)) {
    const before = daysAfter(on, -1);
    if (trailer.buildOn(before)?.id !== trailer.build?.id) return [];
    const beforeKg = payloadByAllTires(trailer, before);
    if (beforeKg === null || !exceeds(beforeKg * (1 - WORTH_TELLING), nowKg)) continue;
    const positions = trailer.tires.flatMap(({ fittedOn, position }) =>
      fittedOn === on && position !== null && position !== 'spare' ? [position] : [],
    );
    if (positions.length === 0) continue;
    return [
      {
        key: 'lowered',
        rule: 'lowered',
        severity: 'watch',
        since: on,
        evidence: { kind: 'lowered', on, positions: positions.sort(), beforeKg, nowKg },
        clears: [
          { kind: 'replace-tires', positions },
          { kind: 'correct', fact: 'part' },
        ],
      },
    ];
  }
  return [];
}

/** Days on which the tires now carrying were fitted, the latest first. */
function fittingDays({ tires }: TrailerOn): readonly CivilDate[] {
  const days = new Set<CivilDate>();
  for (const { fittedOn, position } of tires) if (fittedOn !== null && position !== 'spare') days.add(fittedOn);
  return [...days].sort().reverse();
}

/** Payload of a day, where every tire that carries had a rating; null where one had none, since a missing limit reads as more. */
function payloadByAllTires(trailer: TrailerOn, on: CivilDate): Kilograms | null {
  const lacks = trailer.limitsOn(on)?.ratingLacks ?? [];
  if (lacks.some((one) => one.stops === 'tire-check')) return null;
  return trailer.ratingsOn(on)?.payloadKg ?? null;
}
