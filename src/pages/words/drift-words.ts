import type { Flag } from '../../rules/flags/flag.js';
import type { LoadTrend, PartDamage } from '../../rules/flags/loads-of-quarter.js';
import { showCount, showMass, showNumber, showShare } from '../components/show-quantity.js';
import { CLASS_WORDS, listWords } from './build-words.js';
import { comparisonWords, limitWords } from './limit-words.js';

type Drift = Extract<Flag['evidence'], { kind: 'class-drift' }>;

const PART_WORDS: Readonly<Record<PartDamage['part'], string>> = {
  bearing: 'wheel bearings',
  weld: 'welds',
  spring: 'springs',
};

/** How heavy the loads are, whose they are, whether they grow, and which class they belong to. */
export function driftEvidence(drift: Drift, machine: string | null): string {
  return [
    heavyTrips(drift),
    machine === null ? null : `The machine behind most of them: ${machine}.`,
    trendWords(drift.trend),
    drift.looksLike === null
      ? null
      : `The loads look like those of ${classPhrase(drift.looksLike)}${drift.ownClass === null ? '' : `; this one is ${classPhrase(drift.ownClass)}`}.`,
    damageWords(drift),
  ]
    .filter((sentence) => sentence !== null)
    .join(' ');
}

/** What gives first, and what would have to be stronger. */
export function driftTodo({ weakest, wantsMore }: Drift): string {
  const give = 'Give these loads to a trailer of the class they need, or lighten them.';
  if (weakest === null) return give;
  if (wantsMore.length === 0) {
    return `${give} Nearest its limit: ${limitWords(weakest.limit)}, ${comparisonWords(weakest)}.`;
  }
  const short = wantsMore.map((one) => `${limitWords(one.limit)} (${comparisonWords(one)})`);
  return `${give} To carry them, this one would need more of each: ${listWords(short)}. The plate stays what its maker certified.`;
}

function heavyTrips({ trips, over90, over100, payloadKg, share90th }: Drift): string {
  const payload = `the payload of ${showMass(payloadKg)}`;
  if (trips === 1) return `The only trip so far was over ${over100 === 1 ? payload : `90 % of ${payload}`}.`;
  return `Of the last ${showCount(trips, 'trip')}, ${showNumber(over90)} went over 90 % of ${payload} and ${showNumber(over100)} over all of it; nine in ten kept below ${showShare(share90th, 0)} of it.`;
}

function trendWords(trend: LoadTrend | null): string | null {
  if (trend === null || !trend.isClear) return null;
  const change = showShare(Math.abs(trend.shareAMonth), 1);
  return `Loads ${trend.shareAMonth > 0 ? 'grow' : 'shrink'} by ${change} of payload a month.`;
}

/** The part that suffers most against what it is meant for. */
function damageWords({ damage, looksLike }: Drift): string | null {
  const most = damage?.reduce((worst, next) => (next.onThis > worst.onThis ? next : worst));
  if (most === undefined || most.onThis <= 1) return null;
  const there =
    most.onNext === null || looksLike === null
      ? ''
      : `; on ${classPhrase(looksLike)}, for ${showNumber(most.onNext, 1)}`;
  return `For its ${PART_WORDS[most.part]} each of these miles counts for ${showNumber(most.onThis, 1)} at 90 % of payload${there}.`;
}

function classPhrase(trailerClass: keyof typeof CLASS_WORDS): string {
  if (trailerClass === 'not-an-equipment-trailer') return 'no equipment trailer';
  return `a ${CLASS_WORDS[trailerClass].toLowerCase()} trailer`;
}
