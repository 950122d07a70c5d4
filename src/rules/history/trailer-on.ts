import type { CivilDate } from '../calendar/civil-date.js';
import { buildOn } from '../facts/build-on.js';
import type { BuildSheet } from '../facts/build-sheet.js';
import type { CheckRecord, Hold } from '../facts/check.js';
import type { Part } from '../facts/part.js';
import { partsOn } from '../facts/parts-on.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import type { Job, MeterReading, Trip } from '../facts/use.js';
import { type LeastLimits, leastLimits, passesNoLimit } from '../load/least-limits.js';
import { checkLoad, type LoadCheck } from '../load/load-check.js';
import type { LoadLimits } from '../load/load-limits.js';
import { loadLimits } from '../trailer/load-limits.js';
import { type Ratings, ratingsBy } from '../trailer/ratings.js';
import { inOrder, order } from './order.js';
import { type AgedTire, agedTires } from './tire-ages.js';

/**
 * One trailer as it stands on a day: what was known by then, in the order of time, with the build and tires of any day.
 * Facts dated after the day are not known yet. Lists are sorted by day and then by id, so that the order in which
 * facts are handed over never decides an answer.
 */
export interface TrailerOn {
  readonly facts: TrailerFacts;
  readonly asOf: CivilDate;
  readonly build: BuildSheet | null;
  readonly tires: readonly Part[];
  /** Trips that have ended, by their first day. */
  readonly trips: readonly Trip[];
  /** The same by their last day. */
  readonly tripsByEnd: readonly Trip[];
  readonly readings: readonly MeterReading[];
  /** Booked jobs that have not ended. */
  readonly jobs: readonly Job[];
  readonly records: readonly CheckRecord[];
  readonly openHolds: readonly Hold[];
  readonly agedTires: readonly AgedTire[];
  /** One trip against the build and tires of its day. Worked out once, when first asked for. */
  judge(trip: Trip): LoadCheck | null;
  /** Whether it passed any limit of the build and tires of its day: what `judge` would find, told without it where sums do. */
  passedALimit(trip: Trip): boolean;
  /** Ratings of the build and tires of a day. */
  ratingsOn(on: CivilDate): Ratings | null;
  limitsOn(on: CivilDate): LoadLimits | null;
  buildOn(on: CivilDate): BuildSheet | null;
}

export function trailerOn(facts: TrailerFacts, asOf: CivilDate): TrailerOn {
  const eras = new Eras(facts);
  const judged = new Map<Trip, LoadCheck | null>();
  const trips = inOrder(endedBy(facts.trips, asOf), byStart);
  const judge = (trip: Trip): LoadCheck | null => {
    const known = judged.get(trip);
    if (known !== undefined) return known;
    const limits = eras.of(trip.startedOn).limits();
    const check = limits === null ? null : checkLoad(limits, trip.load, facts.policy);
    judged.set(trip, check);
    return check;
  };
  const { build, tires } = eras.of(asOf);
  return {
    facts,
    asOf,
    build,
    tires,
    trips,
    tripsByEnd: inOrderOfEnd(trips) ? trips : trips.toSorted(byEnd),
    readings: inOrder(
      facts.readings.filter((reading) => reading.takenOn <= asOf),
      byTaken,
    ),
    jobs: facts.jobs.filter((job) => job.state === 'booked' && job.endsOn >= asOf).sort(byJobStart),
    records: facts.checkRecords.filter((record) => record.doneOn <= asOf).sort(byDone),
    openHolds: facts.holds
      .filter((hold) => hold.openedOn <= asOf && (hold.liftedOn === null || hold.liftedOn > asOf))
      .sort((a, b) => order(a.openedOn, b.openedOn) || order(a.id, b.id)),
    agedTires: agedTires(tires, asOf, facts.policy.tireAgeLimitYears),
    judge,
    passedALimit: (trip) =>
      !eras.of(trip.startedOn).clears(trip) &&
      (judge(trip)?.comparisons.some(({ standing }) => standing === 'over') ?? false),
    ratingsOn: (on) => eras.of(on).ratings(),
    limitsOn: (on) => eras.of(on).limits(),
    buildOn: (on) => eras.of(on).build,
  };
}

