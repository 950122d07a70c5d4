import type { Assessment } from '../../rules/assess.js';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { daysAfter } from '../../rules/calendar/day-number.js';
import { afterYears, chanceOfNewDeck, type DeckOutlook, deckDates } from '../../rules/deck/deck-outlook.js';
import { showCount, showDate, showNumber, showShare } from '../components/show-quantity.js';
import { boardsWords } from './deck-words.js';

/** What is known of the life of a deck, in sentences, for the day of reading; empty where nothing is. */
export function deckLifeWords({ outlook, probed }: Assessment['deckLife'], today: CivilDate): readonly string[] {
  if (probed.soft.length > 0) {
    return [
      `Probing beats any forecast: ${boardsWords(probed.soft)}. Replace them now; what other decks lasted says nothing for this one.`,
    ];
  }
  if (outlook === null) return [];
  return [...forecastWords(outlook, today), pastWords(outlook), fitWords(outlook), priorWords(outlook)].filter(
    (sentence) => sentence !== '',
  );
}

function forecastWords(outlook: DeckOutlook, today: CivilDate): readonly string[] {
  const { tenPercentOn, halfOn, ninetyPercentOn } = deckDates(outlook, today);
  const inYear = chanceOfNewDeck(outlook, today, daysAfter(today, 365));
  return [
    `Laid ${showDate(outlook.laidOn)}. Lying today, it is as likely as not to be worn out by ${showDate(halfOn)}; one chance in ten by ${showDate(tenPercentOn)}, nine in ten by ${showDate(ninetyPercentOn)}.`,
    `Chance of needing a deck within a year: ${showShare(inYear, 0)}.`,
    `It rests on the owner’s estimate and ${showCount(outlook.wornOut, 'worn-out deck')} of ${showCount(outlook.wornOut + outlook.survivors, 'deck')}; those still lying count as having lasted so far.${outlook.wornOut < 5 ? ' That is few: the estimate does most of the work.' : ''}`,
  ];
}

function pastWords({ past, laidOn }: DeckOutlook): string {
  if (past === null) return '';
  const { decks, medianYears, lowerYears, upperYears, stillInUse } = past;
  const half =
    lowerYears === null || upperYears === null
      ? ''
      : `, half of them between ${showNumber(lowerYears, 1)} and ${showNumber(upperYears, 1)}, so ${showDate(afterYears(laidOn, lowerYears))} to ${showDate(afterYears(laidOn, upperYears))}`;
  return `${showCount(decks, 'deck')} like it wore out, at ${showNumber(medianYears, 1)} years in the middle: ${showDate(afterYears(laidOn, medianYears))}${half}. That leaves out ${showCount(stillInUse, 'deck')} still in use.`;
}

function fitWords({ yardFit }: DeckOutlook): string {
  if (yardFit === null) return '';
  const few = yardFit.wornOut < 10 ? ' With so few the shape is held back by a stated prior.' : '';
  return `A Weibull law for decks like it, survivors included: ${showNumber(yardFit.wornOut)} worn out of ${showNumber(yardFit.decks)}, shape ${showNumber(yardFit.shape, 1)}, scale ${showNumber(yardFit.scaleYears, 1)} years.${few}`;
}

function priorWords({ prior }: DeckOutlook): string {
  const middle = `${showNumber(prior.medianYears, 1)} years`;
  return prior.basis === 'setting'
    ? `Owner’s estimate: ${middle}, from the yard’s setting.`
    : `Owner’s estimate: ${middle}, reckoned from wood, treatment, climate and shelter (a proposal, no source; set your own under Yard).`;
}
