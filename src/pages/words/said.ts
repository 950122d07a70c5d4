/** What was just done, told once on the page a form leads to. The address carries only the key. */
const SAID: Readonly<Record<string, string>> = {
  'trailer-added': 'The trailer is on file. What is still unknown is listed below.',
  'papers-changed': 'The papers are changed.',
  'build-changed': 'The build sheet is changed. Trips before its day keep the build they had.',
  'part-fitted': 'The part is on. What was in its place came off that day.',
  'part-removed': 'The part is off.',
  'trip-recorded': 'The trip is recorded and the trailer was worked out again.',
  'trip-corrected': 'The trip is corrected. The mistaken one stays in the history.',
  'trip-withdrawn': 'The trip is taken back. It stays in the history, struck out.',
  'reading-recorded': 'The meter reading is recorded.',
  'reading-corrected': 'The meter reading is corrected.',
  'check-passed': 'The check is recorded.',
  'check-failed': 'The check is recorded as failed.',
  'check-held': 'The check failed on a line that keeps people safe. The trailer is on hold.',
  'check-withdrawn': 'The check is taken back.',
  'hold-opened': 'The trailer is on hold. It must not go out.',
  'hold-lifted': 'The hold is lifted.',
  gone: 'Noted. Its history stays; reminders for it stop.',
  'job-booked': 'The job is booked.',
  'job-changed': 'The job is changed.',
  'job-cancelled': 'The job is cancelled. Its miles are no longer counted on.',
  'job-done': 'The job is done and recorded as a trip.',
  'machine-added': 'The machine is on file.',
  'machine-changed': 'The machine is changed. Trailers that carry it were worked out again.',
  'machine-replaced': 'The new machine took over. Trailers that carried the old one are judged by the new.',
  'tow-vehicle-added': 'The tow vehicle is on file.',
  'tow-vehicle-changed': 'The tow vehicle is changed.',
  'yard-saved': 'The yard settings are saved.',
  'check-kind-saved': 'The check is saved. Every trailer it applies to was worked out again.',
  'check-kind-retired': 'The check is retired. Its records stay.',
  'answer-kept': 'Your answer is kept. It holds for everybody.',
  'notice-again': 'The notice waits to be sent again.',
};

export function saidWords(key: string | null): string | null {
  return key === null ? null : (SAID[key] ?? null);
}
