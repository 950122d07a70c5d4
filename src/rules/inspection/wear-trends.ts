import type { CivilDate } from '../calendar/civil-date.js';
import { dayFromNumber, dayNumber } from '../calendar/day-number.js';
import type { CheckRecord } from '../facts/check.js';
import type { Part } from '../facts/part.js';
import { partsOn } from '../facts/parts-on.js';
import { order } from '../history/order.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { lawOnMeasure, passesWear } from '../law/wear.js';
import { parseWheelPosition } from '../trailer/wheel-positions.js';
import { type Kilometres, km as kilometres } from '../units/distance.js';
import { type LimitPlace, placeOfLimit, type WearLine, wearLine } from '../wear/wear-line.js';
import {
  practiceLimit,
  WEAR_KINDS,
  WEAR_QUANTITIES,
  type WearKind,
  type WearLimit,
  type WearQuantity,
} from '../wear/wear-quantity.js';
import { cleanSeries, type LeftOut, type WearReading } from '../wear/wear-series.js';
import type { UseSoFar } from './use-so-far.js';

/** How one part wears, from what was measured on it since it was fitted. */
export interface WearTrend {
  /** Quantity and place, and for batteries which: stays the same from reading to reading. */
  readonly key: string;
  readonly quantity: WearQuantity;
  /** As on the check sheet; null where none was written. */
  readonly position: string | null;
  readonly partId: string | null;
  /** Day from which places are counted: the fitting, or the first reading where that is unknown. */
  readonly since: CivilDate;
  /** What places are: km driven or days passed since then. */
  readonly by: 'distance' | 'days';
  /** Readings the trend rests on, in the order of time. */
  readonly readings: readonly WearReading[];
  readonly leftOut: readonly LeftOut[];
  /** It reads better from this day on and no new part is on record: swapped, charged or adjusted. */
  readonly setBackOn: CivilDate | null;
  /** The newest reading, whether the trend rests on it or not. */
  readonly latest: WearReading;
  readonly limit: WearLimit | null;
  /** The newest reading is past the limit. */
  readonly isPast: boolean;
  /** Null while nothing says how fast it wears. */
  readonly line: WearLine | null;
  readonly toLimit: ToLimit;
}

/**
 * Days by which a limit is reached with a chance of 10, 50 and 90 %, the spread of use to come taken in. Null beyond ten
 * years, or where no use is known.
 */
export interface ReachedOn {
  readonly early: CivilDate | null;
  readonly middle: CivilDate | null;
  readonly late: CivilDate | null;
}

/** When the limit will be reached, or why that cannot be said. */
type ToLimit =
  | {
      readonly kind: 'reached-by';
      /** Chance of 10, 50 and 90 %. Km still to go from the last day whose distance is known; null for what passes by days. */
      readonly km: { readonly early: Kilometres; readonly middle: Kilometres; readonly late: Kilometres } | null;
      readonly on: ReachedOn;
      /** Most of it is usual wear, not this part's own: few readings. */
      readonly leansOnUsualWear: boolean;
    }
  | { readonly kind: 'past' }
  | {
      readonly kind: 'refused';
      /** `no-limit`: none holds for all makes. `one-reading`: and no usual wear to go by. `no-slope`: wear cannot be told from scatter. */
      readonly because: 'no-limit' | 'one-reading' | 'no-slope';
    };

/** From this share of usual wear on, the readings are said to be too few. Our choice. */
const LEANS_FROM = 0.5;

/**
 * The wear of every part that was measured: tread, linings, magnets, battery, end play, chains. Of several readings of one
 * part on a day the most worn counts (the lowest groove). Rests on facts and on the use to come, which change on days that
 * `wakeOn` sees anyway.
 */
export function wearTrends(trailer: TrailerOn, use: UseSoFar): readonly WearTrend[] {
  const measured = measuredOn(trailer);
  if (measured.size === 0) return [];
  return [...measured.values()]
    .map((series) => trendOf(series, trailer, use))
    .filter((trend) => trend !== null)
    .sort((a, b) => order(a.key, b.key));
}

