import type { Comparison, Limit, LimitOrigin } from '../../rules/load/limit.js';
import { newtons } from '../../rules/units/force.js';
import { poundsOf, wheel } from './show.js';

/** What is rated, as the subject of a sentence. */
function limitName({ kind, subject }: Limit): string {
  switch (kind) {
    case 'plate':
      return 'the whole trailer, loaded';
    case 'axle-group':
      return 'the axles together';
    case 'axle':
      return subject === null ? 'one axle' : `axle ${subject}`;
    case 'tire':
      return subject === null ? 'a tire' : `the tire at ${wheel(subject)}`;
    case 'coupler':
      return 'the coupler';
    case 'coupler-tongue':
      return 'the weight on the coupler';
    case 'tow-hitch':
      return "the tow vehicle's hitch";
    case 'tow-hitch-tongue':
      return "the weight on the tow vehicle's hitch";
    case 'legal-axles':
      return subject === null ? 'the axles by law' : axles(subject);
  }
}

/** `axle 1`, `axles 1 to 2`. */
function axles(subject: string): string {
  const [first, last] = subject.split('-');
  return last === undefined ? `axle ${first}` : `axles ${first} to ${last}`;
}

const FROM: Readonly<Record<LimitOrigin, string>> = {
  plate: 'on the plate',
  'axle-maker': 'by the axle maker',
  'tire-sidewall': 'on the sidewall',
  'load-index': 'by the load index',
  'tire-table': 'by the tire table at that pressure',
  'coupler-maker': 'by the coupler maker',
  'tow-vehicle': 'by the tow vehicle',
  law: 'by law on the Interstate (check your state)',
};

/** `the whole trailer, loaded: 15,540 lb where 14,000 lb are allowed on the plate, over by 1,540 lb`. */
export function comparisonWords({ limit, loadN, marginN, measured, standing }: Comparison): string {
  const sum = `${limitName(limit)}: ${poundsOf(loadN)} where ${poundsOf(limit.limitN)} are allowed ${FROM[limit.origin]}`;
  if (standing === 'over') return `${sum}, over by ${poundsOf(newtons(-marginN))}`;
  const left = `${sum}, ${poundsOf(marginN)} to spare`;
  return standing === 'near' && !measured ? `${left}, but not every weight in it was weighed` : left;
}
