import { type Newtons, newtons } from '../units/force.js';
import { millionRating } from './dynamic-rating.js';

/** A taper bearing by the number stamped on its cone, with its catalogue values. */
export interface RatedBearing {
  readonly cone: string;
  readonly cups: readonly string[];
  /** On the base of 1 million revolutions. */
  readonly millionN: Newtons;
  /** Ratio of radial to thrust rating on the C90 base. */
  readonly k: number;
  readonly e: number;
  readonly y: number;
  readonly source: RatingSource;
}

/**
 * `catalogue`: read from a maker's page. `series`: the book's row of the same series, one rating for all its bores;
 * K, e or Y may be from memory. `memory`: unverified, within about a tenth; a tenth of the rating is a third of the life.
 */
export type RatingSource = 'catalogue' | 'series' | 'memory';

/**
 * Cones usual in trailer hubs. Numbers are industry-common and mean the same bearing whoever made it; ratings differ
 * between makers by some percent.
 *
 * Sources. `catalogue`: a maker's catalogue page for the set. `series`: Budynas and Nisbett, Mechanical Engineering
 * Design, chapter 11, table of single-row taper bearings (typical rating, 90 million revolutions). `memory`: no source.
 */
export const RATED_BEARINGS: readonly RatedBearing[] = [
  // The page prints both bases; the exact one is taken: 45,500 N, 10,200 lbf rounded.
  row('L68149', ['L68110', 'L68111'], newtons(45_500), { k: 1.4, e: 0.42, y: 1.44 }, 'catalogue'),
  row('L44649', ['L44610'], fromNinety(newtons(7_210)), { k: 1.56, e: 0.37, y: 1.6 }, 'series'),
  row('15123', ['15245'], fromNinety(newtons(12_100)), { k: 1.67, e: 0.35, y: 1.71 }, 'series'),
  row('02475', ['02420'], fromNinety(newtons(15_300)), { k: 1.4, e: 0.42, y: 1.44 }, 'series'),
  row('LM67048', ['LM67010'], fromNinety(newtons(12_000)), { k: 1.42, e: 0.41, y: 1.46 }, 'memory'),
  row('14125A', ['14276'], fromNinety(newtons(12_900)), { k: 1.53, e: 0.38, y: 1.57 }, 'memory'),
  row('25580', ['25520'], fromNinety(newtons(20_900)), { k: 1.76, e: 0.33, y: 1.79 }, 'memory'),
  row('387A', ['382A'], fromNinety(newtons(23_100)), { k: 1.65, e: 0.35, y: 1.69 }, 'memory'),
];

const BY_CONE: ReadonlyMap<string, RatedBearing> = new Map(RATED_BEARINGS.map((bearing) => [bearing.cone, bearing]));

/** The bearing of a cone number as people write it: `l 44649`, `L-44649`. Null for one that is not in the table. */
export function ratedBearing(number: string): RatedBearing | null {
  return BY_CONE.get(number.toUpperCase().replace(/[^0-9A-Z]/g, '')) ?? null;
}

function row(
  cone: string,
  cups: readonly string[],
  millionN: Newtons,
  factors: Pick<RatedBearing, 'k' | 'e' | 'y'>,
  source: RatingSource,
): RatedBearing {
  return { cone, cups, millionN, ...factors, source };
}

function fromNinety(ninetyMillionN: Newtons): Newtons {
  return millionRating(ninetyMillionN);
}
