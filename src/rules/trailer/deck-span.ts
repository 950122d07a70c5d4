import type { DeckSpan } from '../envelope/boundaries.js';
import type { BuildSheet } from '../facts/build-sheet.js';
import { metres } from '../units/length.js';

/** Where the deck lies, rearward from the coupler, its dovetail included; null while its front edge or its length is unknown. */
export function deckSpan({ deck }: BuildSheet): DeckSpan | null {
  if (deck.frontFromCouplerM === null || deck.lengthM === null) return null;
  return { frontM: deck.frontFromCouplerM, rearM: metres(deck.frontFromCouplerM + deck.lengthM) };
}
