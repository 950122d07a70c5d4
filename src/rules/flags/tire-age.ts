import { earliest } from '../calendar/civil-date.js';
import type { AgedTire } from '../history/tire-ages.js';
import type { TrailerOn } from '../history/trailer-on.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';

export function tiresPastAge(trailer: TrailerOn): readonly AgedTire[] {
  return trailer.agedTires.filter((tire) => tire.age !== null && tire.pastFrom <= trailer.asOf);
}

/**
 * Tires past the yard's age limit, whatever their tread. The limit is the yard's own policy, no law: 49 CFR has none.
 * Severity `limit` when a tire that carries is past it, `watch` when only the spare is.
 */
export function tireAgeFlags({ trailer }: FlagContext): readonly Flag[] {
  const past = tiresPastAge(trailer);
  if (past.length === 0) return [];
  return [
    {
      key: 'tire-age',
      rule: 'tire-age',
      severity: past.some((tire) => tire.position !== 'spare') ? 'limit' : 'watch',
      since: earliest(past.map((tire) => tire.pastFrom)),
      evidence: {
        kind: 'tires-past-age',
        limitYears: trailer.facts.policy.tireAgeLimitYears,
        tires: past.flatMap(({ position, dateCode, madeFrom, age }) =>
          age === null ? [] : [{ position, dateCode, madeFrom, ...age }],
        ),
      },
      clears: [{ kind: 'replace-tires', positions: past.map((tire) => tire.position) }],
    },
  ];
}
