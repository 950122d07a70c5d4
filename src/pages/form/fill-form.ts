import { type Kilometres, toMiles } from '../../rules/units/distance.js';
import { type Newtons, toLbf } from '../../rules/units/force.js';
import { type Metres, toInch } from '../../rules/units/length.js';
import { type Kilograms, toLb } from '../../rules/units/mass.js';
import { type Kilopascals, toPsi } from '../../rules/units/pressure.js';

/** Facts as the text of a form's fields, in the units the form asks for. Unknown is an empty field. */
export const inPounds = (mass: Kilograms | null) => (mass === null ? '' : plain(toLb(mass)));
export const inPoundsOfForce = (force: Newtons | null) => (force === null ? '' : plain(toLbf(force)));
export const inInches = (length: Metres | null) => (length === null ? '' : plain(toInch(length)));
export const inPsi = (pressure: Kilopascals | null) => (pressure === null ? '' : plain(toPsi(pressure)));
export const inMiles = (distance: Kilometres | null) => (distance === null ? '' : plain(toMiles(distance)));
export const asText = (value: string | number | null) => (value === null ? '' : String(value));
export const asYesNo = (value: boolean | null) => (value === null ? '' : value ? 'yes' : 'no');

/** Four decimals: below anything a tape, scale or gauge shows, so that showing and sending back changes nothing. */
export function plain(value: number): string {
  return String(Math.round(value * 10_000) / 10_000);
}
