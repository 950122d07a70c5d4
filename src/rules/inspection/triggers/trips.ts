import type { Trigger } from '../../facts/check.js';
import { type CheckSoFar, cannotSay, type Falls, fallsOn, NOT_DUE } from './falls.js';

/** Every N trips: good to the end of the Nth trip that started after the day it was done, booked jobs counted as trips to come. */
export function fallsByTrips(trigger: Extract<Trigger, { kind: 'trips' }>, { trailer, lastPass }: CheckSoFar): Falls {
  if (lastPass === null) return cannotSay('no-last-done');
  const since = trailer.trips.filter((trip) => trip.startedOn > lastPass.doneOn);
  const used = { kind: 'trips', used: since.length, limit: trigger.every } as const;
  const last = since[trigger.every - 1];
  if (last !== undefined) return fallsOn(last.endedOn, used);
  const logged = new Set(since.map((trip) => trip.jobId));
  const booked = trailer.jobs.filter((job) => !logged.has(job.id) && job.startsOn > lastPass.doneOn);
  const job = booked[trigger.every - since.length - 1];
  return job === undefined ? { ...NOT_DUE, used } : fallsOn(job.endsOn, used);
}