/** A stretch of days in which neither build nor tires changed. */
class Era {
  readonly build: BuildSheet | null;
  readonly tires: readonly Part[];
  private keptLimits: LoadLimits | null = null;
  private keptLeast: LeastLimits | null = null;
  private keptRatings: Ratings | null = null;

  constructor(facts: TrailerFacts, on: CivilDate) {
    this.build = buildOn(facts.builds, on);
    this.tires = partsOn(facts.parts, 'tire', on).toSorted((a, b) => order(a.id, b.id));
  }

  limits(): LoadLimits | null {
    if (this.build === null) return null;
    this.keptLimits ??= loadLimits({
      build: this.build,
      tires: this.tires,
      coldPressures: new Map(),
      towVehicle: null,
    });
    return this.keptLimits;
  }

  /** True only where the load of a trip passes no limit. */
  clears(trip: Trip): boolean {
    const limits = this.limits();
    if (limits === null) return true;
    this.keptLeast ??= leastLimits(limits);
    return passesNoLimit(limits, this.keptLeast, trip.load);
  }

  ratings(): Ratings | null {
    const limits = this.limits();
    if (this.build === null || limits === null) return null;
    this.keptRatings ??= ratingsBy(limits, this.build, this.tires);
    return this.keptRatings;
  }
}

/** All eras of a trailer, each made once: a thousand trips fall into a handful. */
class Eras {
  private readonly starts: readonly CivilDate[];
  private readonly kept = new Map<number, Era>();
  /** Trips are mostly asked for in the order of time, so the next one mostly falls into the era of the last. */
  private last: { readonly era: Era; readonly from: CivilDate | null; readonly to: CivilDate | null } | null = null;

  constructor(private readonly facts: TrailerFacts) {
    const changes = new Set<CivilDate>();
    for (const build of facts.builds) changes.add(build.effectiveFrom);
    for (const part of facts.parts) {
      if (part.kind !== 'tire') continue;
      if (part.fittedOn !== null) changes.add(part.fittedOn);
      if (part.removedOn !== null) changes.add(part.removedOn);
    }
    this.starts = [...changes].sort();
  }

  of(on: CivilDate): Era {
    if (
      this.last !== null &&
      (this.last.from === null || this.last.from <= on) &&
      (this.last.to === null || on < this.last.to)
    )
      return this.last.era;
    let index = this.starts.length;
    while (index > 0 && (this.starts[index - 1] as CivilDate) > on) index--;
    const era = this.kept.get(index) ?? new Era(this.facts, on);
    this.kept.set(index, era);
    this.last = { era, from: this.starts[index - 1] ?? null, to: this.starts[index] ?? null };
    return era;
  }
}

function endedBy(trips: readonly Trip[], asOf: CivilDate): readonly Trip[] {
  const ended: Trip[] = [];
  for (const trip of trips) if (trip.endedOn <= asOf) ended.push(trip);
  return ended;
}

function byStart(a: Trip, b: Trip): number {
  return order(a.startedOn, b.startedOn) || order(a.endedOn, b.endedOn) || order(a.id, b.id);
}

function byEnd(a: Trip, b: Trip): number {
  return order(a.endedOn, b.endedOn) || order(a.startedOn, b.startedOn) || order(a.id, b.id);
}

/** Hauls of a day mostly end in the order in which they began, and then one list serves for both. */
function inOrderOfEnd(trips: readonly Trip[]): boolean {
  for (let i = 1; i < trips.length; i++) {
    if ((trips[i - 1] as Trip).endedOn > (trips[i] as Trip).endedOn) return false;
  }
  return true;
}

/** Of readings on one day the old meter's comes before the new meter's, and the lower before the higher. */
export function byTaken(a: MeterReading, b: MeterReading): number {
  return (
    order(a.takenOn, b.takenOn) ||
    Number(a.kind === 'replaced') - Number(b.kind === 'replaced') ||
    a.shownKm - b.shownKm ||
    order(a.id, b.id)
  );
}

function byJobStart(a: Job, b: Job): number {
  return order(a.startsOn, b.startsOn) || order(a.endsOn, b.endsOn) || order(a.id, b.id);
}

function byDone(a: CheckRecord, b: CheckRecord): number {
  return order(a.doneOn, b.doneOn) || order(a.id, b.id);
}
