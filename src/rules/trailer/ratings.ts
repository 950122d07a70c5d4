import type { Axle, BuildSheet } from '../facts/build-sheet.js';
import type { Part } from '../facts/part.js';
import type { Limit } from '../load/limit.js';
import type { LoadLimits } from '../load/load-limits.js';
import { exceeds } from '../units/compare.js';
import { massHeldUpBy, newtons } from '../units/force.js';
import { type Kilograms, kg } from '../units/mass.js';
import { axleSum } from './axle-sum.js';
import { legalRuns } from './legal-limits.js';
import { loadLimits } from './load-limits.js';
import { type TrailerClass, trailerClass } from './trailer-class.js';

export type { TrailerClass } from './trailer-class.js';

/** Every limit of a build with its origin, and what it leaves for cargo. */
export interface Ratings {
  readonly limits: readonly Limit[];
  /** The limit that leaves least for cargo; null while none can be worked out. */
  readonly governing: Limit | null;
  /** The greatest gross mass that every known limit allows. */
  readonly grossKg: Kilograms | null;
  /** That gross less the empty mass; 0 when the trailer alone is past it; null while either is unknown. */
  readonly payloadKg: Kilograms | null;
  /** What the axles may carry together: the least of their ratings and of their tires, held to the weakest; null while none is known. */
  readonly axleGroupKg: Kilograms | null;
  /** Sum of the plate's axle ratings, shown beside the plate because people mistake it for the plate. */
  readonly axleSumKg: Kilograms | null;
  /**
   * Share of the gross taken to rest on the hitch where axles, tires and the coupler's vertical rating are concerned:
   * the least that the hitch's band asks. 0 when the hitch is unknown.
   */
  readonly tongueShareAssumed: number;
  readonly trailerClass: TrailerClass | null;
}

/** A limit, and the gross mass at which it is reached. */
interface GrossAtLimit {
  readonly limit: Limit;
  readonly grossKg: number;
}

/**
 * Payload is the least of what plate, axles, tires, coupler leave after the empty mass.
 *
 * Plate and coupler rate the whole trailer, so theirs is exact. Axles and tires carry only what the hitch does not; how
 * much that is depends on where the load sits. Without a load we take the least share the hitch's band allows (10 % on
 * a bumper pull, 15 % on a gooseneck): a load sitting anywhere in the band then keeps within them. Taking no share at
 * all would set every lawful plate above its tires (four tires of 3,420 lb under a 14,000 lb plate) at odds with
 * itself; a load in a known place is judged by its real tongue in `loadCheck`.
 * What the law lets the axles carry counts with the ratings, never without them: it says nothing of what a trailer holds.
 * Tires are taken at the pressure the plate asks. `tires` are those fitted on the day.
 */
export function ratings(build: BuildSheet, tires: readonly Part[]): Ratings {
  return ratingsBy(loadLimits({ build, tires, coldPressures: new Map(), towVehicle: null }), build, tires);
}

/** The same, with the limits of this build and these tires, at the plate's pressure and behind no tow vehicle, at hand. */
export function ratingsBy(limits: LoadLimits, build: BuildSheet, tires: readonly Part[]): Ratings {
  const tongueShareAssumed = limits.hitchKnown ? limits.band.low : 0;
  const reached = grossAtLimits(limits, tongueShareAssumed);
  const held = reached.length === 0 ? [] : [...reached, ...legalGross(limits, tongueShareAssumed)];
  const least = held.reduce<GrossAtLimit | null>(
    (low, next) => (low === null || exceeds(low.grossKg, next.grossKg) ? next : low),
    null,
  );
  return {
    limits: [...allLimits(limits), ...legalRuns(fromFront(build)).map((run) => run.limit)],
    governing: least?.limit ?? null,
    grossKg: least === null ? null : kg(least.grossKg),
    payloadKg: least === null || limits.emptyKg === null ? null : kg(Math.max(0, least.grossKg - limits.emptyKg)),
    axleGroupKg: axleGroupCapacity(limits),
    axleSumKg: axleSum(build),
    tongueShareAssumed,
    trailerClass: trailerClass(build, tires),
  };
}

function fromFront({ axles }: BuildSheet): readonly Axle[] {
  return axles.toSorted((a, b) => a.number - b.number);
}

function grossAtLimits(limits: LoadLimits, tongueShare: number): readonly GrossAtLimit[] {
  const found: GrossAtLimit[] = [];
  const add = (limit: Limit | null, carriesN: number, share: number) => {
    if (limit !== null && share > 0) found.push({ limit, grossKg: massHeldUpBy(newtons(carriesN)) / share });
  };
  const addOwn = (limit: Limit | null, share: number) => add(limit, limit?.limitN ?? 0, share);
  addOwn(limits.plate, 1);
  addOwn(limits.coupler, 1);
  for (const { limit, groupN } of groupLimits(limits)) add(limit, groupN, 1 - tongueShare);
  addOwn(limits.couplerTongue, tongueShare);
  return found;
}

/** The gross at which each run of axles reaches its legal limit, the axles sharing alike as above. */
function legalGross({ legal, axles }: LoadLimits, tongueShare: number): readonly GrossAtLimit[] {
  return legal.map(({ limit, first, last }) => {
    const shareOfGross = ((1 - tongueShare) * (last - first + 1)) / axles.length;
    return { limit, grossKg: massHeldUpBy(limit.limitN) / shareOfGross };
  });
}

/**
 * What each limit of the axle group lets it carry. A tire holds every wheel of its axle to itself, and on springs that
 * share, every axle to its own: one weak tire sets the group. Torsion axles are taken level here.
 */
function groupLimits(limits: LoadLimits): readonly { readonly limit: Limit; readonly groupN: number }[] {
  const byTires = limits.axles.flatMap(({ wheels, tires }) =>
    tires.map((limit) => ({ limit, groupN: limit.limitN * wheels * limits.axles.length })),
  );
  return limits.axleGroup === null
    ? byTires
    : [{ limit: limits.axleGroup, groupN: limits.axleGroup.limitN }, ...byTires];
}

/** What the axles may carry together, each at its share and every tire at its wheel; null while none of it is known. */
export function axleGroupCapacity(limits: LoadLimits): Kilograms | null {
  const all = groupLimits(limits);
  return all.length === 0 ? null : massHeldUpBy(newtons(Math.min(...all.map((one) => one.groupN))));
}

function allLimits(limits: LoadLimits): readonly Limit[] {
  const { plate, axleGroup, axles, coupler, couplerTongue } = limits;
  return [
    plate,
    axleGroup,
    ...axles.map((axle) => axle.rated),
    ...axles.flatMap((axle) => axle.tires),
    coupler,
    couplerTongue,
  ].filter((limit) => limit !== null);
}
