import type { TireMarks } from '../facts/part.js';
import { nominalDiameter, readTireSize } from './tire-size.js';

/** What tires that share a load should have in common. */
export const TIRE_TRAITS = [
  /** Another width, height or rim: another diameter, so one tire carries more and scrubs. */
  'size',
  /** Radial beside bias: they steer and flex differently. */
  'construction',
  'load-range',
  /** ST, LT, passenger or truck. */
  'kind',
  'age',
] as const;
export type TireTrait = (typeof TIRE_TRAITS)[number];

/** A fitted tire, with the day its week began where its code can be read. */
export interface FittedTire {
  readonly position: string;
  readonly marks: TireMarks;
  /** Days since 1 January 1970 of the Sunday of its week; null when the code says nothing. */
  readonly madeFrom: number | null;
}

export interface TireMismatch {
  readonly trait: TireTrait;
  readonly positions: readonly string[];
  /** As marked, one for each position: `ST235/80R16`, `E`. For `age` the date codes. */
  readonly marked: readonly string[];
}

/**
 * Tires made further apart than this, in days, are no longer a set on one axle. Two years: our choice, no source; the
 * older one has lost tread and softness that the newer has not.
 */
const AGE_SPREAD_DAYS = 730;

/** Sizes whose nominal diameters differ by less than this share count as one size: the same tire under two names. Our choice, under a worn tread's worth. */
const SAME_DIAMETER_SHARE = 0.005;

/**
 * In what the tires of one axle, or of one dual pair, do not match. A trait that some tire does not tell is compared
 * among those that do; one tire alone matches itself.
 * Same size, construction and load range on an axle: common practice, no source; no federal rule for trailers was found.
 */
export function tireMismatches(tires: readonly FittedTire[]): readonly TireMismatch[] {
  if (isMarkedAlike(tires) && ageSpread(tires) <= AGE_SPREAD_DAYS) return [];
  const found: TireMismatch[] = [];
  const compare = (trait: TireTrait, markOf: (tire: FittedTire) => string | null, differ = areDifferent) => {
    const told = tires.flatMap((tire) => {
      const mark = markOf(tire);
      return mark === null ? [] : [{ position: tire.position, mark }];
    });
    if (!differ(told.map((one) => one.mark))) return;
    found.push({ trait, positions: told.map((one) => one.position), marked: told.map((one) => one.mark) });
  };
  compare('size', ({ marks }) => written(marks.size), sizesDiffer);
  compare('construction', ({ marks }) =>
    marks.size === null ? null : (readTireSize(marks.size)?.construction ?? null),
  );
  compare('load-range', ({ marks }) => written(marks.loadRange));
  compare('kind', ({ marks }) => marks.kind);
  if (ageSpread(tires) > AGE_SPREAD_DAYS) compare('age', ({ marks }) => marks.dateCode, always);
  return found;
}

/** Letter by letter the same, as a set mostly is: then no marking need be read to see that they match. */
function isMarkedAlike(tires: readonly FittedTire[]): boolean {
  return tires.every(({ marks }) => {
    const { size, loadRange, kind } = (tires[0] as FittedTire).marks;
    return marks.size === size && marks.loadRange === loadRange && marks.kind === kind;
  });
}

/** Days between the oldest and the youngest tire whose code can be read; 0 with fewer than two. */
export function ageSpread(tires: readonly FittedTire[]): number {
  let oldest = Number.POSITIVE_INFINITY;
  let youngest = Number.NEGATIVE_INFINITY;
  for (const { madeFrom } of tires) {
    if (madeFrom === null) continue;
    oldest = Math.min(oldest, madeFrom);
    youngest = Math.max(youngest, madeFrom);
  }
  return Math.max(0, youngest - oldest);
}

/** By nominal diameter and rim where every size can be read, else by what is written. */
function sizesDiffer(sizes: readonly string[]): boolean {
  const read = sizes.map(readTireSize).filter((size) => size !== null);
  if (read.length < sizes.length) return areDifferent(sizes);
  const first = read[0];
  if (first === undefined) return false;
  const across = nominalDiameter(first);
  return read.some(
    (size) =>
      size.rimM !== first.rimM ||
      size.widthM !== first.widthM ||
      Math.abs(nominalDiameter(size) - across) > across * SAME_DIAMETER_SHARE,
  );
}

function areDifferent(marks: readonly string[]): boolean {
  return marks.some((mark) => mark !== marks[0]);
}

function always(marks: readonly string[]): boolean {
  return marks.length > 0;
}

function written(mark: string | null): string | null {
  const bare = mark?.toUpperCase().replaceAll(/\s/g, '') ?? '';
  return bare === '' ? null : bare;
}
