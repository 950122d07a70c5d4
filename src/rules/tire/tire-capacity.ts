import type { TireMarks } from '../facts/part.js';
import { exceeds } from '../units/compare.js';
import { type Kilograms, kg } from '../units/mass.js';
import { type Kilopascals, kPa } from '../units/pressure.js';
import { loadIndexCapacity } from './load-index.js';
import { type TireLoadRow, tireLoadRows } from './tire-load-table.js';

/** How a wheel is mounted: alone on its side of the axle, or as one of a pair. */
export type Mounting = 'single' | 'dual';

/** What one tire may carry at one cold pressure. */
export type TireCapacity =
  | {
      readonly kind: 'known';
      readonly massKg: Kilograms;
      readonly origin: 'tire-sidewall' | 'load-index' | 'tire-table';
      /** The pressure of the rating or table row used; null where the sidewall's pressure is not known. */
      readonly atKpa: Kilopascals | null;
    }
  | { readonly kind: 'unknown'; readonly lacks: CapacityLack };

/**
 * Why a capacity cannot be said.
 * `max-load`: neither marked nor to be had from a load index. `dual-max-load`: the same, for a tire mounted dual.
 * `max-pressure`: nobody said at which pressure the marked load holds.
 * `published-row`: softer than the sidewall's pressure, and no published row for this size, kind and mounting.
 * `row-this-low`: softer than the lowest published row.
 */
export type CapacityLack = 'max-load' | 'dual-max-load' | 'max-pressure' | 'published-row' | 'row-this-low';

/**
 * A passenger tire's load is divided by this when it carries a trailer.
 * Source: 49 CFR 571.110 S4.2.2.2 and 571.120 S5.1.2.
 */
const PASSENGER_ON_TRAILER = 1.1;

/**
 * Pressures closer than this read as equal, kPa (0.15 psi). Finer than any tire gauge's marks, so that a pressure kept
 * in whole kilopascals reads as the psi it was; worth under 0.3 % of load.
 */
const SAME_PRESSURE_KPA = 1;

/**
 * A stamped load this close below the table's, as a share, is the same rating rounded another way
 * (load index 117 is 2,833 lb where the table prints 2,840). Our choice.
 */
const SAME_RATING_SHARE = 0.01;

/**
 * The greatest load of a tire as its sidewall has it: the marked load, else that of its load index; a passenger tire's
 * divided by 1.10. Null when neither is known.
 */
export function tireRating(
  marks: TireMarks,
  mounting: Mounting,
): { readonly massKg: Kilograms; readonly origin: 'tire-sidewall' | 'load-index' } | null {
  const marked = mounting === 'single' ? marks.maxLoadSingleKg : marks.maxLoadDualKg;
  const index = mounting === 'single' ? marks.loadIndexSingle : marks.loadIndexDual;
  const massKg = marked ?? (index === null ? null : loadIndexCapacity(index));
  if (massKg === null) return null;
  return {
    massKg: isPassenger(marks) ? kg(massKg / PASSENGER_ON_TRAILER) : massKg,
    origin: marked === null ? 'load-index' : 'tire-sidewall',
  };
}

/**
 * What a tire may carry at a cold gauge pressure; `coldKpa` null means "at the pressure its sidewall asks".
 *
 * At or above the sidewall's pressure: the sidewall's load, never more. Below it: the published row of its size at or
 * next below that pressure (rows are not interpolated), never above the sidewall. Where no row is published the answer
 * is unknown: load against pressure differs by kind of tire, and a guess here carries people.
 * Law behind it: 49 CFR 393.75(g) (load not above the sidewall or the published table) and (i)(1) (cold pressure not
 * below that for the load carried).
 */
export function tireCapacity(marks: TireMarks, mounting: Mounting, coldKpa: Kilopascals | null): TireCapacity {
  const rows = mounting === 'single' ? publishedRows(marks) : null;
  const rated = tireRating(marks, mounting);
  if (rated === null) return capacityOfLoadRange(marks, mounting, rows, coldKpa);

  const ratedAtKpa = marks.maxColdPressureKpa;
  if (coldKpa === null || (ratedAtKpa !== null && coldKpa >= ratedAtKpa - SAME_PRESSURE_KPA)) {
    return { kind: 'known', massKg: rated.massKg, origin: rated.origin, atKpa: ratedAtKpa };
  }
  if (rows === null) return { kind: 'unknown', lacks: ratedAtKpa === null ? 'max-pressure' : 'published-row' };
  const row = rowAtOrBelow(rows, coldKpa);
  if (row === null) return { kind: 'unknown', lacks: 'row-this-low' };
  const carried = row.loadKg * shareOfTable(rows, rated.massKg, ratedAtKpa);
  return carried < rated.massKg
    ? { kind: 'known', massKg: kg(carried), origin: 'tire-table', atKpa: row.pressureKpa }
    : { kind: 'known', massKg: rated.massKg, origin: rated.origin, atKpa: ratedAtKpa };
}

