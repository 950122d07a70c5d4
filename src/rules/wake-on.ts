import type { CivilDate } from './calendar/civil-date.js';
import { dayFromNumber, daysAfter, monthsAfter } from './calendar/day-number.js';
import type { DeckOutlook } from './deck/deck-outlook.js';
import { decksEndingAfter } from './deck/deck-outlook.js';
import type { Trip } from './facts/use.js';
import { deckTripDays } from './flags/deck-plank.js';
import type { Flag } from './flags/flag.js';
import { RECENT_DAYS } from './flags/flag-context.js';
import { loadingTripDays } from './flags/loading-trip-days.js';
import { wearTurnsOn } from './flags/wearing.js';
import { nextReckoning } from './history/deck-life.js';
import type { TrailerOn } from './history/trailer-on.js';
import type { Schedule } from './inspection/due.js';
import { HALF_YEAR_DAYS, IDLE_DAYS } from './inspection/triggers/idle.js';
import { UNLOGGED_JOB_DAYS, type UseSoFar } from './inspection/use-so-far.js';
import type { WearTrend } from './inspection/wear-trends.js';

/**
 * The first day on which an assessment would read differently with no new fact, or earlier; null when it never would.
 * Earlier costs one assessment that finds nothing new; later would leave a wrong answer standing. So each way in which
 * a passing day changes anything has its line here, and a test walks the days between and compares.
 */
export function wakeOn(
  trailer: TrailerOn,
  use: UseSoFar,
  schedule: Schedule,
  results: { readonly flags: readonly Flag[]; readonly deck: DeckOutlook | null; readonly wear: readonly WearTrend[] },
): CivilDate | null {
  let first: CivilDate | null = null;
  const see: See = (day) => {
    if (day !== null && day > trailer.asOf && (first === null || day < first)) first = day;
  };
  for (const day of schedule.turnsOn) see(day);
  for (const day of wearTurnsOn(results.wear)) see(day);
  seeJobs(trailer, see);
  seeTrips(trailer, see);
  seeTires(trailer, see);
  seeDeck(trailer, results, see);
  seeLoading(results.flags, see);
  seeUseLearnedAgain(use, see);
  seeLaterFacts(trailer, see);
  return first;
}

/** Takes a day on which something changes; days gone by are passed over. */
type See = (day: CivilDate | null) => void;

/** A job starts, is over, or has been over so long that it is taken not to have happened. */
function seeJobs({ facts }: TrailerOn, see: See): void {
  for (const job of facts.jobs) {
    if (job.state !== 'booked') continue;
    see(job.startsOn);
    see(daysAfter(job.endsOn, 1));
    see(daysAfter(job.endsOn, UNLOGGED_JOB_DAYS + 1));
  }
}

/** A trip stops speaking of the present; the trailer has stood, since it moved or was looked at, long enough to be looked at. */
function seeTrips(trailer: TrailerOn, see: See): void {
  const { tripsByEnd, asOf } = trailer;
  const oldest = daysAfter(asOf, -RECENT_DAYS);
  let first = tripsByEnd.length;
  while (first > 0 && (tripsByEnd[first - 1] as Trip).endedOn >= oldest) first--;
  // The oldest that speaks falls silent first.
  const speaking = tripsByEnd.slice(first).find((trip) => speaks(trip, trailer));
  if (speaking !== undefined) see(daysAfter(speaking.endedOn, RECENT_DAYS + 1));
  const movedOn = tripsByEnd.at(-1)?.endedOn ?? null;
  for (const days of [IDLE_DAYS, HALF_YEAR_DAYS]) {
    if (movedOn !== null) see(daysAfter(movedOn, days));
    seeLookedAt(trailer, days, see);
  }
}

/** So many days after a check, standing asks for another look: of all checks less old than that, the oldest comes first. */
function seeLookedAt({ records, asOf }: TrailerOn, days: number, see: See): void {
  const before = daysAfter(asOf, -days);
  const first = records.find(({ doneOn }) => doneOn > before);
  if (first !== undefined) see(daysAfter(first.doneOn, days));
}

/** Whether anything is said of a trip that will no longer be said once it is old. */
function speaks(trip: Trip, trailer: TrailerOn): boolean {
  if (trip.roads !== null && trip.roads.length > 0) return true;
  const check = trailer.judge(trip);
  if (check === null) return false;
  const { standing } = check.tongueBand;
  return standing === 'low' || standing === 'high' || check.comparisons.some((one) => one.standing === 'over');
}

/** A tire comes past its age; past it, its age in months is shown. */
function seeTires({ agedTires, asOf }: TrailerOn, see: See): void {
  for (const { madeFrom, age, pastFrom } of agedTires) {
    see(madeFrom);
    see(pastFrom);
    if (age !== null && pastFrom <= asOf) see(monthsAfter(madeFrom, age.years * 12 + age.months + 1));
  }
}

/** A trip too hard on the planks grows old; the yard's decks are counted anew; one of them is laid or ends on a day to come. */
function seeDeck(
  { facts, asOf }: TrailerOn,
  { flags, deck }: { readonly flags: readonly Flag[]; readonly deck: DeckOutlook | null },
  see: See,
): void {
  for (const endedOn of deckTripDays(flags)) see(daysAfter(endedOn, RECENT_DAYS + 1));
  if (deck === null) return;
  see(nextReckoning(deck));
  for (const day of decksEndingAfter(facts.decks, asOf)) see(day);
}

/** A trip with a machine too wide, too long, too heavy for the tail, or badly tied down grows old. */
function seeLoading(flags: readonly Flag[], see: See): void {
  for (const endedOn of loadingTripDays(flags)) see(daysAfter(endedOn, RECENT_DAYS + 1));
}

function seeUseLearnedAgain({ toCome, countedToCome, bearingsToCome, tripRate }: UseSoFar, see: See): void {
  for (const learned of [toCome, countedToCome, bearingsToCome, tripRate]) {
    if (learned !== null && learned.changesOn !== null) see(dayFromNumber(learned.changesOn));
  }
}

/** Facts dated ahead: a build from next week, a tire fitted tomorrow, a record kept in a zone that is ahead. */
function seeLaterFacts({ facts, trips, records }: TrailerOn, see: See): void {
  for (const build of facts.builds) see(build.effectiveFrom);
  for (const part of facts.parts) {
    see(part.fittedOn);
    see(part.removedOn);
  }
  // Mostly every trip and record is of a day gone by, and then none need be looked at.
  if (trips.length < facts.trips.length) for (const trip of facts.trips) see(trip.endedOn);
  for (const reading of facts.readings) see(reading.takenOn);
  if (records.length < facts.checkRecords.length) for (const record of facts.checkRecords) see(record.doneOn);
  for (const hold of facts.holds) {
    see(hold.openedOn);
    see(hold.liftedOn);
  }
}
