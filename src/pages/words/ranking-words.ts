import type { RankedTrailer } from '../../rules/ranking/ranked-trailer.js';
import type { PassedOver } from '../../rules/ranking/worth-asking.js';
import { showCount, showDates, showMass, showNumber, showShare } from '../components/show-quantity.js';
import { listWords } from './build-words.js';
import { comparisonWords, limitWords } from './limit-words.js';

/** `Tightest: Plate (GVWR), 11,090 lb against 14,000 lb, 2,910 lb to spare, 20.8 % of it.` */
export function tightestWords({ tightest, marginShare }: Pick<RankedTrailer, 'tightest' | 'marginShare'>): string {
  if (tightest === null || marginShare === null) return 'No limit of it could be held against this load.';
  return `Tightest: ${limitWords(tightest.limit)}, ${comparisonWords(tightest)}, ${showShare(Math.abs(marginShare))} of it.`;
}

/** `Booked on these days: Hollow Rd, Thu 3 Apr 2026.` */
export function clashWords(clashes: RankedTrailer['clashes']): string {
  return `Booked on these days: ${listWords(clashes.map((one) => `${one.name}, ${showDates(one.startsOn, one.endsOn)}`))}.`;
}

/** Hours of work on what must be done first; null when there are none to tell. */
export function hoursWords(hours: number): string | null {
  return hours > 0 ? `About ${showNumber(hours, 1)} h of work on checks first.` : null;
}

/** Why one trailer was not asked. */
export function passedOverWords({ why }: PassedOver): string {
  switch (why.kind) {
    case 'gone':
      return 'Sold or scrapped.';
    case 'down':
      return 'Down: on hold, or something on it stops it.';
    case 'booked':
      return clashWords(why.clashes);
    case 'too-small':
      return `Too small: it carries ${showMass(why.payloadKg)}, ${showMass(why.shortKg)} too little.`;
  }
}

/** How many were passed over, by reason; null when none was. */
export function passedOverCounts(counts: Readonly<Record<PassedOver['why']['kind'], number>>): string | null {
  const parts = [
    counts['too-small'] > 0 ? `${showNumber(counts['too-small'])} too small` : null,
    counts.booked > 0 ? `${showNumber(counts.booked)} booked on these days` : null,
    counts.down > 0 ? `${showNumber(counts.down)} down` : null,
    counts.gone > 0 ? `${showNumber(counts.gone)} sold or scrapped` : null,
  ].filter((part) => part !== null);
  return parts.length === 0 ? null : `Passed over by what is on file: ${listWords(parts)}.`;
}

/** Those that were never looked at because enough others could; null when there are none. */
export function notAskedWords(notAsked: number): string | null {
  if (notAsked === 0) return null;
  return `${showCount(notAsked, 'further trailer is', 'further trailers are')} large enough and free, and ${notAsked === 1 ? 'was' : 'were'} not gone through: these come first.`;
}

/** `Carries all 8 loads.` */
export function carriesWords(carries: number, ofLoads: number): string {
  if (ofLoads === 1) return carries === 1 ? 'Carries it' : 'Does not carry it';
  if (carries === ofLoads) return `Carries all ${showCount(ofLoads, 'load')}`;
  return carries === 0 ? `Carries none of ${showCount(ofLoads, 'load')}` : `Carries ${carries} of ${ofLoads} loads`;
}

/** Whether it was free on the days of that work. */
export function busyWords(busy: number, ofDays: number): string | null {
  if (ofDays === 0) return null;
  if (busy === 0) return 'It was in the yard on every day of that work.';
  return `It was out or is booked itself on ${showNumber(busy)} of ${showCount(ofDays, 'such haul')}.`;
}
