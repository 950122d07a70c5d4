import type { Body, Brakes, BuildSheet, Hitch, Suspension, WeightBasis } from '../../rules/facts/build-sheet.js';
import type { Machine, TieDown } from '../../rules/facts/load.js';
import type { Part, PartKind, TireMarks } from '../../rules/facts/part.js';
import type { TrailerClass } from '../../rules/trailer/ratings.js';
import type { Option } from '../components/field.js';

type Words<Key extends string> = Readonly<Record<Key, string>>;

export const BODY_WORDS: Words<Body> = {
  'fixed-deck': 'Fixed deck',
  'gravity-tilt': 'Gravity tilt',
  'powered-gravity-tilt': 'Powered gravity tilt',
  'full-powered-tilt': 'Full powered tilt',
  'deck-over': 'Deck-over',
};

export const SUSPENSION_WORDS: Words<Suspension> = {
  'slipper-spring': 'Slipper springs, equalized',
  'eye-to-eye-spring': 'Eye-to-eye springs with shackles, equalized',
  torsion: 'Torsion axles, no equalizer',
};

export const HITCH_WORDS: Words<Hitch> = {
  'bumper-pull': 'Bumper pull',
  gooseneck: 'Gooseneck',
  pintle: 'Pintle',
};

export const BRAKE_WORDS: Words<Brakes> = {
  electric: 'Electric',
  hydraulic: 'Hydraulic',
  surge: 'Surge',
  none: 'None',
};

export const FRAME_WORDS: Words<NonNullable<BuildSheet['frame']['section']>> = {
  'c-channel': 'C-channel',
  'i-beam': 'I-beam',
  tube: 'Tube',
};

export const TONGUE_WORDS: Words<NonNullable<BuildSheet['frame']['tongue']>> = {
  'wrapped-to-axles': 'Wrapped back to the axles',
  'part-way': 'Ends part-way under the deck',
  integral: 'Integral with the frame',
};

export const RAMP_WORDS: Words<NonNullable<BuildSheet['rear']['ramps']>> = {
  'slide-out-rear': 'Slide-out, stowed at the rear',
  'slide-out-side': 'Slide-out, stowed at the side',
  'stand-up': 'Stand-up',
  'stand-up-knee-brace': 'Stand-up with knee brace',
  none: 'None',
};

export const FENDER_WORDS: Words<NonNullable<BuildSheet['fenders']['kind']>> = {
  'double-broke': 'Double-broke plate',
  teardrop: 'Teardrop',
  'drive-over': 'Drive-over',
  none: 'None',
};

export const DECK_WORDS: Words<NonNullable<BuildSheet['deck']['material']>> = {
  pine: 'Pine',
  oak: 'Oak',
  'rubber-faced': 'Rubber-faced plank',
  'tread-plate': 'Steel tread plate',
  other: 'Other',
};

export const WOOD_WORDS: Words<NonNullable<BuildSheet['deck']['wood']>> = {
  'southern-pine': 'Southern pine',
  'douglas-fir': 'Douglas fir',
  'white-oak': 'White oak',
  'red-oak': 'Red oak',
  'hem-fir': 'Hem-fir',
  'spruce-pine-fir': 'Spruce-pine-fir',
  apitong: 'Apitong',
  other: 'Other',
};

export const WOOD_GRADE_WORDS: Words<NonNullable<BuildSheet['deck']['woodGrade']>> = {
  'select-structural': 'Select structural',
  'no-1': 'No. 1',
  'no-2': 'No. 2',
  'no-3': 'No. 3',
};

export const TILT_DRIVE_WORDS: Words<NonNullable<BuildSheet['deck']['tiltDrive']>> = {
  'damping-cylinder': 'Damping cylinder',
  'power-unit': 'Power unit',
};

export const BASIS_WORDS: Words<WeightBasis> = {
  weighed: 'Weighed',
  stated: 'Stated',
  assumed: 'Assumed',
};

export const CLASS_WORDS: Words<TrailerClass> = {
  light: 'Light',
  medium: 'Medium',
  heavy: 'Heavy',
  'gooseneck-deck-over': 'Gooseneck deck-over',
  'not-an-equipment-trailer': 'No equipment trailer',
};

export const PART_WORDS: Words<PartKind> = {
  tire: 'Tire',
  'hub-bearings': 'Hub bearings',
  'brake-set': 'Brake set',
  deck: 'Deck',
  coupler: 'Coupler',
  jack: 'Jack',
  battery: 'Battery',
  'lamp-set': 'Lamp set',
};

export const TIRE_KIND_WORDS: Words<NonNullable<TireMarks['kind']>> = {
  ST: 'ST (trailer)',
  LT: 'LT (light truck)',
  passenger: 'Passenger',
  truck: 'Truck',
};

export const CONTACT_WORDS: Words<NonNullable<Machine['contact']>> = {
  tires: 'Tires',
  'rubber-tracks': 'Rubber tracks',
  'steel-tracks': 'Steel tracks',
  'small-wheels': 'Small hard wheels',
  pads: 'Pads',
};

export const TIE_DOWN_WORDS: Words<TieDown['way']> = {
  direct: 'From trailer to cargo',
  over: 'Over the cargo, trailer to trailer',
};

export const REMOVED_FOR_WORDS: Words<NonNullable<Part['removedFor']>> = {
  'worn-out': 'Worn out',
  damaged: 'Broken or damaged',
  precaution: 'As a precaution, still good',
  moved: 'Moved elsewhere, still good',
};

export const REMEDY_WORDS: Words<'leave-off' | 'swap' | 'wash'> = {
  'leave-off': 'Can be left off',
  swap: 'Can be swapped for something lighter',
  wash: 'Can be washed off',
};

export const ROAD_WORDS: Words<'salt' | 'gravel' | 'water'> = {
  salt: 'Salt',
  gravel: 'Gravel',
  water: 'Water over the hubs',
};

export const CDL_WORDS: Words<'A' | 'B' | 'none'> = {
  A: 'Class A',
  B: 'Class B',
  none: 'No commercial license',
};

/** The choices of a list, in its own order. */
export function optionsOf<Key extends string>(words: Words<Key>): readonly Option[] {
  return Object.entries<string>(words).map(([value, label]) => ({ value, label }));
}

const SIDES: Readonly<Record<string, string>> = { L: 'left', R: 'right' };
const DUALS: Readonly<Record<string, string>> = { I: ' inner', O: ' outer' };

/** Where on the trailer: `1L` → "axle 1 left", `2RO` → "axle 2 right outer". */
export function positionWords(position: string): string {
  if (position === 'spare') return 'spare';
  const match = /^(\d+)([LR])([IO])?$/.exec(position);
  if (!match) return position;
  return `axle ${match[1]} ${SIDES[match[2] ?? '']}${DUALS[match[3] ?? ''] ?? ''}`;
}

/** `1L, 1R and the spare` as people say a list. */
export function listWords(items: readonly string[]): string {
  if (items.length <= 1) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
