import { basicLife, lifeDistance, setLife } from '../bearing/basic-life.js';
import { type RatedBearing, type RatingSource, ratedBearing } from '../bearing/bearing-table.js';
import { LIFE_EXPONENT } from '../bearing/dynamic-rating.js';
import { pairLoads } from '../bearing/equivalent-load.js';
import { hubLoad, ROUGH_SERVICE_FACTOR, USUAL_SHARES } from '../bearing/hub-load.js';
import { loadedRadius, turnsPerKm } from '../bearing/wheel-turns.js';
import type { CivilDate } from '../calendar/civil-date.js';
import { dayNumber } from '../calendar/day-number.js';
import type { Part } from '../facts/part.js';
import { partsOn } from '../facts/parts-on.js';
import type { Trip } from '../facts/use.js';
import type { DistanceTravelled } from '../forecast/distance-travelled.js';
import { nominalDiameter, readTireSize } from '../tire/tire-size.js';
import { parseWheelPosition, type WheelPosition } from '../trailer/wheel-positions.js';
import { type Kilometres, km } from '../units/distance.js';
import { type Newtons, newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';
import { evenLoads, knownAxleLoad, mostAxleLoad } from './axle-load.js';
import { order } from './order.js';
import type { TrailerOn } from './trailer-on.js';

/**
 * How much of its rating life (L10, ISO 281) the bearings of one hub have used up. Never a due date: hubs fail by
 * water, old grease and preload long before, so this only tells which hub works hardest and whether its size suits.
 */
export interface HubLife {
  readonly partId: string;
  /** Axle and side, such as `1L`; null when nobody said. */
  readonly position: string | null;
  readonly fittedOn: CivilDate | null;
  /**
   * Share of L10 of the two bearings together, 0 and up: at 1, one such hub in ten is expected to have spalled. At most
   * this much, since each load is taken at the heavy end of what is known. Null while something is lacking.
   */
  readonly lifeUsed: number | null;
  /** L10 of the two together at the mean of the loads so far. */
  readonly l10Km: Kilometres | null;
  /** The steady load on the hub that does as much as all its loads did, rough service included. */
  readonly meanLoadN: Newtons | null;
  /** Distance driven with a known load since it was fitted, and without one. */
  readonly countedKm: Kilometres;
  readonly uncountedKm: Kilometres;
  /** Some loads are only the most they can have been: the tongue was not known. */
  readonly isBound: boolean;
  /** Where the weaker of the two ratings comes from. */
  readonly rating: RatingSource | null;
  readonly lacks: HubLack | null;
}

/** What keeps it from being worked out, worst first. */
type HubLack = 'position' | 'bearing-numbers' | 'bearing-rating' | 'tire-size' | 'loads';

/** One result for each hub whose bearings are on record, by position. */
export function hubLives(trailer: TrailerOn, travelled: DistanceTravelled): readonly HubLife[] {
  const hubs = partsOn(trailer.facts.parts, 'hub-bearings', trailer.asOf);
  const works = new HubWorks(trailer);
  return hubs.map((part) => hubLife(part, trailer, travelled, works)).sort(byPosition);
}

function hubLife(part: Part, trailer: TrailerOn, travelled: DistanceTravelled, works: HubWorks): HubLife {
  const place = part.position === null ? null : parseWheelPosition(part.position);
  const pair = pairOf(part);
  const turns = place === null ? null : turnsAt(place, trailer);
  const work = place?.kind === 'axle' ? works.of(place, part.fittedOn) : NO_WORK;
  const sinceKm =
    part.fittedOn === null ? travelled.total : travelled.between(dayBefore(part), dayNumber(trailer.asOf));
  const lacks = lackOf(part, place, pair, turns, work);
  const meanLoadN = work.km > 0 ? newtons((work.kmByLoad / work.km) ** (1 / LIFE_EXPONENT.roller)) : null;
  const l10Km =
    lacks !== null || pair === null || turns === null || meanLoadN === null || meanLoadN === 0
      ? null
      : lifeDistance(pairLife(pair, meanLoadN), turns);
  return {
    partId: part.id,
    position: part.position,
    fittedOn: part.fittedOn,
    lifeUsed: l10Km === null ? null : work.km / l10Km,
    l10Km,
    meanLoadN,
    countedKm: km(work.km),
    uncountedKm: km(Math.max(0, sinceKm - work.km)),
    isBound: work.isBound,
    rating: pair === null ? null : weakerSource(pair),
    lacks,
  };
}

function dayBefore(part: Part): number {
  return part.fittedOn === null ? 0 : dayNumber(part.fittedOn) - 1;
}

function lackOf(
  part: Part,
  place: WheelPosition | null,
  pair: BearingPair | null,
  turns: number | null,
  work: HubWork,
): HubLack | null {
  if (place?.kind !== 'axle') return 'position';
  if (part.bearings?.inner == null || part.bearings.outer == null) return 'bearing-numbers';
  if (pair === null) return 'bearing-rating';
  if (turns === null) return 'tire-size';
  return work.km > 0 ? null : 'loads';
}

interface BearingPair {
  readonly inner: RatedBearing;
  readonly outer: RatedBearing;
}

function pairOf({ bearings }: Part): BearingPair | null {
  const inner = bearings?.inner == null ? null : ratedBearing(bearings.inner);
  const outer = bearings?.outer == null ? null : ratedBearing(bearings.outer);
  return inner === null || outer === null ? null : { inner, outer };
}

/** Revolutions of which both bearings of a hub survive under a steady hub load, straight ahead: no outer thrust. */
function pairLife({ inner, outer }: BearingPair, loadN: Newtons): number {
  const { firstN, secondN } = pairLoads(
    { radialN: newtons(loadN * USUAL_SHARES.inner), k: inner.k },
    { radialN: newtons(loadN * USUAL_SHARES.outer), k: outer.k },
    newtons(0),
  );
  return setLife([basicLife(inner.millionN, firstN), basicLife(outer.millionN, secondN)]);
}

/** Distance with a known load on one hub, and the sum of distance times load to the 10/3. */
interface HubWork {
  readonly km: number;
  readonly kmByLoad: number;
  readonly isBound: boolean;
}

const NO_WORK: HubWork = { km: 0, kmByLoad: 0, isBound: false };

/** Both hubs of an axle; they differ only by loads known to sit off centre. */
interface AxleWork {
  readonly km: number;
  readonly isBound: boolean;
  readonly L: number;
  readonly R: number;
}

/** What each hub has gone through, summed once for all hubs that went through the same. */
class HubWorks {
  private readonly worked = new Map<string, AxleWork>();
  /** Wear by the even load of each trip, which is the same on all its axles; NaN until asked for. */
  private readonly evenWear: Float64Array;

  constructor(private readonly trailer: TrailerOn) {
    this.evenWear = new Float64Array(trailer.trips.length).fill(Number.NaN);
  }

  of({ axle, side }: Extract<WheelPosition, { kind: 'axle' }>, since: CivilDate | null): HubWork {
    const key = `${axle}/${since}`;
    const work = this.worked.get(key) ?? this.axleWork(axle - 1, since);
    this.worked.set(key, work);
    return { km: work.km, isBound: work.isBound, kmByLoad: work[side] };
  }

  /** Hubs of one axle fitted on one day have come the same way, so it is summed once for both. */
  private axleWork(axle: number, since: CivilDate | null): AxleWork {
    const work = { km: 0, isBound: false, L: 0, R: 0 };
    const { trips } = this.trailer;
    const { axles, axleN, isBound } = evenLoads(this.trailer);
    for (let place = 0; place < trips.length; place++) {
      const trip = trips[place] as Trip;
      if (trip.distanceKm === null || (since !== null && trip.startedOn < since)) continue;
      if (axle >= (axles[place] as number) || trip.load.offCentreM !== null) {
        addTrip(work, trip, trip.distanceKm, axle, this.trailer);
        continue;
      }
      const evenN = axleN[place] as number;
      if (Number.isNaN(evenN)) continue;
      if (isBound[place] === 1) work.isBound = true;
      const kmByLoad = trip.distanceKm * this.wearAt(place, evenN);
      work.km += trip.distanceKm;
      work.L += kmByLoad;
      work.R += kmByLoad;
    }
    return work;
  }

  private wearAt(place: number, evenN: number): number {
    let found = this.evenWear[place] as number;
    if (Number.isNaN(found)) {
      found = wear(newtons(evenN));
      this.evenWear[place] = found;
    }
    return found;
  }
}

/** A trip with its own load on this axle, or on one side of it. */
function addTrip(
  work: { km: number; isBound: boolean; L: number; R: number },
  trip: Trip,
  distanceKm: Kilometres,
  axle: number,
  trailer: TrailerOn,
): void {
  const knownN = knownAxleLoad(trip, axle, trailer);
  const axleN = knownN ?? mostAxleLoad(trip, axle, trailer);
  if (axleN === null) return;
  if (knownN === null) work.isBound = true;
  work.km += distanceKm;
  const sides = trip.load.offCentreM === null ? null : (trailer.judge(trip)?.sideN?.[axle] ?? null);
  const left = distanceKm * wear(sides === null ? axleN : newtons(sides.leftN * 2));
  work.L += left;
  work.R += sides === null ? left : distanceKm * wear(newtons(sides.rightN * 2));
}

/** Hub load in rough service to the 10/3. The wheel's own weight is not on record, so none is taken off. */
function wear(axleN: Newtons): number {
  return (hubLoad(axleN, null) * ROUGH_SERVICE_FACTOR) ** LIFE_EXPONENT.roller;
}

/** Turns a kilometre of the smallest tire on that side, which turns most; null while no size there can be read. */
function turnsAt(place: WheelPosition, trailer: TrailerOn): number | null {
  if (place.kind !== 'axle') return null;
  const start = `${place.axle}${place.side}`;
  let least: Metres | null = null;
  for (const { position, tire } of trailer.tires) {
    if (position === null || !position.startsWith(start) || tire?.size == null) continue;
    const size = readTireSize(tire.size);
    if (size === null) continue;
    const across = nominalDiameter(size);
    if (least === null || across < least) least = across;
  }
  return least === null ? null : turnsPerKm(loadedRadius(least));
}

const SURENESS: Readonly<Record<RatingSource, number>> = { memory: 0, series: 1, catalogue: 2 };

function weakerSource({ inner, outer }: BearingPair): RatingSource {
  return SURENESS[inner.source] <= SURENESS[outer.source] ? inner.source : outer.source;
}

function byPosition(a: HubLife, b: HubLife): number {
  return order(a.position ?? '', b.position ?? '') || order(a.partId, b.partId);
}
