import { LEGAL_WIDTH_M, needsWidthPermit } from '../law/size.js';
import { machinesAboard } from '../load/aboard.js';
import type { Metres } from '../units/length.js';
import type { FitCase } from './fit-answer.js';
import { type Judgement, NOTHING_AGAINST } from './judgement.js';

/**
 * Deck or machine wider than the law lets on the road without a permit (`law/size.ts`; cargo counts). `go-after`: a
 * permit is asked for first. It binds commercial vehicles on the National Network, and most States have the same for
 * others, so it is said of every haul: check your state.
 */
export function judgeLegalWidth({ trailer, input }: FitCase): Judgement {
  const widths = machinesAboard(input.load, trailer.facts.machines).map(({ machine }) => machine.widthM);
  const widthM = widest([trailer.buildOn(input.startsOn)?.deck.widthM ?? null, ...widths]);
  if (widthM === null || !needsWidthPermit(widthM)) return NOTHING_AGAINST;
  return {
    verdict: 'go-after',
    reasons: [{ kind: 'wider-than-law', widthM, limitM: LEGAL_WIDTH_M }],
    remedies: [{ kind: 'permit' }],
  };
}

function widest(widths: readonly (Metres | null)[]): Metres | null {
  return widths.reduce((most, width) => (width !== null && (most === null || width > most) ? width : most), null);
}
