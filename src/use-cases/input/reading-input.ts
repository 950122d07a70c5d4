import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { PLAUSIBLE_USE } from '../../rules/facts/plausible.js';
import type { MeterReading } from '../../rules/facts/use.js';
import type { Given } from './given.js';
import type { Incoming } from './incoming.js';

export type ReadingInput = Incoming<Omit<MeterReading, 'id' | 'kind'> & { kind: MeterReading['kind'] | null }>;

const READING_KINDS = ['read', 'rolled-over', 'replaced'] as const satisfies readonly MeterReading['kind'][];

/** What the meter showed on one day. An ordinary reading unless said otherwise. */
export function readReading(given: Given, today: CivilDate): Omit<MeterReading, 'id'> {
  const takenOn = given.needDate('takenOn', 'the day of the reading', { notAfter: today, notAfterIs: 'today' });
  const shownKm = given.needNumber('shownKm', PLAUSIBLE_USE.shown);
  const kind = given.choice('kind', 'what kind of reading this is', READING_KINDS) ?? 'read';
  const meterSpanKm = given.number('meterSpanKm', PLAUSIBLE_USE.meterSpan);
  if (kind === 'rolled-over' && meterSpanKm === null && !given.has('meterSpanKm')) {
    given.refuse('meterSpanKm', 'Enter the distance at which this meter starts again from zero.');
  }
  if (kind !== 'rolled-over' && meterSpanKm !== null) {
    given.refuse('meterSpanKm', 'Leave this out, or say that the meter rolled over.');
  }
  if (kind === 'rolled-over' && meterSpanKm !== null && shownKm >= meterSpanKm) {
    given.refuse('shownKm', 'Enter a reading below the distance at which this meter starts again from zero.');
  }
  return { takenOn, shownKm, kind, meterSpanKm };
}
