import { type Newtons, newtons, weightOf } from '../units/force.js';
import { type Metres, metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { Boundary } from './boundary.js';
import type { Bounds } from './envelope.js';

/** A machine to be parked, and what rides along and stays where it is. */
export interface Parking {
  readonly massKg: Kilograms;
  readonly alongside: readonly { readonly massKg: Kilograms; readonly fromCouplerM: Metres }[];
  /** Where the machine's own balance point may lie: the deck less what sticks out ahead of and behind it. */
  readonly fromM: Metres;
  readonly toM: Metres;
}

/** How much of one limit is left, as a share of it; negative when it is passed. */
export interface ShareLeft {
  readonly boundary: Boundary;
  readonly share: number;
}

export interface BestPlace {
  readonly balancePointM: Metres;
  /** The limit with least left there, among those that depend on the place. */
  readonly tightest: ShareLeft;
  /** The limit with least left of all: one such as the plate no place can mend. */
  readonly tightestOfAll: ShareLeft;
  /** From where to where every limit that depends on the place holds; null when none does. */
  readonly inside: { readonly fromM: Metres; readonly toM: Metres } | null;
}

/** What is left of a boundary, as a share of what it rates, over the place x of the machine: atZero + perM · x. */
interface Line {
  readonly boundary: Boundary;
  readonly atZero: number;
  readonly perM: number;
}

/**
 * The place at which the tightest limit has most left, as a share of that limit. What is left of each limit is a
 * straight line in the machine's place, so the best place is one end of the range or a crossing of two such lines; all
 * are tried. Limits that no place changes (plate, coupler) are left out of the choice and told in `tightestOfAll`.
 *
 * What a limit's share is taken of: a rating itself; for the tongue's band, the tongue that its end asks for at this
 * gross weight, so that between its two ends the choice falls at 12 % of a band of 10 to 15.
 * Null when no limit depends on the place, or the machine does not fit between the ends it was given.
 */
export function bestPlace(bounds: Bounds, emptyN: Newtons, parking: Parking): BestPlace | null {
  const { fromM, toM } = parking;
  if (!(fromM <= toM)) return null;
  const lines = bounds.boundaries.flatMap((boundary) => lineOf(boundary, parking, emptyN));
  const turning = lines.filter((line) => line.perM !== 0);
  if (turning.length === 0) return null;

  let bestM = fromM;
  let most = tightestAt(turning, bestM).share;
  for (const place of candidates(turning, fromM, toM)) {
    const { share } = tightestAt(turning, place);
    if (share > most) {
      most = share;
      bestM = place;
    }
  }
  return {
    balancePointM: bestM,
    tightest: tightestAt(turning, bestM),
    tightestOfAll: tightestAt(lines, bestM),
    inside: insideRange(turning, fromM, toM),
  };
}

/** What every limit has left with the machine's balance point there, least first. */
export function sharesLeftAt(bounds: Bounds, emptyN: Newtons, parking: Parking, placeM: Metres): readonly ShareLeft[] {
  return bounds.boundaries
    .flatMap((boundary) => lineOf(boundary, parking, emptyN))
    .map((line) => ({ boundary: line.boundary, share: line.atZero + line.perM * placeM }))
    .sort((a, b) => a.share - b.share);
}

/** Two lines cross where what is left of both is the same. */
function candidates(lines: readonly Line[], fromM: Metres, toM: Metres): readonly Metres[] {
  const places: Metres[] = [fromM, toM];
  for (const [index, a] of lines.entries()) {
    for (let other = index + 1; other < lines.length; other++) {
      const b = lines[other] as Line;
      const place = (b.atZero - a.atZero) / (a.perM - b.perM);
      if (place > fromM && place < toM) places.push(metres(place));
    }
  }
  return places;
}

function tightestAt(lines: readonly Line[], placeM: Metres): ShareLeft {
  let tightest: ShareLeft | null = null;
  for (const { boundary, atZero, perM } of lines) {
    const share = atZero + perM * placeM;
    if (tightest === null || share < tightest.share) tightest = { boundary, share };
  }
  return tightest as ShareLeft;
}

function insideRange(lines: readonly Line[], fromM: Metres, toM: Metres): BestPlace['inside'] {
  let least: number = fromM;
  let most: number = toM;
  for (const { atZero, perM } of lines) {
    const crossesAt = -atZero / perM;
    if (perM > 0) least = Math.max(least, crossesAt);
    else most = Math.min(most, crossesAt);
  }
  return least <= most ? { fromM: metres(least), toM: metres(most) } : null;
}

function lineOf(boundary: Boundary, { massKg, alongside }: Parking, emptyN: Newtons): readonly Line[] {
  let cargoN: number = weightOf(massKg);
  let besidesNm = 0;
  for (const item of alongside) {
    cargoN += weightOf(item.massKg);
    besidesNm += weightOf(item.massKg) * item.fromCouplerM;
  }
  const wholeN = wholeOf(boundary, newtons(emptyN + cargoN));
  if (wholeN === null || !(wholeN > 0)) return [];
  const usedN = boundary.perWeight * cargoN + boundary.perMoment * besidesNm;
  return [
    {
      boundary,
      atZero: (boundary.mostN - usedN) / wholeN,
      perM: (-boundary.perMoment * weightOf(massKg)) / wholeN,
    },
  ];
}

/** What a boundary's share is taken of, N; null where it rates nothing. */
function wholeOf({ limit, grossShare }: Boundary, grossN: Newtons): Newtons | null {
  return limit?.limitN ?? (grossShare === null ? null : newtons(grossShare * grossN));
}
