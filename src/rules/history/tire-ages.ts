import type { CivilDate } from '../calendar/civil-date.js';
import type { Part } from '../facts/part.js';
import { parseDateCode } from '../tire/date-code.js';
import { ageSince, firstDayPastAge, type TireAge } from '../tire/tire-age.js';
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

/** Tires whose date code can be read, spare included, by position. A set mostly shares one code, so each is read once. */
export function agedTires(tires: readonly Part[], asOf: CivilDate, limitYears: number): readonly AgedTire[] {
  const read = new Map<string, Omit<AgedTire, 'position'> | null>();
  const aged: AgedTire[] = [];
  for (const { position, tire } of tires) {
    const dateCode = tire?.dateCode ?? null;
    if (dateCode === null) continue;
    const known = read.get(dateCode);
    const code = known === undefined ? agedBy(dateCode, asOf, limitYears) : known;
    read.set(dateCode, code);
    if (code !== null) aged.push({ position: position ?? '', ...code });
  }
  return aged.sort((a, b) => order(a.position, b.position) || order(a.dateCode, b.dateCode));
}

function agedBy(dateCode: string, asOf: CivilDate, limitYears: number): Omit<AgedTire, 'position'> | null {
  const code = parseDateCode(dateCode, null);
  if (code.kind === 'refused') return null;
  const age = code.madeFrom > asOf ? null : ageSince(code.madeFrom, asOf);
  return {
    dateCode,
    madeFrom: code.madeFrom,
    age: age === null ? null : { years: age.years, months: age.months },
    pastFrom: firstDayPastAge(code.madeFrom, limitYears),
  };
}
