import { daysBetween } from '../../rules/calendar/civil-date.js';
import { MOST_KM_A_DAY } from '../../rules/facts/plausible.js';
import type { MeterReading } from '../../rules/facts/use.js';
import { meteredKm } from '../../rules/forecast/distance-travelled.js';
import { byTaken } from '../../rules/history/trailer-on.js';
import { toMiles } from '../../rules/units/distance.js';

/** Why a reading cannot stand between those before and after it, and what would mend that; null when it can. */
export function meterOrderProblem(reading: MeterReading, others: readonly MeterReading[]): string | null {
  const inOrder = [...others, reading].sort(byTaken);
  const place = inOrder.indexOf(reading);
  const before = inOrder[place - 1] ?? null;
  const after = inOrder[place + 1] ?? null;
  if (before === null && reading.kind === 'rolled-over') {
    return 'Nothing was read before it, so nothing rolled over: enter it as an ordinary reading.';
  }
  if (before !== null && reading.kind !== 'replaced') {
    if (meteredKm(before, reading) === null) {
      return `On ${before.takenOn} it showed ${shown(before)}, which is more. Read it again; or say that the meter rolled over or was replaced; or correct that reading.`;
    }
    if (tooFar(before, reading)) {
      return `That is farther than any trailer goes since ${before.takenOn}, when it showed ${shown(before)}. Read it again; or say that the meter was replaced; or correct that reading.`;
    }
  }
  if (after !== null && after.kind !== 'replaced' && (meteredKm(reading, after) === null || tooFar(reading, after))) {
    return `It does not fit the reading of ${after.takenOn}, which showed ${shown(after)}. Read it again, or correct that reading first.`;
  }
  return null;
}

function tooFar(before: MeterReading, after: MeterReading): boolean {
  const ran = meteredKm(before, after);
  return ran !== null && ran > MOST_KM_A_DAY * (daysBetween(before.takenOn, after.takenOn) + 1);
}

function shown(reading: MeterReading): string {
  const miles = toMiles(reading.shownKm);
  return `${Math.round(miles).toLocaleString('en-US')} mi (${Math.round(reading.shownKm).toLocaleString('en-US')} km)`;
}
