const MINUTE_MS = 60_000;

/**
 * Each wait is twice the one before, up to an hour: a server that asks to come back (greylisting) is met within
 * minutes, and one that is down is not hammered. RFC 5321, 4.5.4.1 asks for at least 30 minutes between later tries.
 */
const LONGEST_WAIT_MINUTES = 60;

/** With these waits about two days in all. Later a letter about coming days is no use; the row is shown as given up. */
const MOST_ATTEMPTS = 52;

/** When to try again after `attempts` failed ones; null when it is time to give up. */
export function nextAttempt(now: Date, attempts: number): Date | null {
  if (attempts >= MOST_ATTEMPTS) return null;
  const minutes = Math.min(2 ** (attempts - 1), LONGEST_WAIT_MINUTES);
  return new Date(now.getTime() + minutes * MINUTE_MS);
}