/** The cold pressure a load asks of a tire. */
export type PressureNeeded =
  /** The least pressure of a published row, or of the sidewall, at which the tire carries it. */
  | {
      readonly kind: 'known';
      readonly coldKpa: Kilopascals;
      readonly origin: 'tire-sidewall' | 'load-index' | 'tire-table';
    }
  /** No pressure carries it. */
  | { readonly kind: 'too-heavy'; readonly mostKg: Kilograms }
  | { readonly kind: 'unknown'; readonly lacks: CapacityLack };

/**
 * The least cold gauge pressure that is known to carry a load on one tire: that of the lowest published row that does,
 * else the sidewall's own. Rows are not interpolated, so it errs on the full side; what the plate asks comes first.
 * Source of the duty: 49 CFR 393.75(i)(1).
 */
export function pressureNeeded(marks: TireMarks, mounting: Mounting, loadKg: Kilograms): PressureNeeded {
  const full = tireCapacity(marks, mounting, null);
  if (full.kind === 'unknown') return full;
  if (exceeds(loadKg, full.massKg)) return { kind: 'too-heavy', mostKg: full.massKg };
  const rows = mounting === 'single' ? (publishedRows(marks) ?? []) : [];
  for (const { pressureKpa } of rows) {
    const capacity = tireCapacity(marks, mounting, pressureKpa);
    if (capacity.kind === 'known' && !exceeds(loadKg, capacity.massKg)) {
      // A row above the sidewall's pressure is not asked of the tire: its own is enough.
      const coldKpa = full.atKpa === null || pressureKpa < full.atKpa ? pressureKpa : full.atKpa;
      return { kind: 'known', coldKpa, origin: capacity.origin };
    }
  }
  return full.atKpa === null
    ? { kind: 'unknown', lacks: 'max-pressure' }
    : { kind: 'known', coldKpa: full.atKpa, origin: full.origin };
}

/** With no load marked, the load range says which row is this tire's greatest; without that a weak tire pumped hard would read as a strong one. */
function capacityOfLoadRange(
  marks: TireMarks,
  mounting: Mounting,
  rows: readonly TireLoadRow[] | null,
  coldKpa: Kilopascals | null,
): TireCapacity {
  const top = rows?.find((row) => row.loadRange === marks.loadRange?.trim().toUpperCase());
  if (rows === null || top === undefined) {
    return { kind: 'unknown', lacks: mounting === 'single' ? 'max-load' : 'dual-max-load' };
  }
  const row = coldKpa === null ? top : rowAtOrBelow(rows, kPa(Math.min(coldKpa, top.pressureKpa)));
  if (row === null) return { kind: 'unknown', lacks: 'row-this-low' };
  return { kind: 'known', massKg: row.loadKg, origin: 'tire-table', atKpa: row.pressureKpa };
}

/** Below 1 when the sidewall promises less than the table does at the sidewall's own pressure: then it carries less all the way down. */
function shareOfTable(rows: readonly TireLoadRow[], ratedKg: Kilograms, ratedAtKpa: Kilopascals | null): number {
  const row = ratedAtKpa === null ? null : rowAtOrBelow(rows, ratedAtKpa);
  if (row === null) return 1;
  const share = ratedKg / row.loadKg;
  return share >= 1 - SAME_RATING_SHARE ? 1 : share;
}

function rowAtOrBelow(rows: readonly TireLoadRow[], coldKpa: Kilopascals): TireLoadRow | null {
  return rows.findLast((row) => row.pressureKpa <= coldKpa + SAME_PRESSURE_KPA) ?? null;
}

/** The table holds for ST tires only, so a size that may be something else reads no row. */
function publishedRows(marks: TireMarks): readonly TireLoadRow[] | null {
  const size = marks.size?.toUpperCase().replaceAll(/\s/g, '') ?? '';
  const bare = /^(ST)?(\d{3}\/\d{2}R\d{2})(?![\d.])/.exec(size);
  if (bare === null || (marks.kind !== 'ST' && (marks.kind !== null || bare[1] === undefined))) return null;
  return tireLoadRows(`ST${bare[2]}`);
}

function isPassenger(marks: TireMarks): boolean {
  return marks.kind === 'passenger' || (marks.kind === null && /^\s*P\d/i.test(marks.size ?? ''));
}
