import type { CivilDate } from '../calendar/civil-date.js';
import { dayFromNumber } from '../calendar/day-number.js';

/** How one answer was worked out: what went in, by which formula, from which source, and which input it hangs on most. */
export interface Working {
  readonly of: WorkingOf;
  /** Which one, where there are several: an axle number, a wheel position, a check kind's id. */
  readonly subject: string | null;
  readonly value: number | CivilDate;
  readonly unit: WorkingUnit;
  readonly inputs: readonly WorkingInput[];
  readonly formula: string;
  readonly source: string;
  /** Place in `inputs` of the one whose doubt moves the answer furthest; null when none of them moves it. */
  readonly mattersMost: number | null;
}

export interface WorkingInput {
  readonly name: InputName;
  /** Which one, where there are several: the name of a cargo item, an axle number. */
  readonly subject: string | null;
  readonly value: number | CivilDate;
  readonly unit: WorkingUnit;
  readonly basis: Basis;
  /** How far the answer moves, in its own unit (days for a day), when this input alone is off by its doubt. */
  readonly sway: number;
}

export type WorkingOf =
  | 'payload'
  | 'gross'
  | 'tongue'
  | 'axle-group'
  | 'margin'
  | 'due'
  | 'wear'
  | 'deck-life'
  | 'hub-life'
  | 'plank';

export const INPUT_NAMES = [
  'empty-mass',
  'empty-tongue',
  'cargo',
  'balance-point',
  'axle-centre',
  'scale-gross',
  'scale-tongue',
  'scale-axle',
  'rating',
  'tongue-share',
  'hitch-height',
  'level-height',
  'cargo-place',
  'spring-rate',
  'off-centre',
  'last-done',
  'interval',
  'used',
  'use-a-day',
  'harsh-factor',
  'reading',
  'wear-rate',
  'wear-limit',
  'life-scale',
  'age',
  'strength',
  'contact-load',
  'plank-thickness',
  'span',
  'hub-load',
  'rated-life',
  'travelled',
] as const;
export type InputName = (typeof INPUT_NAMES)[number];

export type WorkingUnit =
  | 'kg'
  | 'N'
  | 'N/m'
  | 'm'
  | 'mm'
  | 'km'
  | 'km/day'
  | `${'mm' | 'V' | 'A'}/${'1000 km' | 'year'}`
  | 'kPa'
  | 'V'
  | 'A'
  | 'days'
  | 'months'
  | 'years'
  | 'trips'
  | 'share'
  | 'none'
  /** A day of the calendar. */
  | 'day';

/**
 * How an input is known. `measured`: by a scale, a gauge, a rule. `stated`: a brochure or somebody's word. `assumed`:
 * nobody said. `rated`: a plate, a sidewall, a maker. `published`: a table. `setting`: what the yard has chosen.
 */
export type Basis = 'measured' | 'stated' | 'assumed' | 'rated' | 'published' | 'setting';

/**
 * How far an input may be off, as a share of it. Our choice: half a per cent for what was measured, a brochure's three
 * per cent (as in `weighFirstShare`), a tenth for a guess. A rating, a table row and a setting are what they are.
 */
const DOUBT: Readonly<Record<Basis, number>> = {
  measured: 0.005,
  stated: 0.03,
  assumed: 0.1,
  rated: 0,
  published: 0,
  setting: 0,
};

/** A sum to be shown: `base` holds every input, `compute` works the answer out, each leaf can be put to another value. */
export interface Sum<Base> {
  readonly of: WorkingOf;
  readonly subject: string | null;
  readonly unit: WorkingUnit;
  readonly formula: string;
  readonly source: string;
  readonly base: Base;
  /** Null when it cannot be worked out. A day counts as its day number. */
  readonly compute: (base: Base) => number | null;
  readonly leaves: readonly Leaf<Base>[];
}

export interface Leaf<Base> {
  readonly name: InputName;
  readonly subject?: string | null;
  readonly value: number;
  readonly unit: WorkingUnit;
  readonly basis: Basis;
  /** How far it may be off, in its own unit, where that is known better than `DOUBT` says. */
  readonly doubt?: number;
  readonly put: (base: Base, value: number) => Base;
}

/** Works a sum out and tries each input a little lower and higher; null when there is no answer to explain. */
export function workOut<Base>(sum: Sum<Base>): Working | null {
  const { of, subject, unit, formula, source, base, compute, leaves } = sum;
  const value = compute(base);
  if (value === null) return null;
  const inputs = leaves.map((leaf) => ({ ...shown(leaf), sway: swayOf(leaf, sum) }));
  return { of, subject, value: inUnit(value, unit), unit, inputs, formula, source, mattersMost: furthest(inputs) };
}

function shown<Base>({ name, subject, value, unit, basis }: Leaf<Base>): Omit<WorkingInput, 'sway'> {
  return { name, subject: subject ?? null, value: inUnit(value, unit), unit, basis };
}

function swayOf<Base>(leaf: Leaf<Base>, { base, compute }: Sum<Base>): number {
  const doubt = leaf.doubt ?? Math.abs(leaf.value) * DOUBT[leaf.basis];
  if (doubt === 0) return 0;
  const low = compute(leaf.put(base, leaf.value - doubt));
  const high = compute(leaf.put(base, leaf.value + doubt));
  return low === null || high === null ? 0 : Math.abs(high - low) / 2;
}

function inUnit(value: number, unit: WorkingUnit): number | CivilDate {
  return unit === 'day' ? dayFromNumber(Math.round(value)) : value;
}

function furthest(inputs: readonly WorkingInput[]): number | null {
  let place: number | null = null;
  inputs.forEach(({ sway }, index) => {
    if (sway > (place === null ? 0 : (inputs[place]?.sway ?? 0))) place = index;
  });
  return place;
}
