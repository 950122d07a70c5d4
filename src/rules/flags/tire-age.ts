import type { CivilDate } from '../calendar/civil-date.js';
import { earliest } from '../calendar/civil-date.js';
import { order, type TrailerOn } from '../history/trailer-on.js';
import { firstDayPastAge, tireAge } from '../tire/tire-age.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';

export interface AgedTire {
  readonly position: string;
  readonly dateCode: string;
  readonly madeFrom: CivilDate;
  readonly years: number;
  readonly months: number;
  /** First day past the yard's limit. */
  readonly pastFrom: CivilDate;
}

/** Tires whose date code can be read, by position, spare included, each with the day it is or was past the limit. */
export function agedTires(trailer: TrailerOn): readonly AgedTire[] {
  const limitYears = trailer.facts.policy.tireAgeLimitYears;
  const aged: AgedTire[] = [];
  for (const { position, tire } of trailer.tires) {
    const dateCode = tire?.dateCode ?? null;
    const age = dateCode === null ? null : tireAge(dateCode, trailer.asOf);
    if (dateCode === null || age === null) continue;
    aged.push({ position: position ?? '', dateCode, ...age, pastFrom: firstDayPastAge(age.madeFrom, limitYears) });
  }
  return aged.sort((a, b) => order(a.position, b.position) || order(a.dateCode, b.dateCode));
}

export function tiresPastAge(trailer: TrailerOn): readonly AgedTire[] {
  return agedTires(trailer).filter((tire) => tire.pastFrom <= trailer.asOf);
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
        tires: past.map(({ pastFrom: _pastFrom, ...tire }) => tire),
      },
    },
  ];
}
