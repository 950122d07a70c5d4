import type { Flag } from '../../rules/flags/flag.js';
import type { JackCheck } from '../../rules/trailer/jacks.js';
import { showCount, showDate, showForce, showMass } from '../components/show-quantity.js';
import { lengthWords, needWords, tiedWords, widthWords } from './loading-words.js';

export type LoadingEvidence = Extract<
  Flag['evidence'],
  { kind: 'jack-load' | 'over-ramp' | 'rear-lift' | 'too-wide' | 'too-long' | 'tie-downs-short' }
>;

/** As `flag-words.ts` tells every flag. */
interface Told {
  readonly title: string;
  readonly evidence: string;
  readonly how: string;
  readonly todo: string;
}

/** Flags of getting a machine on, holding it there, and standing unhitched. */
export function loadingFlagWords(evidence: LoadingEvidence, machines: ReadonlyMap<string, string>): Told {
  switch (evidence.kind) {
    case 'jack-load':
      return jackWords(evidence);
    case 'over-ramp':
      return {
        title: 'Heavier than the ramps carry',
        evidence: `${named(evidence, machines)} weighs ${showMass(evidence.machineKg)}; the ramps carry ${showMass(evidence.ratingKg)} together, ${showMass(evidence.overKg)} less. Driven on for ${seen(evidence)}.`,
        how: "The ramps' rating as entered on the build sheet, for all of them together, against the machine as it rode.",
        todo: 'Load it another way, or fit ramps rated for it. Look the ramps over for bends and cracked hinges.',
      };
    case 'rear-lift':
      return {
        title: 'Nothing holds the tail while it loads',
        evidence: `${named(evidence, machines)}, ${showMass(evidence.machineKg)}, pulls the hitch up with ${showForce(evidence.liftN)} while it stands at the tail. Driven on for ${seen(evidence)}.`,
        how: 'Moments about the middle of the axles, the machine at the rear edge of the deck. The build sheet names neither stabilizers nor a knee brace.',
        todo: 'Block or prop the tail before it drives on, or fit stabilizers. A tow vehicle with its rear wheels light does not hold on a slope.',
      };
    case 'too-wide':
      return {
        title: 'Machine too wide',
        evidence: `${named(evidence, machines)} ${widthWords(evidence)} Carried on ${seen(evidence)}.`,
        how: 'The machine as hauled, over everything, against the clear width on the build sheet.',
        todo: 'Use a trailer with more room, or correct the width that is wrong.',
      };
    case 'too-long':
      return {
        title: evidence.of === 'tilt' ? 'Machine too long for the tilt' : 'Machine too long for the deck',
        evidence: `${named(evidence, machines)} ${lengthWords(evidence)} Carried on ${seen(evidence)}.`,
        how: 'The machine as hauled, over everything, against the length on the build sheet. More than 4 ft behind the trailer wants flags (49 CFR 393.87).',
        todo: 'Fold in what sticks out, use a longer trailer, or correct the length that is wrong.',
      };
    case 'tie-downs-short':
      return {
        title: 'Tied down with too little',
        evidence: `On ${showDate(evidence.on)}: ${tiedWords(evidence.tied)} It needed ${needWords(evidence.tied.need)}. ${showCount(evidence.trips.length, 'trip')} on record like it.`,
        how: '49 CFR 393.106, 393.110 and 393.130. Arms, booms and a second bucket need their own besides. Check your state.',
        todo: 'Use more tie-downs, or stronger ones. If more held it than was entered, correct the trip.',
      };
  }
}

function jackWords({ when, check, trips }: Extract<LoadingEvidence, { kind: 'jack-load' }>): Told {
  const least = check.isLeast ? 'at least ' : '';
  const load = `${least}${showForce(check.loadN)}`;
  return {
    title: when === 'empty' ? 'Jack too small for the trailer' : 'Jack too small for it loaded',
    evidence:
      when === 'empty'
        ? `Unhitched and empty, ${load} would stand on the jack; ${capacityWords(check)}.`
        : `Unhitched as loaded on ${showCount(trips.length, 'recent trip')}, ${load} would stand on the jack; ${capacityWords(check)}.`,
    how: `The tongue weight, over the jack's shorter arm to the axles.${check.isLeast ? ' Where the jack stands is not recorded, so it is more than this.' : ''}`,
    todo:
      when === 'empty'
        ? 'Fit a stronger jack, or a second one, before anybody works under or behind it.'
        : 'Do not unhitch it loaded, or fit a stronger jack.',
  };
}

function capacityWords({ short, count, liftN, supportN }: JackCheck): string {
  const jacks = showCount(count ?? 1, 'jack');
  const capacityN = short === 'support' ? supportN : liftN;
  const does = short === 'support' ? 'hold' : 'lift';
  return capacityN === null
    ? `${jacks} ${does} less`
    : `${jacks} ${does}${count === 1 ? 's' : ''} ${showForce(capacityN)}`;
}

function named({ machineId }: { readonly machineId: string }, machines: ReadonlyMap<string, string>): string {
  return machines.get(machineId) ?? 'The machine';
}

function seen({ trips }: { readonly trips: readonly unknown[] }): string {
  return showCount(trips.length, 'recent trip');
}
