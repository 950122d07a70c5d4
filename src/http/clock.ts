import { TZDate } from '@date-fns/tz';
import { type CivilDate, day } from '../rules/calendar/civil-date.js';

/** The one place that asks what time it is. Doors and jobs use it; everything below is handed the answer. */
export class Clock {
  now(): Date {
    return new Date();
  }

  /** The day it is now in a time zone of the IANA list, such as `America/Chicago`. */
  today(timeZone: string): CivilDate {
    return civilDateIn(timeZone, this.now());
  }
}

/** The day it is at an instant in a time zone. Throws RangeError for a zone the IANA list does not have. */
export function civilDateIn(timeZone: string, at: Date): CivilDate {
  const there = new TZDate(at.getTime(), timeZone);
  if (Number.isNaN(there.getFullYear())) throw new RangeError(`"${timeZone}" is no time zone of the IANA list`);
  const pad = (value: number, length: number) => String(value).padStart(length, '0');
  return day(`${pad(there.getFullYear(), 4)}-${pad(there.getMonth() + 1, 2)}-${pad(there.getDate(), 2)}`);
}
