import type { CivilDate } from '../calendar/civil-date.js';
import type { Part } from '../facts/part.js';
import { parseDateCode } from '../tire/date-code.js';
import { firstDayPastAge, type TireAge, tireAge } from '../tire/tire-age.js';
import { order } from './order.js';

/** A fitted tire by its date code. */
export interface AgedTire {
  readonly position: string;
  readonly dateCode: string;
  /** First day of the week it was made in; later than the day of asking for a code misread or not yet made. */
  readonly madeFrom: CivilDate;
  /** Null while the code says it is not made yet. */
  readonly age: Pick<TireAge, 'years' | 'months'> | null;
  /** First day past the yard's limit. */
  readonly pastFrom: CivilDate;
}

/** Tires whose date code can be read, spare included, by position. */
export function agedTires(tires: readonly Part[], asOf: CivilDate, limitYears: number): readonly AgedTire[] {
  const aged: AgedTire[] = [];
  for (const { position, tire } of tires) {
    const dateCode = tire?.dateCode ?? null;
    const code = dateCode === null ? null : parseDateCode(dateCode, null);
    if (dateCode === null || code === null || code.kind === 'refused') continue;
    const age = tireAge(dateCode, asOf);
    aged.push({
      position: position ?? '',
      dateCode,
      madeFrom: code.madeFrom,
      age: age === null ? null : { years: age.years, months: age.months },
      pastFrom: firstDayPastAge(code.madeFrom, limitYears),
    });
  }
  return aged.sort((a, b) => order(a.position, b.position) || order(a.dateCode, b.dateCode));
}
