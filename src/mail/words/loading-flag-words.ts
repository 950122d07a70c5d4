import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Flag } from '../../rules/flags/flag.js';
import { lengthWords, needWords, tiedWords, widthWords } from './loading-words.js';
import { capital, count, onDay, pounds, poundsOf } from './show.js';

export type LoadingEvidence = Extract<
  Flag['evidence'],
  { kind: 'jack-load' | 'over-ramp' | 'rear-lift' | 'too-wide' | 'too-long' | 'tie-downs-short' }
>;

/** As `flag-words.ts` tells every flag. */
interface Told {
  readonly title: string;
  readonly says: string;
  readonly todo: string;
}

/** Flags of getting a machine on, holding it there, and standing unhitched, as a letter tells them. */
export function loadingFlagWords(
  evidence: LoadingEvidence,
  { machines, asOf }: { readonly machines: ReadonlyMap<string, string>; readonly asOf: CivilDate },
): Told {
  const machine = 'machineId' in evidence ? capital(machines.get(evidence.machineId) ?? 'the machine') : '';
  switch (evidence.kind) {
    case 'jack-load': {
      const { loadN, isLeast, short, liftN, supportN } = evidence.check;
      const capacityN = short === 'support' ? supportN : liftN;
      const may = capacityN === null ? '' : `; it ${short === 'support' ? 'holds' : 'lifts'} ${poundsOf(capacityN)}`;
      return {
        title: 'Jack too small',
        says: `Unhitched ${evidence.when === 'empty' ? 'and empty' : 'as it was loaded'}, ${isLeast ? 'at least ' : ''}${poundsOf(loadN)} would stand on the jack${may}.`,
        todo: evidence.when === 'empty' ? 'Fit a stronger jack.' : 'Do not unhitch it loaded, or fit a stronger jack.',
      };
    }
    case 'over-ramp':
      return {
        title: 'Heavier than the ramps carry',
        says: `${machine} weighs ${pounds(evidence.machineKg)}, ${pounds(evidence.overKg)} more than the ramps carry.`,
        todo: 'Load it another way, and look the ramps over for bends and cracked hinges.',
      };
    case 'rear-lift':
      return {
        title: 'Nothing holds the tail while it loads',
        says: `${machine} pulls the hitch up with ${poundsOf(evidence.liftN)} while it stands at the tail.`,
        todo: 'Block the tail before it drives on, or fit stabilizers.',
      };
    case 'too-wide':
      return {
        title: 'Machine too wide',
        says: `${machine} ${widthWords(evidence)}`,
        todo: 'Use a trailer with more room.',
      };
    case 'too-long':
      return {
        title: evidence.of === 'tilt' ? 'Machine too long for the tilt' : 'Machine too long for the deck',
        says: `${machine} ${lengthWords(evidence)}`,
        todo: 'Fold in what sticks out, or use a longer trailer.',
      };
    case 'tie-downs-short':
      return {
        title: 'Tied down with too little',
        says: `${onDay(evidence.on, asOf)}: ${tiedWords(evidence.tied)} ${capital(needWords(evidence.tied.need))}. ${capital(count(evidence.trips.length, 'trip'))} like it.`,
        todo: 'Use more tie-downs, or stronger ones.',
      };
  }
}
