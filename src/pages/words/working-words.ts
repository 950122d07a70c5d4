import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Basis, InputName, Working, WorkingInput, WorkingOf, WorkingUnit } from '../../rules/explain/working.js';
import type { LimitKind } from '../../rules/load/limit.js';
import { km, miles } from '../../rules/units/distance.js';
import { newtons } from '../../rules/units/force.js';
import { inch, metres, toInch } from '../../rules/units/length.js';
import { kg } from '../../rules/units/mass.js';
import { kPa } from '../../rules/units/pressure.js';
import type { WearQuantity } from '../../rules/wear/wear-quantity.js';
import {
  showDate,
  showDistance,
  showForce,
  showLength,
  showMass,
  showNumber,
  showPressure,
  showShare,
} from '../components/show-quantity.js';
import { positionWords } from './build-words.js';
import { limitWords } from './limit-words.js';
import { wearTitle } from './wear-words.js';

const WORKING_WORDS: Readonly<Record<WorkingOf, string>> = {
  payload: 'Payload left for cargo',
  gross: 'Trailer and load together',
  tongue: 'On the tongue',
  'axle-group': 'On the axles',
  margin: 'Left to the limit',
  due: 'When it falls due',
  wear: 'When it wears to its limit',
  'deck-life': 'How long the deck may last',
  'hub-life': 'Bearing life used',
  plank: 'In one plank',
};

const INPUT_WORDS: Readonly<Record<InputName, string>> = {
  'empty-mass': 'Empty trailer',
  'empty-tongue': 'Tongue weight when empty',
  cargo: 'On the deck',
  'balance-point': 'Balance point behind the coupler',
  'axle-centre': 'Middle of the axles behind the coupler',
  'scale-gross': 'Ticket, whole trailer',
  'scale-tongue': 'Ticket, tongue',
  'scale-axle': 'Ticket, axle',
  rating: 'Rating',
  'tongue-share': 'Share taken to rest on the hitch',
  'hitch-height': 'Coupler height as it rode',
  'level-height': 'Coupler height at which it is level',
  'cargo-place': 'Behind the coupler',
  'spring-rate': 'Spring rate of an axle',
  'off-centre': 'Load off the middle line',
  'last-done': 'Last done',
  interval: 'Interval',
  used: 'Used since',
  'use-a-day': 'Usual use a day',
  'harsh-factor': 'Harsh service factor',
  reading: 'Last reading',
  'wear-rate': 'Wear',
  'wear-limit': 'Limit',
  'life-scale': 'Life expected beforehand',
  age: 'Age',
  strength: 'Strength allowed',
  'contact-load': 'Under one wheel, track or pad',
  'plank-thickness': 'Plank thickness',
  span: 'Crossmember spacing',
  'hub-load': 'Mean load on the hub',
  'rated-life': 'Rated life (L10) at that load',
  travelled: 'Distance with a known load',
};

const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  measured: 'measured',
  stated: 'stated',
  assumed: 'assumed',
  rated: 'its rating',
  published: 'published',
  setting: "the yard's setting",
};

export function workingTitle({ of, subject }: Pick<Working, 'of' | 'subject'>): string {
  if (subject === null || of === 'due') return WORKING_WORDS[of];
  if (of === 'hub-life') return `${WORKING_WORDS[of]}: ${positionWords(subject)}`;
  if (of === 'wear') return `${WORKING_WORDS[of]}: ${wearSubject(subject)}`;
  if (of !== 'margin') return `${WORKING_WORDS[of]}: ${subject}`;
  const [kind, which] = subject.split(' ') as [LimitKind, string | undefined];
  return `${WORKING_WORDS.margin}: ${limitWords({ kind, subject: which ?? null })}`;
}

/** A trend's key: quantity, and place where there is one. */
function wearSubject(key: string): string {
  const [quantity = '', position = ''] = key.split(':');
  return wearTitle({ quantity: quantity as WearQuantity, position: position === '' ? null : position }).toLowerCase();
}

/** `On the deck: loader`. */
export function inputWords({ name, subject }: Pick<WorkingInput, 'name' | 'subject'>): string {
  return subject === null ? INPUT_WORDS[name] : `${INPUT_WORDS[name]}: ${subject}`;
}

export function basisWords(basis: Basis): string {
  return BASIS_WORDS[basis];
}

/** How far the answer moves when this input is off by its doubt: `± 270 lb`, or nothing where it does not move. */
export function swayWords({ sway, basis }: WorkingInput, { unit }: Pick<Working, 'unit'>): string {
  if (sway === 0)
    return basis === 'rated' || basis === 'published' || basis === 'setting' ? 'fixed' : 'does not move it';
  return `± ${showValue(sway, unit === 'day' ? 'days' : unit)}`;
}

/** A value in the reader's units. */
export function showValue(value: number | CivilDate, unit: WorkingUnit): string {
  return typeof value === 'string' ? showDate(value) : SHOWN[unit](value);
}

/** Kilometres in a mile: what passes in 1,000 km passes so many times in 1,000 miles. */
const toKm = miles(1);

const SHOWN: Readonly<Record<WorkingUnit, (value: number) => string>> = {
  kg: (value) => showMass(kg(value)),
  N: (value) => showForce(newtons(value)),
  // Pounds-force an inch of travel: the force over one inch of it.
  'N/m': (value) => `${showForce(newtons(value * inch(1)))} an inch`,
  m: (value) => showLength(metres(value)),
  mm: (value) => showLength(metres(value / 1000)),
  km: (value) => showDistance(km(value)),
  'km/day': (value) => `${showDistance(km(value))} a day`,
  'mm/1000 km': (value) => `${showNumber(toInch(metres(value / 1000)) * toKm, 3)} in each 1,000 mi`,
  'V/1000 km': (value) => `${showNumber(value * toKm, 3)} V each 1,000 mi`,
  'A/1000 km': (value) => `${showNumber(value * toKm, 3)} A each 1,000 mi`,
  'mm/year': (value) => `${showNumber(toInch(metres(value / 1000)), 3)} in a year`,
  'V/year': (value) => `${showNumber(value, 3)} V a year`,
  'A/year': (value) => `${showNumber(value, 3)} A a year`,
  kPa: (value) => showPressure(kPa(value)),
  V: (value) => `${showNumber(value, 2)} V`,
  A: (value) => `${showNumber(value, 2)} A`,
  days: (value) => `${showNumber(value, 1)} days`,
  months: (value) => `${showNumber(value, 1)} months`,
  years: (value) => `${showNumber(value, 1)} years`,
  trips: (value) => `${showNumber(value)} trips`,
  share: (value) => showShare(value),
  none: (value) => showNumber(value, 2),
  day: (value) => showNumber(value),
};
