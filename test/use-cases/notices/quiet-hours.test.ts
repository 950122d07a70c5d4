import { describe, expect, test } from 'vitest';
import { nextAttempt } from '../../../src/use-cases/notices/next-attempt.js';
import { afterQuietHours, type QuietHours } from '../../../src/use-cases/notices/quiet-hours.js';

const NIGHT = { quietFromHour: 20, quietToHour: 6 };

/** Both instants with the offset their yard's clock showed, so that a reader can check the hour by eye. */
function expectHeldUntil(quiet: QuietHours, at: string, until: string): void {
  expect(afterQuietHours(new Date(at), quiet).toISOString()).toBe(new Date(until).toISOString());
}

describe('a mail of the evening waits for the morning', () => {
  const chicago = { ...NIGHT, timeZone: 'America/Chicago' };

  test('nothing waits by day, to the minute', () => {
    expectHeldUntil(chicago, '2025-05-12T06:00:00-05:00', '2025-05-12T06:00:00-05:00');
    expectHeldUntil(chicago, '2025-05-12T19:59:59-05:00', '2025-05-12T19:59:59-05:00');
  });

  test('from the evening on it waits, past midnight too', () => {
    expectHeldUntil(chicago, '2025-05-12T20:00:00-05:00', '2025-05-13T06:00:00-05:00');
    expectHeldUntil(chicago, '2025-05-13T00:30:00-05:00', '2025-05-13T06:00:00-05:00');
    expectHeldUntil(chicago, '2025-05-13T05:59:59-05:00', '2025-05-13T06:00:00-05:00');
  });

  test('the night the clock goes forward is an hour shorter', () => {
    expectHeldUntil(chicago, '2025-03-08T22:00:00-06:00', '2025-03-09T06:00:00-05:00');
  });

  test('the night the clock goes back is an hour longer', () => {
    expectHeldUntil(chicago, '2025-11-01T22:00:00-05:00', '2025-11-02T06:00:00-06:00');
  });
});

test('quiet that ends in an hour the clock skips ends when the clock goes on', () => {
  const newYork = { timeZone: 'America/New_York', quietFromHour: 20, quietToHour: 2 };
  expectHeldUntil(newYork, '2026-03-08T01:59:00-05:00', '2026-03-08T03:00:00-04:00');
});

test('quiet that ends in an hour that comes twice ends at its first coming, in every zone', () => {
  expectHeldUntil(
    { timeZone: 'America/New_York', quietFromHour: 20, quietToHour: 1 },
    '2026-11-01T00:30:00-04:00',
    '2026-11-01T01:00:00-04:00',
  );
  expectHeldUntil(
    { timeZone: 'Europe/Warsaw', quietFromHour: 20, quietToHour: 2 },
    '2026-10-25T01:30:00+02:00',
    '2026-10-25T02:00:00+02:00',
  );
});

test('zones that are half or three quarters of an hour off keep their own hour', () => {
  expectHeldUntil({ ...NIGHT, timeZone: 'Asia/Kathmandu' }, '2025-05-12T23:10:00+05:45', '2025-05-13T06:00:00+05:45');
  expectHeldUntil(
    { ...NIGHT, timeZone: 'Australia/Lord_Howe' },
    '2025-10-04T23:10:00+10:30',
    '2025-10-05T06:00:00+11:00',
  );
});

test('quiet by day, and none at all', () => {
  const noon = { timeZone: 'America/Chicago', quietFromHour: 12, quietToHour: 13 };
  expectHeldUntil(noon, '2025-05-12T12:20:00-05:00', '2025-05-12T13:00:00-05:00');
  expectHeldUntil(noon, '2025-05-12T13:00:00-05:00', '2025-05-12T13:00:00-05:00');
  const never = { timeZone: 'America/Chicago', quietFromHour: 0, quietToHour: 0 };
  expectHeldUntil(never, '2025-05-12T00:20:00-05:00', '2025-05-12T00:20:00-05:00');
});

test('waits between attempts double up to an hour, and end after about two days', () => {
  const start = new Date('2025-05-12T11:00:00Z');
  const waits: number[] = [];
  let at: Date | null = start;
  for (let failed = 1; at !== null; failed += 1) {
    const next: Date | null = nextAttempt(at, failed);
    if (next !== null) waits.push((next.getTime() - at.getTime()) / 60_000);
    at = next;
  }
  expect(waits.slice(0, 8)).toEqual([1, 2, 4, 8, 16, 32, 60, 60]);
  expect(Math.max(...waits)).toBe(60);
  const hours = waits.reduce((sum, wait) => sum + wait, 0) / 60;
  expect(hours).toBeGreaterThan(40);
  expect(hours).toBeLessThan(50);
});
