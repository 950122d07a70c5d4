import type { FitReason, FitRemedy } from '../../rules/fit/fit.js';
import type { TieDownCheck, TieDownNeed } from '../../rules/load/tie-downs.js';
import type { RearSupport } from '../../rules/trailer/loading.js';
import type { TooLong, TooWide } from '../../rules/trailer/machine-room.js';
import { newtons } from '../../rules/units/force.js';
import { metres } from '../../rules/units/length.js';
import { kg } from '../../rules/units/mass.js';
import { showCount, showFeet, showForce, showLength, showMass } from '../components/show-quantity.js';

type Loading = Extract<
  FitReason,
  { kind: 'too-wide' | 'too-long' | 'ramp-rating' | 'rear-lift' | 'hangs-up' | 'tilt-stays-up' }
>;

/** What getting a machine on comes to, and where the numbers are from. */
export function loadingWords(reason: Loading, machine: string): { readonly says: string; readonly from: string } {
  switch (reason.kind) {
    case 'too-wide':
      return { says: `${machine} ${widthWords(reason)}`, from: MEASURED };
    case 'too-long':
      return { says: `${machine} ${lengthWords(reason)}`, from: MEASURED };
    case 'ramp-rating':
      return {
        says:
          reason.standing === 'over'
            ? `${machine} weighs ${showMass(reason.machineKg)}; the ramps carry ${showMass(reason.ratingKg)} together, ${showMass(kg(-reason.marginKg))} less.`
            : `${machine} weighs ${showMass(reason.machineKg)}, ${showMass(reason.marginKg)} inside what the ramps carry. Too near to go unweighed.`,
        from: 'The rating of the ramps, as entered on the build sheet.',
      };
    case 'rear-lift':
      return {
        says: `With ${machine} at the ${reason.support === 'deck-on-ground' ? 'pivot' : 'tail'} the hitch is pulled up with ${showForce(reason.liftN)}. ${supportWords(reason)}`,
        from: 'Moments about the middle of the axles, the machine standing where it comes onto the trailer.',
      };
    case 'hangs-up':
      return {
        says: `${machine} has ${showLength(reason.clearanceM)} under its middle; where ramp and deck meet it needs ${reason.isMost ? 'up to ' : ''}${showLength(reason.neededM)}.`,
        from: `Half the wheelbase times the tangent of half the slope.${reason.isMost ? ' The dovetail makes it less; its drop is not on record.' : ''}`,
      };
    case 'tilt-stays-up':
      return {
        says: `Driven on as far as it goes, ${machine} still has its balance point ${showLength(metres(-reason.shortM))} behind the pivot: the deck does not lie down under it.`,
        from: "Moments about the pivot, the deck's own weight left out: it would help, and nobody has said it.",
      };
  }
}

const MEASURED = 'The machine as entered, against the build sheet.';

export function widthWords({ machineM, roomM, between }: TooWide): string {
  const where = between === 'fenders' ? 'between the fenders' : 'across the deck';
  return `is ${showLength(machineM)} wide; there are ${showLength(roomM)} ${where}.`;
}

export function lengthWords({ machineM, roomM, of, stands }: TooLong): string {
  const what = of === 'tilt' ? 'the tilting part' : 'the deck';
  const over = showFeet(metres(machineM - roomM));
  const outcome =
    stands === null
      ? `Whether its wheels or tracks have room is not known`
      : stands
        ? `Its wheels or tracks have room and the rest sticks out`
        : `Not even its wheels or tracks have room`;
  return `is ${showFeet(machineM)} long; ${what} has ${showFeet(roomM)}, ${over} less. ${outcome}.`;
}

interface Lift {
  readonly support: RearSupport;
  readonly supportLeastN: number | null;
  readonly supportMostN: number | null;
}

function supportWords({ support, supportLeastN, supportMostN }: Lift): string {
  switch (support) {
    case 'stabilizers':
    case 'knee-brace': {
      const what = support === 'stabilizers' ? 'Set the stabilizers down first' : 'Set the knee brace first';
      return supportLeastN === null || supportMostN === null
        ? `${what}.`
        : `${what}: ${support === 'stabilizers' ? 'they take' : 'it takes'} ${showForce(newtons(supportLeastN))} to ${showForce(newtons(supportMostN))}, by how the springs give and how firm the ground is.`;
    }
    case 'deck-on-ground':
      return 'It lasts while the machine passes the pivot; see that the coupler is latched and the truck braked.';
    case 'none':
      return 'Nothing on the build sheet holds the tail up.';
    case 'unknown':
      return 'Whether stabilizers or a knee brace hold the tail up is not on the build sheet.';
  }
}

const RULE =
  '49 CFR 393.106, 393.110 and 393.130. Arms, booms and a second bucket need their own besides. Check your state.';

/** What holds the load down, or what it needs while nobody has said. */
export function tieDownWords(reason: Extract<FitReason, { kind: 'tie-downs' | 'tie-downs-unsaid' }>): {
  readonly says: string;
  readonly from: string;
} {
  if (reason.kind === 'tie-downs-unsaid') {
    return { says: `What ties it down is not recorded. It needs ${needWords(reason.need)}.`, from: RULE };
  }
  return { says: `${tiedWords(reason.tied)} It needs ${needWords(reason.tied.need)}.`, from: RULE };
}

export function tiedWords({ count, workingLoadKg, unrated }: TieDownCheck): string {
  const without = unrated === 0 ? '' : `; for ${showCount(unrated, 'of them', 'of them')} no limit is known`;
  return `${showCount(count, 'tie-down')} that count for ${showMass(workingLoadKg)} together${without}.`;
}

export function needWords({ count, workingLoadKg, because }: TieDownNeed): string {
  const why =
    because === 'heavy-machine'
      ? ', one near each corner,'
      : because === 'length-unknown'
        ? ' (more if it is long: its length is not known)'
        : '';
  return `at least ${count}${why} with working load limits that count for ${showMass(workingLoadKg)}, half its weight; one that ends on the machine counts half`;
}

export function moreTieDowns({ count, workingLoadKg }: Extract<FitRemedy, { kind: 'tie-down' }>): string {
  const wants = [
    ...(count > 0 ? [`${showCount(count, 'more tie-down')}`] : []),
    ...(workingLoadKg > 0 ? [`${showMass(workingLoadKg)} more of counted working load`] : []),
  ];
  return `Tie it down with ${wants.join(' and ')}; one that ends on the machine counts half its limit.`;
}
