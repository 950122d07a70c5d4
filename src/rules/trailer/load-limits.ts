import type { Axle, BuildSheet, Suspension } from '../facts/build-sheet.js';
import type { Part } from '../facts/part.js';
import type { TowVehicle } from '../facts/use.js';
import type { Limit, LimitKind, LimitOrigin } from '../load/limit.js';
import type { AxleLimits, AxleSharing, LegalRun, LoadLimits, RatingLack } from '../load/load-limits.js';
import { springCentre } from '../load/springs.js';
import { axleGroupCentre } from '../load/statics.js';
import { tongueBand } from '../load/tongue-band.js';
import type { Torsion } from '../load/torsion.js';
import { pairPressure } from '../tire/dual-pair.js';
import { type CapacityLack, type TireCapacity, tireCapacity } from '../tire/tire-capacity.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { Kilopascals } from '../units/pressure.js';
import { legalRuns } from './legal-limits.js';
import { torsionOf } from './torsion-axles.js';
import { axleWheelPositions, mateOf } from './wheel-positions.js';

export interface LoadLimitsInput {
  readonly build: BuildSheet;
  /** Tires fitted on the day asked about. */
  readonly tires: readonly Part[];
  /** Cold pressure last found, by wheel position. */
  readonly coldPressures: ReadonlyMap<string, Kilopascals>;
  readonly towVehicle: TowVehicle | null;
}

/** The limits of one build with these tires at these pressures. A tire with no pressure found is taken at the plate's, or else at its sidewall's. */
export function loadLimits({ build, tires, coldPressures, towVehicle }: LoadLimitsInput): LoadLimits {
  const sharing = axleSharing(build.axles.length, build.suspension);
  const fromFront = build.axles.toSorted((a, b) => a.number - b.number);
  const torsion = sharing === 'separate' ? torsionOf(fromFront, build.hitch, towVehicle) : null;
  const axles = fromFront.map((axle) => axleLimits(axle, tires, coldPressures, build.plate.coldPressureKpa));
  return {
    plate: massLimit('plate', build.plate.gvwrKg, 'plate'),
    axleGroup: axleGroupLimit(axles, sharing),
    axles,
    legal: legalRuns(fromFront).filter((run) => mayBind(run, axles)),
    coupler: massLimit('coupler', build.hitch.couplerRatingKg, 'coupler-maker'),
    couplerTongue: forceLimit('coupler-tongue', build.hitch.couplerTongueN, 'coupler-maker'),
    towHitch: massLimit('tow-hitch', towVehicle?.hitchRatingKg ?? null, 'tow-vehicle'),
    towHitchTongue: forceLimit('tow-hitch-tongue', towVehicle?.hitchTongueN ?? null, 'tow-vehicle'),
    sharing,
    torsion,
    axleCentreM: levelCentre(fromFront, torsion),
    emptyKg: build.empty.massKg,
    emptyWeighed: build.empty.basis === 'weighed',
    emptyTongueN: build.empty.tongueN,
    band: tongueBand(build.hitch.kind),
    hitchKnown: build.hitch.kind !== null,
    ratingLacks: ratingLacks(build, axles),
  };
}

/** How the axles of a build share what they carry. */
function axleSharing(axleCount: number, suspension: Suspension | null): AxleSharing {
  if (axleCount === 1) return 'equal';
  if (suspension === null) return 'unknown';
  return suspension === 'torsion' ? 'separate' : 'equal';
}

/** See `LoadLimits.axleCentreM`. */
function levelCentre(axles: readonly Axle[], torsion: Torsion | null): Metres | null {
  const springs = torsion?.rates?.known ? torsion.rates.softest : null;
  return springs === null ? axleGroupCentre(axles.map((axle) => axle.fromCouplerM)) : springCentre(springs);
}

/**
 * What an axle group may carry when each of its parts has a rating: axles that share equally are all held to the
 * weakest; separate ones add up, and each is then checked by itself. Null when a rating is unknown.
 */
function groupCapacity(capacities: readonly (Newtons | null)[], sharing: AxleSharing): Newtons | null {
  if (capacities.length === 0) return null;
  let sum = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const capacity of capacities) {
    if (capacity === null) return null;
    sum += capacity;
    least = Math.min(least, capacity);
  }
  return newtons(sharing === 'separate' ? sum : least * capacities.length);
}

/** An axle's limits, and its wheels whose tire's capacity cannot be said. */
interface AxleFound extends AxleLimits {
  readonly unknownTires: readonly UnknownTire[];
}

interface UnknownTire {
  readonly position: string;
  /** `tire`: none is recorded there. */
  readonly lacks: 'tire' | CapacityLack;
}

