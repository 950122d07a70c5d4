import { addMonths, type CivilDate, earliest } from './calendar/civil-date.js';
import { dayFromNumber, daysAfter } from './calendar/day-number.js';
import { RECENT_DAYS } from './flags/flag-context.js';
import { agedTires } from './flags/tire-age.js';
import type { TrailerOn } from './history/trailer-on.js';
import type { Schedule } from './inspection/due.js';
import { IDLE_DAYS } from './inspection/triggers/event.js';
import { UNLOGGED_JOB_DAYS, type UseSoFar } from './inspection/use-so-far.js';
import { parseDateCode } from './tire/date-code.js';

/**
 * The first day on which an assessment would read differently with no new fact, or earlier; null when it never would.
 * Earlier costs one assessment that finds nothing new; later would leave a wrong answer standing. So each way in which
 * a passing day changes anything has its line here, and a test walks the days between and compares.
 */
export function wakeOn(trailer: TrailerOn, use: UseSoFar, schedule: Schedule): CivilDate | null {
  return earliest(
    [
      ...schedule.turnsOn,
      ...whenJobsChange(trailer),
      ...whenTripsAge(trailer),
      ...whenTiresAge(trailer),
      ...whenUseIsLearnedAgain(use),
      ...whenLaterFactsBegin(trailer),
    ].filter((day) => day > trailer.asOf),
  );
}

/** A job starts, is over, or has been over so long that it is taken not to have happened. */
function whenJobsChange(trailer: TrailerOn): readonly CivilDate[] {
  return trailer.facts.jobs
    .filter((job) => job.state === 'booked')
    .flatMap((job) => [job.startsOn, daysAfter(job.endsOn, 1), daysAfter(job.endsOn, UNLOGGED_JOB_DAYS + 1)]);
}

/** A trip stops speaking of the present; the trailer has stood long enough to be looked at. */
function whenTripsAge(trailer: TrailerOn): readonly CivilDate[] {
  const days: CivilDate[] = [];
  const oldest = daysAfter(trailer.asOf, -RECENT_DAYS);
  let lastDay: CivilDate | null = null;
  for (const trip of trailer.trips) {
    if (lastDay === null || trip.endedOn > lastDay) lastDay = trip.endedOn;
    if (trip.endedOn >= oldest && speaks(trip, trailer)) days.push(daysAfter(trip.endedOn, RECENT_DAYS + 1));
  }
  if (lastDay !== null) days.push(daysAfter(lastDay, IDLE_DAYS));
  for (const record of trailer.records) days.push(daysAfter(record.doneOn, IDLE_DAYS));
  return days;
}

/** Whether anything is said of a trip that will no longer be said once it is old. */
function speaks(trip: TrailerOn['trips'][number], trailer: TrailerOn): boolean {
  if (trip.roads !== null && trip.roads.length > 0) return true;
  const check = trailer.judge(trip);
  if (check === null) return false;
  const { standing } = check.tongueBand;
  return standing === 'low' || standing === 'high' || check.comparisons.some((one) => one.standing === 'over');
}

/** A tire comes past its age; past it, its age in months is shown. */
function whenTiresAge(trailer: TrailerOn): readonly CivilDate[] {
  const notYetMade = trailer.tires.flatMap(({ tire }) => {
    const code = tire?.dateCode ? parseDateCode(tire.dateCode, null) : null;
    return code === null || code.kind === 'refused' ? [] : [code.madeFrom];
  });
  const ageing = agedTires(trailer).map((tire) =>
    tire.pastFrom > trailer.asOf ? tire.pastFrom : addMonths(tire.madeFrom, tire.years * 12 + tire.months + 1),
  );
  return [...notYetMade, ...ageing];
}

function whenUseIsLearnedAgain({ toCome, countedToCome }: UseSoFar): readonly CivilDate[] {
  return [toCome.changesOn, countedToCome.changesOn].flatMap((day) => (day === null ? [] : [dayFromNumber(day)]));
}

/** Facts dated ahead: a build from next week, a tire fitted tomorrow, a record kept in a zone that is ahead. */
function whenLaterFactsBegin({ facts }: TrailerOn): readonly CivilDate[] {
  return [
    ...facts.builds.map((build) => build.effectiveFrom),
    ...facts.parts.flatMap((part) => [part.fittedOn, part.removedOn].filter((day) => day !== null)),
    ...facts.trips.map((trip) => trip.endedOn),
    ...facts.readings.map((reading) => reading.takenOn),
    ...facts.checkRecords.map((record) => record.doneOn),
    ...facts.holds.flatMap((hold) => [hold.openedOn, hold.liftedOn].filter((day) => day !== null)),
  ];
}
