import type { Comparison, Limit, LimitKind, LimitOrigin } from '../../rules/load/limit.js';
import { newtons } from '../../rules/units/force.js';
import { showForce } from '../components/show-quantity.js';
import { positionWords } from './build-words.js';

const LIMIT_WORDS: Readonly<Record<LimitKind, string>> = {
  plate: 'Plate (GVWR)',
  'axle-group': 'All axles together',
  axle: 'Axle',
  tire: 'Tire',
  coupler: 'Coupler',
  'coupler-tongue': 'Coupler, tongue weight',
  'tow-hitch': "Tow vehicle's hitch",
  'tow-hitch-tongue': "Tow vehicle's hitch, tongue weight",
  'legal-axles': 'Legal weight of axles',
};

const ORIGIN_WORDS: Readonly<Record<LimitOrigin, string>> = {
  plate: "the trailer's plate",
  'axle-maker': 'the axle maker',
  'tire-sidewall': "the tire's sidewall",
  'load-index': "the tire's load index",
  'tire-table': 'the tire table, next lower pressure row',
  'coupler-maker': 'the coupler maker',
  'tow-vehicle': 'the tow vehicle',
  law: 'the law of the Interstate (23 CFR 658.17; check your state)',
};

/** Which limit, in a few words: `Axle 2`, `Tire, axle 1 left`. */
export function limitWords(limit: Pick<Limit, 'kind' | 'subject'>): string {
  if (limit.kind === 'axle' && limit.subject !== null) return `Axle ${limit.subject}`;
  if (limit.kind === 'tire' && limit.subject !== null) return `Tire, ${positionWords(limit.subject)}`;
  if (limit.kind === 'legal-axles' && limit.subject !== null) return `Legal weight, ${axlesWords(limit.subject)}`;
  return LIMIT_WORDS[limit.kind];
}

/** `axle 1`, `axles 1 to 2`. */
function axlesWords(subject: string): string {
  const [first, last] = subject.split('-');
  return last === undefined ? `axle ${first}` : `axles ${first} to ${last}`;
}

export function originWords(origin: LimitOrigin): string {
  return ORIGIN_WORDS[origin];
}

/** `11,090 lb against 9,990 lb, over by 1,100 lb`. */
export function comparisonWords({ loadN, limit, marginN, standing }: Comparison): string {
  const against = `${showForce(loadN)} against ${showForce(limit.limitN)}`;
  return standing === 'over'
    ? `${against}, over by ${showForce(newtons(-marginN))}`
    : `${against}, ${showForce(marginN)} to spare`;
}

/** Whether the sum rests on a scale or on somebody's word. */
export function measuredWords(measured: boolean): string {
  return measured ? 'every weight in it was weighed' : 'not every weight in it was weighed';
}
