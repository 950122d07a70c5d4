import type { FitParking } from '../../rules/fit/fit.js';
import type { LimitKind } from '../../rules/load/limit.js';
import { type Metres, metres } from '../../rules/units/length.js';
import { showLength, showShare } from '../components/show-quantity.js';
import { limitWords } from './limit-words.js';

/** Where a machine is best parked, what that leaves and how it was worked out. */
export function parkingWords(parking: FitParking, machine: string): { readonly says: string; readonly from: string } {
  const { balancePointM, frontM, inside, tightest, deckKnown } = parking;
  const at = `${showLength(rounded(balancePointM))} behind the coupler`;
  const front = frontM === null ? '' : frontM >= 0 ? `, its front ${showLength(rounded(frontM))} behind it` : '';
  const left =
    tightest.shareLeft >= 0
      ? `${showShare(tightest.shareLeft)} is left of the tightest limit there, ${edgeWords(tightest)}.`
      : `Even there ${edgeWords(tightest)} is passed by ${showShare(-tightest.shareLeft)}.`;
  const range =
    inside === null
      ? ''
      : ` Every limit that depends on the place holds from ${showLength(rounded(inside.fromM, Math.ceil))} to ${showLength(rounded(inside.toM, Math.floor))}.`;
  return {
    says: `${machine} stands best with its balance point ${at}${front}. ${left}${range}`,
    from: `What is left of each limit is a straight line in the machine's place; this is where the least of them is greatest.${
      deckKnown ? '' : ' Where the deck lies is not recorded: see that the place is on it.'
    }`,
  };
}

/** To the half inch: nobody parks a machine closer. The ends of a range are rounded into it. */
function rounded(place: Metres, how: (halves: number) => number = Math.round): Metres {
  const HALF_INCH_M = 0.0127;
  return metres(how(place / HALF_INCH_M) * HALF_INCH_M);
}

/** Which limit, as part of a sentence. */
export function edgeWords({ kind, subject }: Pick<FitParking['tightest'], 'kind' | 'subject'>): string {
  switch (kind) {
    case 'tongue-share-low':
      return 'the least that should rest on the tongue';
    case 'tongue-share-high':
      return 'the most that should rest on the tongue';
    case 'axle-off-ground':
      return `axle ${subject ?? ''} staying on the ground`;
    case 'deck-front':
      return 'the front of the deck';
    case 'deck-rear':
      return 'the rear of the deck';
    default:
      return lowerFirst(limitWords({ kind: kind satisfies LimitKind, subject }));
  }
}

function lowerFirst(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}
