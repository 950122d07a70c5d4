/** Whether this machine's calendar knows a zone of that name, such as `America/Chicago`. */
export function isTimeZone(name: string): boolean {
  // An offset such as +05:00 is understood too, but knows no daylight saving.
  if (!/^[A-Za-z]/.test(name)) return false;
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}
