import type { DeckLack, PlankStress, StrengthOrigin } from '../../rules/deck/plank-check.js';
import type { FoundBoard } from '../../rules/inspection/soft-boards.js';
import { toInch } from '../../rules/units/length.js';
import { toPsi } from '../../rules/units/pressure.js';
import { showCount, showForce, showLength, showNumber } from '../components/show-quantity.js';
import { listWords } from './build-words.js';

const ORIGIN: Readonly<Record<StrengthOrigin, string>> = {
  'design-value': 'published design value for this wood and grade, wet, laid flat (NDS; Southern Pine Use Guide)',
  'clear-wood': 'average strength of faultless wood of this kind, wet (Wood Handbook)',
  'plate-yield': 'yield strength of common plate, by a strip that errs to the safe side',
};

/** `2,065 lb on one wheel, track or pad climbing, where a board is good for 1,205 lb`. */
export function stressWords({ contactN, allowedN, boards, stance }: PlankStress): string {
  const on = boards === 1 ? 'one board' : showCount(boards, 'board');
  return `${showForce(contactN)} from one wheel, track or pad on ${on} while ${stance === 'climbing' ? 'it drives on or off' : 'it rides'}; ${boards === 1 ? 'that board is' : 'they are'} good for ${showForce(allowedN)}`;
}

/** How it was worked out and how far it can be trusted. */
export function stressFrom({ bendingKpa, allowedKpa, origin, verified, lostM, sagM }: PlankStress): string {
  const lost = lostM > 0 ? ` ${showLength(lostM)} counted as rotted off.` : '';
  const sags = sagM === null ? '' : ` It would sag about ${showNumber(toInch(sagM), 2)} in.`;
  const doubt = verified ? '' : ' That number is unverified or only a bound, so it stops no trip.';
  return `Bending between two crossmembers, the load in the middle, only boards wholly under the contact carrying: ${showNumber(toPsi(bendingKpa))} psi against ${showNumber(toPsi(allowedKpa))} psi, the ${ORIGIN[origin]}.${lost}${sags} How the weight lies on the contacts is common practice, no source.${doubt}`;
}

/** `board 3 sinks 0.6 in and board 7 lets the probe in 0.7 in`. */
export function boardsWords(boards: readonly FoundBoard[]): string {
  return listWords(
    boards.map(({ board, depthM, kind }) => {
      const name = board === null ? 'a board' : `board ${board}`;
      return kind === 'sinks'
        ? `${name} sinks ${showLength(depthM)}`
        : `${name} lets the probe in ${showLength(depthM)}`;
    }),
  );
}

/** `2 of 11 boards`. */
export function boardsOf(boards: readonly unknown[], boardCount: number | null): string {
  return boardCount === null ? showCount(boards.length, 'board') : `${boards.length} of ${boardCount} boards`;
}

export function boardNames(boards: readonly (string | null)[]): string {
  const named = boards.flatMap((board) => board ?? []);
  if (named.length < boards.length) return showCount(boards.length, 'board');
  return `${named.length === 1 ? 'board' : 'boards'} ${listWords(named)}`;
}

const LACKS: Readonly<Record<DeckLack, string>> = {
  'machine-mass': 'its weight',
  contact: 'what it stands on',
  'contact-count': 'how many wheels, tracks or pads it stands on',
  'contact-size': 'how large a wheel, track or pad is on the deck',
  'deck-material': 'what the deck is made of',
  'deck-wood': 'the wood of the deck',
  'wood-grade': 'the grade of the boards',
  'wood-strength': 'any published strength of this wood or size',
  'plank-thickness': 'how thick the planks are',
  'plank-width': 'how wide the planks are',
  'crossmember-spacing': 'how far apart the crossmembers are',
};

export function deckLackWords(lacks: readonly DeckLack[]): string {
  return listWords(lacks.map((lack) => LACKS[lack]));
}
