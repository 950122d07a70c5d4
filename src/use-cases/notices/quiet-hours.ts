import { TZDate } from '@date-fns/tz';

/** When a yard's people are left alone. Hours of the yard's own clock, 0 to 23; the same hour twice means never. */
export interface QuietHours {
  readonly timeZone: string;
  readonly quietFromHour: number;
  readonly quietToHour: number;
}

/** Clocks of every zone in use differ from UTC by whole quarters of an hour, so an hour begins only on one of these. */
const QUARTER_MS = 15 * 60_000;

/**
 * The first instant from `now` on at which a mail may go out: `now` itself, or the end of the quiet hours it falls in.
 *
 * Walks on by quarters of an hour and reads the yard's clock at each. Asking a library for "6 o'clock on that day"
 * would be shorter, but on the day the clock goes back an hour comes twice, and it answers with the first in one zone
 * and with the second in another; where the clock goes forward, the hour asked for may not come at all.
 */
export function afterQuietHours(now: Date, quiet: QuietHours): Date {
  if (!isQuiet(now.getTime(), quiet)) return now;
  let at = Math.ceil(now.getTime() / QUARTER_MS) * QUARTER_MS;
  while (isQuiet(at, quiet)) at += QUARTER_MS;
  return new Date(at);
}

function isQuiet(at: number, { timeZone, quietFromHour: from, quietToHour: to }: QuietHours): boolean {
  const hour = new TZDate(at, timeZone).getHours();
  return from <= to ? hour >= from && hour < to : hour >= from || hour < to;
}
