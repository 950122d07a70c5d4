import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Flag, WearingPart } from '../../rules/flags/flag.js';
import type { WearQuantity } from '../../rules/wear/wear-quantity.js';
import { capital, number, onDay, wheel } from './show.js';

type Wearing = Extract<Flag['evidence'], { kind: 'wearing' }>;

const MM_PER_INCH = 25.4;

interface Measure {
  readonly what: string;
  readonly unit: string;
  readonly shown: (value: number) => number;
  readonly decimals: number;
}

const IN_INCHES = { unit: 'in', shown: (mm: number) => mm / MM_PER_INCH, decimals: 3 };

/** As people here read their gauges. */
const MEASURES: Readonly<Record<WearQuantity, Measure>> = {
  'tread-depth-mm': { what: 'tread', unit: '32nds in', shown: (mm) => (mm / MM_PER_INCH) * 32, decimals: 1 },
  'lining-mm': { what: 'brake lining', ...IN_INCHES },
  'magnet-mm': { what: 'brake magnet', ...IN_INCHES },
  'magnet-a': { what: 'magnet current', unit: 'A', shown: (amperes) => amperes, decimals: 2 },
  'battery-v': { what: 'battery', unit: 'V', shown: (volts) => volts, decimals: 2 },
  'end-play-mm': { what: 'end play', ...IN_INCHES },
  'chain-mm': { what: 'chain link', ...IN_INCHES },
};

/** Parts that come to their limit soon, as a letter tells it. */
export function wearingWords({ quantity, parts }: Wearing, asOf: CivilDate) {
  const { what } = MEASURES[quantity];
  const isPast = parts.every(({ reachedOn }) => reachedOn === null);
  const few = parts.some(({ leansOnUsualWear }) => leansOnUsualWear) ? ' Readings are few: usual wear stands in.' : '';
  return {
    title: `${capital(what)} ${isPast ? 'past' : 'near'} its limit`,
    says: `${parts.map((part) => `${partWords(quantity, part, asOf)}.`).join(' ')}${few}`,
    todo: 'Measure again, order the part and plan the work before that day.',
  };
}

function partWords(quantity: WearQuantity, part: WearingPart, asOf: CivilDate): string {
  const { position, value, limit, reachedOn, jobId } = part;
  const { unit, shown, decimals } = MEASURES[quantity];
  const amount = (one: number) => `${number(shown(one), decimals)} ${unit}`;
  const read = `${position === null ? 'Measured' : capital(wheel(position))} ${amount(value)}, limit ${amount(limit.value)}`;
  const middle = reachedOn?.middle ?? null;
  const likely = middle === null ? '' : `, reached about ${onDay(middle, asOf)}`;
  return `${read}${likely}${jobId === null ? '' : ', maybe on the next job'}`;
}