interface Measured {
  readonly key: string;
  readonly quantity: WearQuantity;
  readonly position: string | null;
  /** The most worn value of each day, days in order. */
  readonly byDay: Map<CivilDate, number>;
}

const IS_WEAR: ReadonlySet<string> = new Set(WEAR_QUANTITIES);

/** A trailer with a power unit has two batteries; this check reads that unit's. */
const POWER_UNIT_CHECK = 'power-unit';

function measuredOn({ records, facts }: TrailerOn): ReadonlyMap<string, Measured> {
  const measured = new Map<string, Measured>();
  const powerUnit = facts.checkKinds.find((kind) => kind.code === POWER_UNIT_CHECK)?.id ?? null;
  for (const record of records) {
    for (const line of record.lines) {
      if (line.measured === null || !IS_WEAR.has(line.measured.quantity)) continue;
      const quantity = line.measured.quantity as WearQuantity;
      const key = keyOf(quantity, line.position, record, powerUnit);
      let series = measured.get(key);
      if (series === undefined) {
        series = { key, quantity, position: line.position, byDay: new Map() };
        measured.set(key, series);
      }
      const { direction } = WEAR_KINDS[quantity];
      const before = series.byDay.get(record.doneOn);
      const { value } = line.measured;
      if (before === undefined || (value - before) * direction > 0) series.byDay.set(record.doneOn, value);
    }
  }
  return measured;
}

function keyOf(quantity: WearQuantity, position: string | null, record: CheckRecord, powerUnit: string | null): string {
  const ofPowerUnit = quantity === 'battery-v' && record.checkKindId === powerUnit;
  return `${quantity}:${position ?? ''}${ofPowerUnit ? POWER_UNIT_CHECK : ''}`;
}

function trendOf(measured: Measured, trailer: TrailerOn, use: UseSoFar): WearTrend | null {
  const { key, quantity, position } = measured;
  const kind = WEAR_KINDS[quantity];
  const part = partAt(kind, position, trailer);
  const limitFrom = (first: number) => lawLimit(measured, trailer) ?? practiceLimit(kind, first);
  const sinceFitted = ofPart(measured.byDay, part, limitFrom);
  const firstOn = sinceFitted[0]?.[0];
  const latestOn = sinceFitted.at(-1);
  if (firstOn === undefined || latestOn === undefined) return null;
  const by = kind.by === 'distance' && use.travelled.known ? 'distance' : 'days';
  const fittedOn = part?.fittedOn ?? firstOn;
  const placeOn = placesSince(fittedOn, by, use);
  const readings = sinceFitted.map(([on, value]) => ({ on, x: placeOn(on), value }));
  const clean = cleanSeries(readings, kind);
  const limit = limitFrom(clean.readings[0]?.value ?? latestOn[1]);
  const line = wearLine(clean.readings, kind, by);
  const latest = readings.at(-1) as WearReading;
  const past = limit !== null && !passesWear(limit, latest.value);
  return {
    ...{ key, quantity, position, partId: part?.id ?? null, since: fittedOn, by },
    ...clean,
    ...{ latest, limit, isPast: past, line },
    toLimit: past ? { kind: 'past' } : toLimit({ line, limit, kind, by, placeOn, since: fittedOn, use }),
  };
}

function lawLimit({ quantity, position }: Measured, { build }: TrailerOn): WearLimit | null {
  const place = position === null ? null : parseWheelPosition(position);
  const axle = place?.kind === 'axle' ? build?.axles.find(({ number }) => number === place.axle) : undefined;
  const law = lawOnMeasure(quantity, axle?.brakes ?? null);
  return law === null ? null : { ...law, origin: 'law' };
}

/** The part that is there now. Without a position it may be any: what was measured before the newest came on says nothing. */
function partAt({ part: kind }: WearKind, position: string | null, { facts, asOf }: TrailerOn): Part | null {
  if (kind === null) return null;
  const fitted = partsOn(facts.parts, kind, asOf);
  const there = fitted.filter((part) => part.position === position || position === null || part.position === null);
  return there.toSorted((a, b) => order(a.fittedOn ?? '', b.fittedOn ?? '') || order(a.id, b.id)).at(-1) ?? null;
}

