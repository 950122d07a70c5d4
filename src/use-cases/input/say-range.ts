import type { Plausible } from '../../rules/facts/plausible.js';
import { km, toMiles } from '../../rules/units/distance.js';
import { lbf, newtons, toLbf } from '../../rules/units/force.js';
import { inch, metres, toFeet, toInch } from '../../rules/units/length.js';
import { kg, toLb } from '../../rules/units/mass.js';
import { kPa, toPsi } from '../../rules/units/pressure.js';

/** Below this a length is said in inches and millimetres, as people read it off a tape. */
const SAID_IN_INCHES_M = 2.5;

/** One pound-force per inch of travel, in newtons per metre. */
const LB_PER_IN = lbf(1) / inch(1);

/** "500 to 80,000 lb (227 to 36,287 kg)": pounds first for the yard, SI for whoever speaks to the API. */
export function sayRange({ low, high, unit }: Plausible): string {
  switch (unit) {
    case 'kg':
      return both(pair(toLb(kg(low)), toLb(kg(high))), 'lb', pair(low, high), 'kg');
    case 'N':
      return both(pair(toLbf(newtons(low)), toLbf(newtons(high))), 'lb', pair(low, high), 'N');
    case 'm':
      return high <= SAID_IN_INCHES_M
        ? both(pair(toInch(metres(low)), toInch(metres(high))), 'in', pair(low, high), 'm')
        : both(pair(toFeet(metres(low)), toFeet(metres(high))), 'ft', pair(low, high), 'm');
    case 'km':
      return both(pair(toMiles(km(low)), toMiles(km(high))), 'mi', pair(low, high), 'km');
    case 'kPa':
      return both(pair(toPsi(kPa(low)), toPsi(kPa(high))), 'psi', pair(low, high), 'kPa');
    case 'N/m':
      return both(pair(low / LB_PER_IN, high / LB_PER_IN), 'lb per in', pair(low, high), 'N/m');
    case 'share':
      return `${pair(low, high)} as a share (${pair(low * 100, high * 100)} %)`;
    case null:
      return pair(low, high);
    default:
      return `${pair(low, high)} ${unit}`;
  }
}

function both(first: string, firstUnit: string, second: string, secondUnit: string): string {
  return `${first} ${firstUnit} (${second} ${secondUnit})`;
}

function pair(low: number, high: number): string {
  return `${plain(low)} to ${plain(high)}`;
}

/** Four figures are enough to tell which side of an end a number is on. */
function plain(value: number): string {
  const digits = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 3;
  return value.toLocaleString('en-US', { maximumFractionDigits: digits });
}
