import type { PlugTrial, Seen, SeenCondition, SeenThing } from '../../rules/facts/handover.js';
import type { TireMarks } from '../../rules/facts/part.js';
import type { Change, TireDifference } from '../../rules/handover/changes.js';
import type { Metres } from '../../rules/units/length.js';
import { toInch } from '../../rules/units/length.js';
import { showMass, showNumber } from '../components/show-quantity.js';
import { listWords, positionWords } from './build-words.js';

const THINGS: Readonly<Record<SeenThing, string>> = {
  tire: 'Tire',
  wheel: 'Wheels and nuts',
  spare: 'Spare',
  lamp: 'Lamps and reflectors',
  plug: 'Plug and cord',
  coupler: 'Coupler and latch',
  'safety-chain': 'Safety chains and hooks',
  breakaway: 'Breakaway switch and battery',
  jack: 'Jack',
  deck: 'Deck',
  fender: 'Fender',
  frame: 'Frame and welds',
  ramp: 'Ramp',
  pin: 'Pins and clips',
  strap: 'Straps and binders',
  'customer-ball': "Customer's own ball",
};

export const CONDITION_WORDS: Readonly<Record<SeenCondition, string>> = {
  sound: 'Sound',
  rubbed: 'Rubbed',
  worn: 'Worn',
  stiff: 'Stiff',
  bent: 'Bent',
  broken: 'Broken',
  missing: 'Missing',
};

export const PLUG_WORDS: Readonly<Record<PlugTrial, string>> = {
  'lamps-and-brakes': 'Lamps and brakes',
  'lamps-only': 'Lamps alone',
  nothing: 'Nothing',
};

export const ANSWER_WORDS: Readonly<Record<Change['answer'], { readonly name: string; readonly says: string }>> = {
  chargeable: { name: 'Chargeable', says: 'Sound when it went out, and no wear of ordinary use.' },
  inspect: { name: 'To be inspected', says: 'May be wear or damage. The shop looks before anybody is charged.' },
  wear: { name: 'Wear', says: 'What use does. Nobody is charged for it.' },
};

const DIFFERENCES: Readonly<Record<TireDifference, string>> = {
  size: 'size',
  kind: 'kind',
  'load-range': 'load range',
  'max-load': 'maximum load',
  'date-code': 'date code',
};

/** `Tire, axle 2 left`; `Ramp, right`. */
export function thingWords({ thing, position }: Pick<Seen, 'thing' | 'position'>): string {
  return position === null ? THINGS[thing] : `${THINGS[thing]}, ${positionWords(position)}`;
}

/** What a sidewall says, as far as it was read: `ST235/80R16, range E, 3,420 lb, made 1024`. */
export function marksWords(marks: TireMarks | null): string {
  if (marks === null) return 'sidewall not read';
  const parts = [
    marks.size,
    marks.loadRange === null ? null : `range ${marks.loadRange}`,
    marks.maxLoadSingleKg === null ? null : showMass(marks.maxLoadSingleKg),
    marks.dateCode === null ? null : `made ${marks.dateCode}`,
  ].filter((part) => part !== null);
  return parts.length === 0 ? 'sidewall not read' : parts.join(', ');
}

/** `Sound, ST235/80R16, range E`, with the note. */
export function seenWords(seen: Seen): string {
  const marks = seen.tire === null ? null : marksWords(seen.tire);
  return [CONDITION_WORDS[seen.condition], marks, seen.note].filter((part) => part !== null).join(', ');
}

/** What changed, in a few words: `another tire: load range and date code differ`. */
export function changeWords({ is, differs }: Change): string {
  const how = is.condition === 'sound' ? null : CONDITION_WORDS[is.condition].toLowerCase();
  const swapped =
    differs.length === 0
      ? null
      : `another tire: ${listWords(differs.map((one) => DIFFERENCES[one]))} ${differs.length === 1 ? 'differs' : 'differ'}`;
  return [how, swapped].filter((part) => part !== null).join(', ');
}

/** As balls are stamped, in sixteenths: `2-5/16 in`, `2 in`. What is no sixteenth is told in decimals. */
export function ballWords(size: Metres): string {
  const inches = toInch(size);
  const sixteenths = Math.round(inches * 16);
  if (Math.abs(inches * 16 - sixteenths) > 0.1) return `${showNumber(inches, 2)} in`;
  let [top, bottom] = [sixteenths % 16, 16];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const whole = Math.floor(sixteenths / 16);
  return top === 0 ? `${whole} in` : `${whole}-${top}/${bottom} in`;
}
