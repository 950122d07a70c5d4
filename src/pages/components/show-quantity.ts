import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { dayOfWeek } from '../../rules/calendar/civil-date.js';
import type { Kilometres } from '../../rules/units/distance.js';
import { toMiles } from '../../rules/units/distance.js';
import type { Newtons } from '../../rules/units/force.js';
import { toLbf } from '../../rules/units/force.js';
import type { Metres } from '../../rules/units/length.js';
import { toInch } from '../../rules/units/length.js';
import type { Kilograms } from '../../rules/units/mass.js';
import { toLb } from '../../rules/units/mass.js';
import type { Kilopascals } from '../../rules/units/pressure.js';
import { toPsi } from '../../rules/units/pressure.js';

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

const FORMATS = new Map<number, Intl.NumberFormat>();

/** A number with thousands separators and no more decimals than asked: `14,000`, `2.5`. */
export function showNumber(value: number, decimals = 0): string {
  // Making one takes longer than a hundred uses of it, and a load check shows some fifty numbers at each step.
  const format = FORMATS.get(decimals) ?? new Intl.NumberFormat('en-US', { maximumFractionDigits: decimals });
  FORMATS.set(decimals, format);
  return format.format(value === 0 ? 0 : value);
}

/** Whole pounds: `14,000 lb`. */
export function showMass(mass: Kilograms): string {
  return `${showNumber(toLb(mass))} lb`;
}

/** The least of something: rounded up, so that what is done by it is never too little. A millionth of a pound is noise. */
export function showMassUp(mass: Kilograms): string {
  return `${showNumber(Math.ceil(toLb(mass) - 1e-6))} lb`;
}

/** A force, told as the pounds a scale would show: `1,450 lb`. */
export function showForce(force: Newtons): string {
  return `${showNumber(toLbf(force))} lb`;
}

/** Inches, to the sixteenth's neighbourhood: `82 in`, `2.31 in`. */
export function showLength(length: Metres): string {
  return `${showNumber(toInch(length), 2)} in`;
}

/** Feet and inches, for things the length of a deck: `20 ft`, `18 ft 6 in`. */
export function showFeet(length: Metres): string {
  const inches = Math.round(toInch(length));
  const feet = Math.floor(inches / 12);
  const rest = inches % 12;
  if (feet === 0) return `${rest} in`;
  return rest === 0 ? `${feet} ft` : `${feet} ft ${rest} in`;
}

export function showPressure(pressure: Kilopascals): string {
  return `${showNumber(toPsi(pressure))} psi`;
}

export function showDistance(distance: Kilometres): string {
  const miles = toMiles(distance);
  return `${showNumber(miles, Math.abs(miles) < 100 ? 1 : 0)} mi`;
}

/** A share of one as a percentage: `12.1 %`. */
export function showShare(share: number, decimals = 1): string {
  return `${showNumber(share * 100, decimals)} %`;
}

/** `Thu 3 Apr 2026`. */
export function showDate(date: CivilDate): string {
  return `${DAYS[dayOfWeek(date)]} ${showDay(date)} ${date.slice(0, 4)}`;
}

/** `Thu 3 Apr`, for days near enough that the year is plain. */
export function showNearDate(date: CivilDate): string {
  return `${DAYS[dayOfWeek(date)]} ${showDay(date)}`;
}

/** A run of days: `Thu 3 Apr 2026` or `Thu 3 Apr to Sat 5 Apr 2026`. */
export function showDates(from: CivilDate, to: CivilDate): string {
  if (from === to) return showDate(from);
  return from.slice(0, 4) === to.slice(0, 4)
    ? `${showNearDate(from)} to ${showDate(to)}`
    : `${showDate(from)} to ${showDate(to)}`;
}

/** An instant in the yard's own time: `Thu 3 Apr 2026, 6:15 AM`. */
export function showInstant(instant: Date, timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone,
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: 'numeric',
    minute: '2-digit',
  }).formatToParts(instant);
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((found) => found.type === type)?.value ?? '';
  return `${part('weekday')} ${part('day')} ${part('month')} ${part('year')}, ${part('hour')}:${part('minute')} ${part('dayPeriod')}`;
}

/** `$1,250.00` from cents. */
export function showMoney(cents: number): string {
  return new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(cents / 100);
}

/** `1 trip`, `3 trips`. */
export function showCount(count: number, one: string, many = `${one}s`): string {
  return `${showNumber(count)} ${count === 1 ? one : many}`;
}

function showDay(date: CivilDate): string {
  return `${Number(date.slice(8, 10))} ${MONTHS[Number(date.slice(5, 7)) - 1]}`;
}
