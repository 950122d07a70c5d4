import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Basis, InputName, Working, WorkingInput, WorkingOf, WorkingUnit } from '../../rules/explain/working.js';
import type { LimitKind } from '../../rules/load/limit.js';
import { km } from '../../rules/units/distance.js';
import { newtons } from '../../rules/units/force.js';
import { inch, metres } from '../../rules/units/length.js';
import { kg } from '../../rules/units/mass.js';
import { kPa } from '../../rules/units/pressure.js';
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
import { limitWords } from './limit-words.js';

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
  jack: 'On the jack',
  'tie-downs': 'Tie-downs',
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
  'life-shape': 'Shape of the life spread',
  'life-scale': 'Scale of the life spread',
  age: 'Age',
  strength: 'Strength allowed',
  'contact-load': 'Under one wheel, track or pad',
  'plank-thickness': 'Plank thickness',
  span: 'Crossmember spacing',
  'bearing-rating': 'Bearing rating',
  travelled: 'Distance travelled',
  'jack-place': 'Jack behind the coupler',
  'working-load': 'Working load limit',
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
  if (of !== 'margin' || subject === null) return WORKING_WORDS[of];
  const [kind, which] = subject.split(' ') as [LimitKind, string | undefined];
  return `${WORKING_WORDS.margin}: ${limitWords({ kind, subject: which ?? null })}`;
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

const SHOWN: Readonly<Record<WorkingUnit, (value: number) => string>> = {
  kg: (value) => showMass(kg(value)),
  N: (value) => showForce(newtons(value)),
  // Pounds-force an inch of travel: the force over one inch of it.
  'N/m': (value) => `${showForce(newtons(value * inch(1)))} an inch`,
  m: (value) => showLength(metres(value)),
  mm: (value) => showLength(metres(value / 1000)),
  km: (value) => showDistance(km(value)),
  'km/day': (value) => `${showDistance(km(value))} a day`,
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
