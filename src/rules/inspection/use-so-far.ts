import { dayNumber } from '../calendar/day-number.js';
import type { CheckKind, CheckRecord } from '../facts/check.js';
import type { Job } from '../facts/use.js';
import { type DistanceToCome, distanceToCome } from '../forecast/distance-to-come.js';
import { type DistanceTravelled, distancesTravelled } from '../forecast/distance-travelled.js';
import { type TripRate, type TripsToCome, tripRate, tripsToCome } from '../forecast/trips-to-come.js';
import { useKnown } from '../forecast/use-known.js';
import { ONLY_BOOKED } from '../forecast/walk.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { bearingWeights, isOfBearings } from './bearing-load.js';
import { harshWeight } from './harsh-service.js';

/** What checks count from: distance behind and ahead, and the last record of each kind. Worked out once for all checks of a trailer. */
export interface UseSoFar {
  readonly travelled: DistanceTravelled;
  readonly toCome: DistanceToCome;
  /** The same with harsh service counted more than once. */
  readonly counted: DistanceTravelled;
  readonly countedToCome: DistanceToCome;
  /** The same as hub bearings feel it: a load over an axle's rating counted more than once too. */
  readonly bearings: DistanceTravelled;
  readonly bearingsToCome: DistanceToCome;
  /** How often it goes out; null where no check asks. */
  readonly tripRate: TripRate | null;
  /** Trips still to come, with these jobs booked. */
  tripsToCome(jobs: readonly Job[]): TripsToCome;
  readonly lastPass: ReadonlyMap<string, CheckRecord>;
  /** Kinds whose latest record is a fail, with that record. */
  readonly failed: ReadonlyMap<string, CheckRecord>;
}

/** A booked job that nobody recorded as a trip is taken to have happened for this long, then not. Our choice. */
export const UNLOGGED_JOB_DAYS = 30;

export function useSoFar(trailer: TrailerOn): UseSoFar {
  const { facts, readings, trips } = trailer;
  const asOf = dayNumber(trailer.asOf);
  const jobs = facts.jobs
    .filter((job) => job.state === 'booked' && dayNumber(job.endsOn) + UNLOGGED_JOB_DAYS >= asOf)
    .sort((a, b) => (a.startsOn === b.startsOn ? (a.id < b.id ? -1 : 1) : a.startsOn < b.startsOn ? -1 : 1));
  const known = useKnown({
    readings,
    trips,
    jobs,
    asOf,
    inUseSince: facts.trailer.boughtOn === null ? null : dayNumber(facts.trailer.boughtOn),
    windowDays: facts.policy.useWindowDays,
  });
  const ahead = (travelled: DistanceTravelled) => distanceToCome(known, travelled);
  const asks = facts.checkKinds.some((kind) => kind.triggers.some((trigger) => trigger.kind === 'trips'));
  const rate = asks ? tripRate(trips, asOf, facts.policy.useWindowDays) : null;
  const harsh = harshWeight(trailer);
  const { driven, counted } = distancesTravelled(readings, trips, harsh);
  const byBearings = facts.checkKinds.some(countsBearings) ? bearingWeights(trailer, harsh) : null;
  const bearings = byBearings === null ? counted : distancesTravelled(readings, trips, byBearings).counted;
  const toCome = ahead(driven);
  const countedToCome = counted === driven ? toCome : ahead(counted);
  return {
    travelled: driven,
    toCome,
    counted,
    countedToCome,
    bearings,
    bearingsToCome: bearings === counted ? countedToCome : ahead(bearings),
    tripRate: rate,
    tripsToCome: (booked) => tripsToCome(rate ?? NO_TRIPS, booked, trips),
    ...lastRecords(trailer.records),
  };
}

function countsBearings(kind: CheckKind): boolean {
  return isOfBearings(kind) && kind.triggers.some((trigger) => trigger.kind === 'distance');
}

const NO_TRIPS: TripRate = { from: null, usual: ONLY_BOOKED, changesOn: null };

/** Records in the order of time; of two on one day a pass counts as the later, since a repair follows a fail. */
function lastRecords(records: readonly CheckRecord[]): Pick<UseSoFar, 'lastPass' | 'failed'> {
  const lastPass = new Map<string, CheckRecord>();
  const failed = new Map<string, CheckRecord>();
  for (const record of records) {
    if (record.outcome === 'pass') lastPass.set(record.checkKindId, record);
    else failed.set(record.checkKindId, record);
  }
  for (const [kindId, fail] of failed) {
    const pass = lastPass.get(kindId);
    if (pass !== undefined && pass.doneOn >= fail.doneOn) failed.delete(kindId);
  }
  return { lastPass, failed };
}