function axleLimits(
  axle: Axle,
  tires: readonly Part[],
  coldPressures: ReadonlyMap<string, Kilopascals>,
  plateKpa: Kilopascals | null,
): AxleFound {
  const known: Limit[] = [];
  const unknown: UnknownTire[] = [];
  for (const position of axleWheelPositions(axle)) {
    const fitted = tires.filter((tire) => tire.position === position);
    if (fitted.length === 0) unknown.push({ position, lacks: 'tire' });
    for (const { tire } of fitted) {
      const coldKpa = pressureAt(position, coldPressures) ?? plateKpa;
      const mounting = axle.wheelsPerSide === 2 ? 'dual' : 'single';
      const capacity: TireCapacity =
        tire === null ? { kind: 'unknown', lacks: 'max-load' } : tireCapacity(tire, mounting, coldKpa);
      if (capacity.kind === 'unknown') unknown.push({ position, lacks: capacity.lacks });
      else known.push({ kind: 'tire', subject: position, limitN: weightOf(capacity.massKg), origin: capacity.origin });
    }
  }
  return {
    number: axle.number,
    wheels: axle.wheelsPerSide * 2,
    trackM: axle.trackM,
    rated: axleLimit(axle),
    tires: known,
    unknownTires: unknown,
  };
}

/** Whether a legal weight is less than what the axles of its run are rated for; true while a rating is unknown. */
function mayBind({ first, last, limit }: LegalRun, axles: readonly AxleLimits[]): boolean {
  let ratedN = 0;
  for (const { rated } of axles.slice(first, last + 1)) ratedN += rated?.limitN ?? Number.POSITIVE_INFINITY;
  return limit.limitN < ratedN;
}

/** The cold pressure a wheel is taken at: what was found in it, in a dual pair the lower of the two. */
function pressureAt(position: string, found: ReadonlyMap<string, Kilopascals>): Kilopascals | null {
  const mate = mateOf(position);
  return pairPressure(found.get(position) ?? null, mate === null ? null : (found.get(mate) ?? null));
}

function ratingLacks(build: BuildSheet, axles: readonly AxleFound[]): readonly RatingLack[] {
  const lacks: RatingLack[] = [];
  const unrated = axles.filter((axle) => axle.rated === null).map((axle) => axle.number);
  const tires = axles.flatMap((axle) => axle.unknownTires);
  const offTable = tires.filter((tire) => tire.lacks === 'published-row' || tire.lacks === 'row-this-low');
  const unmarked = tires.filter((tire) => !offTable.includes(tire));
  if (build.plate.gvwrKg === null) lacks.push({ lacks: 'gvwr', stops: 'plate-check' });
  if (axles.length === 0) {
    lacks.push({ lacks: 'axle-ratings', stops: 'axle-check' }, { lacks: 'tire-ratings', stops: 'tire-check' });
  }
  if (unrated.length > 0) lacks.push({ lacks: 'axle-ratings', stops: 'axle-check', subject: unrated.join(',') });
  if (unmarked.length > 0) lacks.push({ lacks: 'tire-ratings', stops: 'tire-check', subject: positionsOf(unmarked) });
  if (offTable.length > 0) lacks.push({ lacks: 'tire-table-row', stops: 'tire-check', subject: positionsOf(offTable) });
  if (build.hitch.couplerRatingKg === null) lacks.push({ lacks: 'coupler-rating', stops: 'coupler-check' });
  return lacks;
}

function positionsOf(tires: readonly UnknownTire[]): string {
  return tires.map((tire) => tire.position).join(',');
}

function axleLimit(axle: Axle): Limit | null {
  const { gawrKg, ratingKg } = axle;
  const byMaker = ratingKg !== null && (gawrKg === null || ratingKg < gawrKg);
  return massLimit('axle', byMaker ? ratingKg : gawrKg, byMaker ? 'axle-maker' : 'plate', String(axle.number));
}

function axleGroupLimit(axles: readonly AxleLimits[], sharing: AxleSharing): Limit | null {
  const limitN = groupCapacity(
    axles.map((axle) => axle.rated?.limitN ?? null),
    sharing,
  );
  if (limitN === null) return null;
  const origin = axles.some((axle) => axle.rated?.origin === 'plate') ? 'plate' : 'axle-maker';
  return { kind: 'axle-group', subject: null, limitN, origin };
}

function massLimit(
  kind: LimitKind,
  ratingKg: Kilograms | null,
  origin: LimitOrigin,
  subject: string | null = null,
): Limit | null {
  return ratingKg === null ? null : { kind, subject, limitN: weightOf(ratingKg), origin };
}

function forceLimit(kind: LimitKind, ratingN: Newtons | null, origin: LimitOrigin): Limit | null {
  return ratingN === null ? null : { kind, subject: null, limitN: ratingN, origin };
}
