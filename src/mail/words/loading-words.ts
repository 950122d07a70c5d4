import type { FitReason, FitRemedy } from '../../rules/fit/fit.js';
import type { TieDownCheck, TieDownNeed } from '../../rules/load/tie-downs.js';
import type { RearSupport } from '../../rules/trailer/loading.js';
import type { TooLong, TooWide } from '../../rules/trailer/machine-room.js';
import { type Metres, metres, toInch } from '../../rules/units/length.js';
import { kg } from '../../rules/units/mass.js';
import { count, inches, number, pounds, poundsOf } from './show.js';

type Loading = Extract<
  FitReason,
  { kind: 'too-wide' | 'too-long' | 'ramp-rating' | 'rear-lift' | 'hangs-up' | 'tilt-stays-up' }
>;

/** What getting the machine on comes to, as a letter tells it. */
export function loadingWords(reason: Loading): string {
  switch (reason.kind) {
    case 'too-wide':
      return `The machine ${widthWords(reason)}`;
    case 'too-long':
      return `The machine ${lengthWords(reason)}`;
    case 'ramp-rating':
      return reason.standing === 'over'
        ? `The machine weighs ${pounds(reason.machineKg)}, ${pounds(kg(-reason.marginKg))} more than the ramps carry.`
        : `The machine weighs ${pounds(reason.machineKg)}, only ${pounds(reason.marginKg)} less than the ramps carry.`;
    case 'rear-lift':
      return `While the machine comes on, it pulls the hitch up with ${poundsOf(reason.liftN)}. ${SUPPORT_WORDS[reason.support]}`;
    case 'hangs-up':
      return `Where ramp and deck meet the machine needs ${reason.isMost ? 'up to ' : ''}${inches(reason.neededM)} under it and has ${inches(reason.clearanceM)}.`;
    case 'tilt-stays-up':
      return `Driven on as far as it goes, the machine stays ${inches(metres(-reason.shortM))} behind the pivot: the deck would not lie down.`;
  }
}

export function widthWords({ machineM, roomM, between }: TooWide): string {
  return `is ${inches(machineM)} wide; ${between === 'fenders' ? 'the fenders leave' : 'the deck has'} ${inches(roomM)}.`;
}

export function lengthWords({ machineM, roomM, of, stands }: TooLong): string {
  const rest =
    stands === null
      ? ''
      : stands
        ? ' Its wheels or tracks have room; the rest sticks out.'
        : ' Not even its wheels or tracks have room.';
  return `is ${feetOf(machineM)} long; ${of === 'tilt' ? 'the tilting part' : 'the deck'} has ${feetOf(roomM)}.${rest}`;
}

const SUPPORT_WORDS: Readonly<Record<RearSupport, string>> = {
  stabilizers: 'Set the stabilizers down first.',
  'knee-brace': 'Set the knee brace first.',
  'deck-on-ground': 'It passes with the pivot: latch the coupler and brake the truck.',
  none: 'Nothing holds the tail up: block it first.',
  unknown: 'Nobody has said whether anything holds the tail up.',
};

export function tiedWords({ count: many, workingLoadKg, unrated }: TieDownCheck): string {
  const open = unrated === 0 ? '' : `, ${number(unrated)} of them with no known limit`;
  return `${count(many, 'tie-down')} that count for ${pounds(workingLoadKg)}${open}.`;
}

export function needWords({ count: many, workingLoadKg, because }: TieDownNeed): string {
  const more = because === 'length-unknown' ? ' or more, if it is long,' : '';
  return `wanted: ${number(many)}${more} that count for ${pounds(workingLoadKg)}; one that ends on the machine counts half (49 CFR 393.106 to 393.130)`;
}

export function moreTieDowns({ count: many, workingLoadKg }: Extract<FitRemedy, { kind: 'tie-down' }>): string {
  const wants = [
    ...(many > 0 ? [count(many, 'more tie-down')] : []),
    ...(workingLoadKg > 0 ? [`${pounds(workingLoadKg)} more of counted working load`] : []),
  ];
  return `Tie it down with ${wants.join(' and ')}.`;
}

/** `18 ft 6 in`. */
export function feetOf(length: Metres): string {
  const whole = Math.round(toInch(length));
  const rest = whole % 12;
  return rest === 0 ? `${Math.floor(whole / 12)} ft` : `${Math.floor(whole / 12)} ft ${rest} in`;
}
