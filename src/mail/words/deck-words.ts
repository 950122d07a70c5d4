import type { DeckLack, PlankStress } from '../../rules/deck/plank-check.js';
import type { FoundBoard } from '../../rules/inspection/soft-boards.js';
import { toPsi } from '../../rules/units/pressure.js';
import { count, inches, list, number, poundsOf } from './show.js';

/** `one wheel, track or pad presses with 2,065 lb on 1 board, good for 1,205 lb (1,655 of 1,330 psi)`. */
export function stressWords({ contactN, allowedN, boards, bendingKpa, allowedKpa }: PlankStress): string {
  return `one wheel, track or pad presses with ${poundsOf(contactN)} on ${count(boards, 'board')}, good for ${poundsOf(allowedN)} (${number(toPsi(bendingKpa))} of ${number(toPsi(allowedKpa))} psi)`;
}

/** `2 of 11 boards: 3 (0.6 in) and 7 (0.7 in)`. */
export function boardsWords(boards: readonly FoundBoard[], boardCount: number | null): string {
  const many = boardCount === null ? count(boards.length, 'board') : `${boards.length} of ${boardCount} boards`;
  return `${many}: ${list(boards.map(({ board, depthM }) => `${board ?? 'not numbered'} (${inches(depthM)})`))}`;
}

export function boardNames(boards: readonly (string | null)[]): string {
  const named = boards.flatMap((board) => board ?? []);
  if (named.length < boards.length) return count(boards.length, 'board');
  return `${named.length === 1 ? 'board' : 'boards'} ${list(named)}`;
}

const LACKS: Readonly<Record<DeckLack, string>> = {
  'machine-mass': 'its weight',
  contact: 'what it stands on',
  'contact-count': 'how many wheels, tracks or pads it has',
  'contact-size': 'how large they are on the deck',
  'deck-material': 'what the deck is made of',
  'deck-wood': 'the wood of the deck',
  'wood-grade': 'the grade of the boards',
  'wood-strength': 'a published strength of this wood or size',
  'plank-thickness': 'how thick the planks are',
  'plank-width': 'how wide the planks are',
  'crossmember-spacing': 'how far apart the crossmembers are',
};

export function deckLackWords(lacks: readonly DeckLack[]): string {
  return list(lacks.map((lack) => LACKS[lack]));
}
