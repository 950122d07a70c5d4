import type { Flag, WearingPart } from '../../rules/flags/flag.js';
import type { WearTrend } from '../../rules/inspection/wear-trends.js';
import type { WearQuantity } from '../../rules/wear/wear-quantity.js';
import { showDate } from '../components/show-quantity.js';
import { listWords, positionWords } from './build-words.js';
import { measuredUnit, measuredWords } from './measured-words.js';

type Wearing = Extract<Flag['evidence'], { kind: 'wearing' }>;

/** What is near its limit, in a line. */
export function wearingTitle({ quantity, parts }: Wearing): string {
  const { what } = measuredUnit(quantity);
  const isPast = parts.every(({ reachedOn }) => reachedOn === null);
  return `${what.charAt(0).toUpperCase()}${what.slice(1)} ${isPast ? 'past' : 'nearing'} its limit`;
}

/** Each part with its newest reading and the days between which its limit comes. */
export function wearingEvidence({ quantity, parts }: Wearing): string {
  return parts.map((part) => `${partWords(quantity, part)}.`).join(' ');
}

function partWords(quantity: WearQuantity, { position, value, on, limit, reachedOn, jobId }: WearingPart): string {
  const where = position === null ? 'Measured' : positionWords(position);
  const read = `${where.charAt(0).toUpperCase()}${where.slice(1)} ${measuredWords(quantity, value)} on ${showDate(on)}`;
  const line = `limit ${measuredWords(quantity, limit.value)}`;
  if (reachedOn === null) return `${read}, ${line}`;
  const { early, middle, late } = reachedOn;
  const between =
    early === null || late === null
      ? ''
      : `, nine chances in ten after ${showDate(early)}, one in ten after ${showDate(late)}`;
  const likely = middle === null ? '' : `, as likely as not reached by ${showDate(middle)}${between}`;
  return `${read}, ${line}${likely}${jobId === null ? '' : ': it may come on the next job'}`;
}

/** How it was worked out and where the limits come from. */
export function wearingHow({ parts }: Wearing): string {
  const sources = [...new Set(parts.map(({ limit }) => limit.source))];
  const leans = parts.filter(({ leansOnUsualWear }) => leansOnUsualWear).length;
  const few =
    leans === 0
      ? ''
      : ' Readings are few, so usual wear stands in for some of it (common practice, no source); each further reading narrows the dates.';
  return `The line through the readings since the part was fitted, and the use to come. ${listWords(sources)}${few}`;
}

/** What to do about it. */
export function wearingTodo({ quantity }: Wearing): string {
  return WEARING_TODO[quantity];
}

const WEARING_TODO: Readonly<Record<WearQuantity, string>> = {
  'tread-depth-mm': 'Order tires and plan the change; measure again before then, in the lowest groove.',
  'lining-mm': 'Order shoes for both sides of the axle and plan the work with the next hub job.',
  'magnet-mm': 'Compare with the wear marks of the magnet and plan its change.',
  'magnet-a': 'Look for a worn magnet, a bad ground or a thin wire; compare with the other wheels.',
  'battery-v': 'Charge it and read it again; one that will not hold its charge is replaced.',
  'end-play-mm': 'Adjust the bearing to the axle maker’s play and look for wear.',
  'chain-mm': 'Compare with an unworn link and plan a new chain.',
};

/** Which part and what of it: `Tread depth, axle 1 left`. */
export function wearTitle({ quantity, position }: Pick<WearTrend, 'quantity' | 'position'>): string {
  const { what } = measuredUnit(quantity);
  const title = `${what.charAt(0).toUpperCase()}${what.slice(1)}`;
  return position === null ? title : `${title}, ${positionWords(position)}`;
}

/** When it comes to its limit, with the days one chance in ten lies before and after, or why that cannot be said. */
export function reachedWords({ toLimit, setBackOn }: WearTrend): string {
  const since = setBackOn === null ? '' : ` Reads better since ${showDate(setBackOn)}: counted anew from there.`;
  return `${whenWords(toLimit)}.${since}`;
}

function whenWords(toLimit: WearTrend['toLimit']): string {
  if (toLimit.kind === 'past') return 'Past it';
  if (toLimit.kind === 'refused') return REFUSED_WORDS[toLimit.because];
  const { early, middle, late } = toLimit.on;
  if (middle === null) return 'Not within ten years, or no usual use is known';
  const between =
    early === null || late === null
      ? ''
      : ` (one chance in ten before ${showDate(early)}, one after ${showDate(late)})`;
  const leans = toLimit.leansOnUsualWear ? '; readings are few, so mostly usual wear' : '';
  return `About ${showDate(middle)}${between}${leans}`;
}

const REFUSED_WORDS = {
  'no-limit': 'No limit holds for all makes: the maker’s manual has it',
  'one-reading': 'One reading says nothing of how fast it wears',
  'no-slope': 'The readings scatter too much to tell wear from chance',
} as const;
