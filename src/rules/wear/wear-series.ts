import type { CivilDate } from '../calendar/civil-date.js';
import { median, theilSen } from '../statistics/theil-sen.js';
import type { WearKind } from './wear-quantity.js';

/** One measured value and where it stands: km or days since the series began. */
export interface WearReading {
  readonly on: CivilDate;
  readonly x: number;
  readonly value: number;
}

/** A reading that the trend does not rest on. */
export interface LeftOut extends WearReading {
  /**
   * `better-than-before`: wear does not heal, and the readings after it do not bear it out. `unconfirmed`: the same, with
   * none after it yet: a misreading, or a part swapped without a record. `far-off`: far from the line of all others.
   */
  readonly because: 'better-than-before' | 'unconfirmed' | 'far-off';
}

interface CleanSeries {
  readonly readings: readonly WearReading[];
  readonly leftOut: readonly LeftOut[];
  /** It began with a reading better than the one before: swapped, charged or adjusted, with no new part on record. */
  readonly setBackOn: CivilDate | null;
}

/** Fewer readings than this have no line of their own to be far off from. Theil–Sen stands up to one wrong of five. */
const LEAST_FOR_FAR_OFF = 5;
/** Deviations off that make a reading wrong: the usual 3.5 of the scaled median deviation (Iglewicz, Hoaglin 1993). */
const FAR_OFF = 3.5;
/** Standard deviation over median absolute deviation of a normal scatter. */
const DEVIATION_PER_MEDIAN = 1.4826;

/**
 * What a trend may rest on: the readings since the part was last set back, without those that are wrong. A reading better
 * than the one before by more than the gauge strays (two deviations of a difference) is a misreading or a swap. It counts
 * as a swap only once the next reading bears it out; until then the older, more worn trend stands, on the safe side.
 * Readings by day, one a day, of one part.
 */
export function cleanSeries(readings: readonly WearReading[], kind: WearKind): CleanSeries {
  const noise = 2 * Math.SQRT2 * kind.gauge;
  const better = (a: WearReading, b: WearReading) => (b.value - a.value) * kind.direction < -noise;
  let kept: WearReading[] = [];
  let leftOut: LeftOut[] = [];
  let setBackOn: CivilDate | null = null;
  for (const [place, reading] of readings.entries()) {
    const last = kept.at(-1);
    if (last === undefined || !better(last, reading)) {
      kept.push(reading);
      continue;
    }
    const next = readings[place + 1];
    const before = kept.at(-2);
    if (
      kind.canBeSetBack ||
      (next !== undefined && better(last, next) && (before === undefined || better(before, reading)))
    ) {
      kept = [reading];
      leftOut = [];
      setBackOn = reading.on;
    } else if (next === undefined) {
      leftOut.push({ ...reading, because: 'unconfirmed' });
    } else if (better(last, next)) {
      // Two in a row are better than one that the reading before it contradicts: that one was wrong.
      kept.pop();
      leftOut.push({ ...last, because: 'far-off' });
      kept.push(reading);
    } else {
      leftOut.push({ ...reading, because: 'better-than-before' });
    }
  }
  const { near, far } = withoutFarOff(kept, kind.gauge);
  return { readings: near, leftOut: [...leftOut, ...far].sort((a, b) => a.x - b.x), setBackOn };
}

/** The newest reading is never put aside here: what looks far off may be the first of something new. */
function withoutFarOff(
  readings: readonly WearReading[],
  gauge: number,
): { readonly near: readonly WearReading[]; readonly far: readonly LeftOut[] } {
  const nothing = { near: readings, far: [] };
  if (readings.length < LEAST_FOR_FAR_OFF) return nothing;
  const line = theilSen(readings.slice(-MOST_COMPARED).map(({ x, value }) => ({ x, y: value })));
  if (line === null) return nothing;
  const off = readings.map(({ x, value }) => Math.abs(value - line.intercept - line.slope * x));
  const reach = FAR_OFF * Math.max(gauge, DEVIATION_PER_MEDIAN * median(off));
  if (!off.some((each) => each > reach)) return nothing;
  const newest = readings.length - 1;
  const isFar = (place: number) => place !== newest && (off[place] as number) > reach;
  return {
    near: readings.filter((_, place) => !isFar(place)),
    far: readings.flatMap((reading, place) => (isFar(place) ? [{ ...reading, because: 'far-off' as const }] : [])),
  };
}

/** Pairs grow with the square of readings; older ones than these say little of where the line goes. */
const MOST_COMPARED = 40;
