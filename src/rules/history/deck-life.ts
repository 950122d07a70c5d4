import type { CivilDate } from '../calendar/civil-date.js';
import { monthsAfter } from '../calendar/day-number.js';
import { type DeckOutlook, deckOutlook, type OutlookDays, type OwnDeck } from '../deck/deck-outlook.js';
import type { Part } from '../facts/part.js';
import { partsOn } from '../facts/parts-on.js';
import { order } from './order.js';
import type { TrailerOn } from './trailer-on.js';

/**
 * Months between two reckonings of one deck's outlook: so often the yard's decks still in use are counted anew as having
 * lasted. Their ages are then half a year too low at most, which errs to the early side. Our choice.
 */
const RECKON_MONTHS = 6;

/** The deck that lies now, and the day its laying is known by; null when unknown. */
function deckNow({ facts, asOf }: TrailerOn): (Part & { readonly fittedOn: CivilDate }) | null {
  const known = partsOn(facts.parts, 'deck', asOf).filter(
    (part): part is Part & { readonly fittedOn: CivilDate } => part.fittedOn !== null,
  );
  return known.sort((a, b) => order(b.fittedOn, a.fittedOn) || order(b.id, a.id))[0] ?? null;
}

/** What `deckOutlook` asks of the deck that lies now: the deck and the days; null where its day of laying is unknown. */
export function deckAsked(trailer: TrailerOn): { readonly own: OwnDeck; readonly on: OutlookDays } | null {
  const deck = deckNow(trailer);
  if (deck === null) return null;
  const { facts, asOf } = trailer;
  const build = trailer.buildOn(deck.fittedOn);
  return {
    own: {
      partId: deck.id,
      laidOn: deck.fittedOn,
      material: build?.deck.material ?? null,
      wood: build?.deck.wood ?? null,
      treated: build?.deck.treated ?? null,
      stored: facts.trailer.stored,
    },
    on: { asOf, countedTo: reckonedOn(deck.fittedOn, asOf) },
  };
}

/** How long the deck that lies now may still last. Null where its day of laying is unknown, or it is steel. */
export function deckLifeOf(trailer: TrailerOn): DeckOutlook | null {
  const asked = deckAsked(trailer);
  return asked === null ? null : deckOutlook(asked.own, trailer.facts.decks, trailer.facts.policy, asked.on);
}

/** The day after which the outlook is worked out anew; null where there is none. */
export function nextReckoning(outlook: DeckOutlook | null): CivilDate | null {
  if (outlook === null) return null;
  let months = RECKON_MONTHS;
  while (monthsAfter(outlook.laidOn, months) <= outlook.countedTo) months += RECKON_MONTHS;
  return monthsAfter(outlook.laidOn, months);
}

/** The last half-yearly return of the laying day. */
function reckonedOn(laidOn: CivilDate, asOf: CivilDate): CivilDate {
  let last = laidOn;
  for (let months = RECKON_MONTHS; ; months += RECKON_MONTHS) {
    const next = monthsAfter(laidOn, months);
    if (next > asOf) return last;
    last = next;
  }
}
