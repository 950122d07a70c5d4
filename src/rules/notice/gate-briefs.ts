import type { CivilDate } from '../calendar/civil-date.js';
import { daysAfter } from '../calendar/day-number.js';
import type { CheckKind } from '../facts/check.js';
import type { Job } from '../facts/use.js';
import type { Fit, FitReason } from '../fit/fit.js';
import type { Due } from '../inspection/due.js';
import { yardDaysFrom } from '../inspection/yard-days.js';
import { itemKey } from './item-key.js';
import type { Addressed, Reader, TrailerToday } from './letter.js';
import type { Readers } from './who-is-told.js';

/**
 * Days before a job at which a fault of load, tires, licence or trailer is told, so that parts can still be had. Work
 * that checks ask for has its own lead time and its own item. Job card section 11, a proposal: parts 10 days.
 */
const AHEAD_DAYS = 10;

/** The letter before a job: on its eve always, and ahead when something other than a check stands against it. */
export function gateBriefs(today: TrailerToday, readers: Readers, asOf: CivilDate): readonly Addressed[] {
  return today.jobs.flatMap(({ job, fit }) => {
    const when = whenTold(job, fit, asOf);
    if (when === null || job.state !== 'booked') return [];
    return whoHears(job, fit, today.checkKinds, readers).map(({ personId }) => ({
      personId,
      item: {
        kind: 'gate-brief' as const,
        key: itemKey('gate', `${job.id}/${job.startsOn}/${when}`, personId),
        trailerId: today.trailer.id,
        jobId: job.id,
        fit,
        dueWhileAway: dueWhileAway(today.assessment.due, job, asOf),
      },
    }));
  });
}

/** Should the eve pass without a plan, the morning of the job will do. */
function whenTold(job: Job, fit: Fit, asOf: CivilDate): string | null {
  if (asOf > job.startsOn) return null;
  if (asOf >= daysAfter(job.startsOn, -1)) return 'eve';
  if (asOf < daysAfter(job.startsOn, -AHEAD_DAYS)) return null;
  return fit.reasons.some(isAgainstIt) ? `ahead-${fit.verdict}` : null;
}

/** Reasons that ask for something no check item tells of. */
function isAgainstIt(reason: FitReason): boolean {
  switch (reason.kind) {
    case 'over':
    case 'near':
    case 'tongue-share':
    case 'hold':
    case 'ball-size':
    case 'wider-than-law':
      return true;
    case 'licence':
      return reason.driverHolds !== null;
    case 'tires-past-age':
      return reason.positions.some((position) => position !== 'spare');
    default:
      return false;
  }
}

/** Who hauls; the owner when that is nobody we can reach, and also when the trailer may not go or a safety check is late. */
function whoHears(job: Job, fit: Fit, kinds: readonly CheckKind[], readers: Readers): readonly Reader[] {
  const hauler = readers.reached(job.haulerPersonId);
  const owner = readers.owner();
  const safety = new Set(kinds.filter((kind) => kind.safety).map((kind) => kind.id));
  const isGrave =
    fit.verdict === 'no-go' ||
    fit.reasons.some(
      (reason) => reason.kind === 'due' && reason.due.state === 'overdue' && safety.has(reason.due.checkKindId),
    );
  const told = new Map<string, Reader>();
  for (const reader of [hauler ?? owner, isGrave ? owner : null]) {
    if (reader !== null) told.set(reader.personId, reader);
  }
  return [...told.values()];
}

function dueWhileAway(due: readonly Due[], job: Job, asOf: CivilDate): readonly Due[] {
  return due
    .filter(({ dueOn }) => dueOn !== null && dueOn >= job.startsOn && dueOn <= job.endsOn)
    .map((item) => ({ ...item, yardDays: yardDaysFrom(item.yardDays, daysAfter(asOf, 1)) }));
}