/** Readings of the part there now. One taken on the day of fitting that is past its limit was of the part that came off. */
function ofPart(
  byDay: Measured['byDay'],
  part: Part | null,
  limitFrom: (first: number) => WearLimit | null,
): readonly (readonly [CivilDate, number])[] {
  const fittedOn = part?.fittedOn ?? null;
  const days = [...byDay].sort(([a], [b]) => order(a, b));
  if (fittedOn === null) return days;
  return days.filter(([on, value]) => {
    if (on !== fittedOn) return on > fittedOn;
    const limit = limitFrom(value);
    return limit === null || passesWear(limit, value);
  });
}

function placesSince(since: CivilDate, by: 'distance' | 'days', { travelled }: UseSoFar): (on: CivilDate) => number {
  const start = dayNumber(since);
  if (by === 'days') return (on) => dayNumber(on) - start;
  return (on) => travelled.between(start, dayNumber(on));
}

interface LimitCase {
  readonly line: WearLine | null;
  readonly limit: WearLimit | null;
  readonly kind: WearKind;
  readonly by: 'distance' | 'days';
  readonly placeOn: (on: CivilDate) => number;
  readonly since: CivilDate;
  readonly use: UseSoFar;
}

function toLimit(one: LimitCase): ToLimit {
  const { line, limit, kind, by } = one;
  if (limit === null) return { kind: 'refused', because: 'no-limit' };
  if (line === null) return { kind: 'refused', because: 'one-reading' };
  const place = placeOfLimit(line, limit, kind.direction);
  if (place === null) return { kind: 'refused', because: 'no-slope' };
  const leansOnUsualWear = line.priorShare >= LEANS_FROM;
  if (by === 'days') return { kind: 'reached-by', km: null, on: daysOf(place, one.since), leansOnUsualWear };
  return { kind: 'reached-by', ...roadTo(place, one), leansOnUsualWear };
}

/** Days from the fitting past which no day is named: a date after the year 9999 would be none. */
const MOST_DAYS = 36_525;

function daysOf({ early, middle, late }: LimitPlace, since: CivilDate) {
  const start = dayNumber(since);
  const dayAt = (days: number) => (days > MOST_DAYS ? null : dayFromNumber(start + Math.floor(days)));
  return { early: dayAt(early), middle: dayAt(middle), late: dayAt(late) };
}

/**
 * Km and days to the limit. Wear and use stray apart from each other, so their strays in days add up as squares: the
 * early day lies before the middle one by the root of (early wear at middling use)² + (middling wear at brisk use)².
 */
function roadTo({ early, middle, late }: LimitPlace, { placeOn, since, use }: LimitCase) {
  const { toCome, travelled } = use;
  const driven = placeOn(dayFromNumber(toCome.from));
  const left = (place: number) => kilometres(Math.max(0, place - driven));
  const reaching = (place: number, chance: number): number | null =>
    place <= driven
      ? travelled.dayReaching(dayNumber(since), kilometres(Math.max(0, place)))
      : (toCome.dayReaching(left(place), toCome.from, chance)?.day ?? null);
  const km = { early: left(early), middle: left(middle), late: left(late) };
  const day = reaching(middle, 0.5);
  // Ten years off there is nothing to plan, and a walk that far for each end costs the most.
  if (day === null) return { km, on: { early: null, middle: null, late: null } };
  const stray = (byWear: number | null, byUse: number | null) =>
    byWear === null || byUse === null ? null : Math.ceil(Math.hypot(byWear - day, byUse - day));
  const before = stray(reaching(early, 0.5), reaching(middle, 0.1));
  const after = stray(reaching(late, 0.5), reaching(middle, 0.9));
  return {
    km,
    on: {
      early: before === null ? null : dayFromNumber(day - before),
      middle: dayFromNumber(day),
      late: after === null ? null : dayFromNumber(day + after),
    },
  };
}
